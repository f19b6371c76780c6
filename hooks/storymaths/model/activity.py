"""An activity worked out: the pupil's task, every answer, and what they ask of a year."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Generic

from typing_extensions import TypeVar

from .book import FactAbout, FactValue
from .demands import Demands
from .effort import Effort
from .figures import FigureData
from .money import Currency
from .plain import Plain, as_plain_mapping
from .reference import ActivityCaps
from .year import YearLimits

V_co = TypeVar("V_co", covariant=True, default=object)
"""The kind's own type of answer; whoever only shows an answer need not know it."""


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
    notches: int = 0
    """Cut into the edge of a card, by which it is told by touch."""


@dataclass(frozen=True, slots=True)
class Context:
    """What an activity is played with: who, what their facts mean, in which year, within which caps, and whose money."""

    characters: tuple[CastMember, ...]
    facts: Mapping[str, FactAbout]
    year: YearLimits
    caps: ActivityCaps
    money: Currency
    effort: Effort = field(default_factory=Effort, compare=False, repr=False)
    """What is left for finding versions; the same for every context made from this one."""


@dataclass(frozen=True, slots=True)
class Answer(Generic[V_co]):
    """One answer: as a person says it, a line that shows why, and the kind's own value."""

    says: str
    worked: str
    value: V_co

    @property
    def why(self) -> str:
        """The line that shows why; empty where it would say the answer again."""
        says, worked = (text.rstrip(".").casefold() for text in (self.says, self.worked))
        return "" if says == worked or says.endswith(f": {worked}") else self.worked

    @property
    def data(self) -> Mapping[str, Plain]:
        """The value as plain data, in the shape the kind documents."""
        return as_plain_mapping(self.value)


@dataclass(frozen=True, slots=True)
class LikelyError:
    """The likely slip, and what it would give."""

    does: str
    gives: str


@dataclass(frozen=True, slots=True)
class Figure:
    """A drawing: what it shows, which ``render/figures`` draws, and the same in words."""

    data: FigureData
    alt: str


@dataclass(frozen=True, slots=True)
class Table:
    """A table shown to pupils: a heading for each column, and rows whose first cell heads the row."""

    caption: str
    columns: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Shown:
    """What a character's card carries: as it is printed, and the number on it where it is one."""

    says: str
    number: Fraction | None = None

    def __str__(self) -> str:
        return self.says


GAP = "___"
"""How a gap is written wherever a line is plain text."""


@dataclass(frozen=True, slots=True)
class Line:
    """A number sentence, statement or question for pupils, in the parts between its gaps."""

    parts: tuple[str, ...]
    asks: bool = False
    """Whether it is a question, with its answer to be written after it."""

    @property
    def gaps(self) -> int:
        """How many gaps it has to write in."""
        return len(self.parts) - 1

    def __str__(self) -> str:
        return GAP.join(self.parts)


@dataclass(frozen=True, slots=True)
class NumberCard:
    """A card with a number to lay."""

    number: Fraction
    face: str
    """As it is printed: ``7``, ``0.5``, ``3/4``."""


@dataclass(frozen=True, slots=True)
class Cards:
    """The number and sign cards a task can be laid with."""

    numbers: tuple[NumberCard, ...]
    """Each number once, the smallest first."""
    signs: Mapping[str, int]
    """How many of each sign one answer or one line needs at most."""


@dataclass(frozen=True, slots=True)
class Task:
    """What a pupil sees."""

    ask: str
    characters: tuple[CastMember, ...] = ()
    shows: tuple[Shown, ...] = ()
    """What each character's card carries, in the characters' order; empty when cards carry nothing."""
    lines: tuple[Line, ...] = ()
    """Number sentences, statements or questions to fill, to judge or to answer."""
    table: Table | None = None
    figures: tuple[Figure, ...] = ()
    asks_after: tuple[str, ...] = ()
    """What is asked one by one, each to be answered beside its name: ``the 8th``, ``the 10th``."""
    in_order: bool = False
    """Whether its lines are to be put in order."""
    filled_once: bool = False
    """Whether its one frame is filled in once, since nothing is searched for."""


@dataclass(frozen=True, slots=True)
class Solution(Generic[V_co]):
    """An activity worked out to the end."""

    task: Task
    answers: tuple[Answer[V_co], ...]
    """Every answer, in a stated order; empty when there is none, and ``note`` then says why."""
    demands: Demands
    steps: int
    """How many steps of thought one answer takes: the kind says how it counts them."""
    note: str = ""
    """How one knows these are all, or why there is none: for the adult."""
    likely_error: LikelyError | None = None
    answer_figures: tuple[Figure, ...] = field(default=())
    cards: Cards | None = None
    """What pupils lay the task with, where its numbers are moved about and not read off a picture or said."""

    @property
    def difficulty(self) -> int:
        """Steps, plus one for each ten in the largest number up to ten, plus one for each doubling of answers."""
        tens = min(10, int(self.demands.largest) // 10)
        return self.steps + tens + max(0, len(self.answers) - 1).bit_length()
