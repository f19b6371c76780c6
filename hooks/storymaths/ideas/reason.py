"""Why an idea ranks where it does: each reason a value with its weight. Words are made of them in ``say_reasons.py``."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Noted:
    """The book's own notes see this idea of maths on some of its pages."""

    concept: str
    """The id of a concept."""
    pages: tuple[str, ...]
    """As the notes write them: ``4-5``."""
    weight: int


@dataclass(frozen=True, slots=True)
class OnThePage:
    """What it is made of stands on a page where the notes see an idea of maths that it is of."""

    concept: str
    page: int
    weight: int


@dataclass(frozen=True, slots=True)
class BringsTogether:
    """It brings several things of the book together."""

    how_many: int
    weight: int


@dataclass(frozen=True, slots=True)
class NumbersKept:
    """Every number of the story is as it stands in the book."""

    weight: int


@dataclass(frozen=True, slots=True)
class NumbersChanged:
    """Numbers of the story are other than in the book, in the same order."""

    weight: int


@dataclass(frozen=True, slots=True)
class FewWays:
    """There are a few ways to find: more than one, and not too many for a class to be sure of all."""

    ways: int
    weight: int


@dataclass(frozen=True, slots=True)
class StillMissed:
    """An objective of the year that the series does not teach yet, or teaches only in part."""

    framework: str
    code: str
    series: str
    """The id of the series; empty where the book is in none, and its own sessions are what counts."""
    in_part: bool
    weight: int


@dataclass(frozen=True, slots=True)
class SurelyPractised:
    """What a child does practises a part of an objective for certain, and not just lies near it."""

    framework: str
    code: str
    parts: tuple[str, ...]
    """The ids of the parts."""
    weight: int


@dataclass(frozen=True, slots=True)
class OfTheYear:
    """It uses what is new in the year: its signs, its units or its size of numbers."""

    weight: int


@dataclass(frozen=True, slots=True)
class SmallForTheYear:
    """Its numbers are small for the year."""

    largest: int
    weight: int


@dataclass(frozen=True, slots=True)
class CastTakesPart:
    """Characters of the story are in it."""

    how_many: int
    weight: int


@dataclass(frozen=True, slots=True)
class FirstFor:
    """It practises an objective of the year that nothing above it does."""

    framework: str
    code: str
    weight: int


@dataclass(frozen=True, slots=True)
class FirstOf:
    """It is of something the book's notes see, and nothing above it is."""

    concept: str
    weight: int


@dataclass(frozen=True, slots=True)
class LikeOneAbove:
    """Ideas of its kind stand above it already; ``same_task`` so many that ask the same."""

    kind: str
    times: int
    same_task: int
    weight: int


Reason = (
    Noted
    | OnThePage
    | BringsTogether
    | NumbersKept
    | NumbersChanged
    | FewWays
    | StillMissed
    | SurelyPractised
    | OfTheYear
    | SmallForTheYear
    | CastTakesPart
    | FirstFor
    | FirstOf
    | LikeOneAbove
)
