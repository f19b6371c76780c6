"""An activity worked out: the pupil's task, every answer, and what they ask of a year."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Any

from .book import FactAbout, FactValue
from .reference import ActivityCaps
from .year import YearLimits


@dataclass(frozen=True, slots=True)
class CastMember:
    """A character as an activity uses it."""

    id: str
    name: str
    plural: str
    facts: Mapping[str, FactValue]
    picture: str = ""
    """Source of its drawing inside ``content/``; empty when it has none."""
    alt: str = ""


@dataclass(frozen=True, slots=True)
class Context:
    """What an activity is played with: who, what their facts mean, in which year, within which caps."""

    characters: tuple[CastMember, ...]
    facts: Mapping[str, FactAbout]
    year: YearLimits
    caps: ActivityCaps


@dataclass(frozen=True, slots=True)
class Answer:
    """One answer: as a person says it, a line that shows why, and as plain data."""

    says: str
    worked: str
    data: Mapping[str, Any]
    """In the shape the kind documents; only text, whole numbers, truth values, lists and mappings."""


@dataclass(frozen=True, slots=True)
class LikelyError:
    """The likely slip, and what it would give."""

    does: str
    gives: str


@dataclass(frozen=True, slots=True)
class Demands:
    """What a task and its answers make a pupil read, write and say."""

    numbers: tuple[Fraction, ...] = ()
    calculated: tuple[Fraction, ...] = ()
    """The numbers that are added, taken away or come of it."""
    symbols: frozenset[str] = frozenset()
    units: frozenset[str] = frozenset()
    words: tuple[str, ...] = ()
    tables: frozenset[int] = frozenset()
    """Multiplication tables leaned on."""

    @property
    def largest(self) -> Fraction:
        """The largest number met; nought when there is none."""
        return max((*self.numbers, *self.calculated), default=Fraction(0))


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing by its name and data; ``render/figures`` knows how to draw each name."""

    name: str
    data: Mapping[str, Any]
    alt: str


@dataclass(frozen=True, slots=True)
class Table:
    """A table shown to pupils: a heading for each column, and rows whose first cell heads the row."""

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Task:
    """What a pupil sees."""

    ask: str
    characters: tuple[CastMember, ...] = ()
    shows: tuple[str, ...] = ()
    """The number each player's card carries, in the characters' order; empty when cards carry none."""
    lines: tuple[str, ...] = ()
    """Number sentences or statements to fill or judge; a gap is ``___``."""
    table: Table | None = None
    figures: tuple[Figure, ...] = ()


@dataclass(frozen=True, slots=True)
class Solution:
    """An activity worked out to the end."""

    task: Task
    answers: tuple[Answer, ...]
    """Every answer, in a stated order; empty when there is none, and ``note`` then says why."""
    demands: Demands
    steps: int
    """How many steps of thought one answer takes: the kind says how it counts them."""
    note: str = ""
    """How one knows these are all, or why there is none: for the adult."""
    likely_error: LikelyError | None = None
    answer_figures: tuple[Figure, ...] = field(default=())

    @property
    def difficulty(self) -> int:
        """Steps, plus one for each ten in the largest number up to ten, plus one for each doubling of answers."""
        tens = min(10, int(self.demands.largest) // 10)
        return self.steps + tens + max(0, len(self.answers) - 1).bit_length()
