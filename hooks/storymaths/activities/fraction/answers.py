"""What the answers to tasks with fractions hold."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ...expression.number import WrittenNumber


@dataclass(frozen=True, slots=True)
class PartFound:
    """A part of an amount, and whose it is, where it is somebody's."""

    of: Fraction
    part: Fraction
    character: str | None = None


@dataclass(frozen=True, slots=True)
class Rest:
    """The part that went, and what is left in the end."""

    gone: Fraction
    left: Fraction


@dataclass(frozen=True, slots=True)
class Whole:
    """All there is."""

    whole: Fraction


@dataclass(frozen=True, slots=True)
class SharedCount:
    """A count that shares out, and whose it is, where it is somebody's."""

    count: int
    part: int
    character: str | None = None


@dataclass(frozen=True, slots=True)
class PartOfCast:
    """Who fits, and what fraction of the cast they are."""

    characters: tuple[str, ...]
    fraction: WrittenNumber
    simplest: WrittenNumber


@dataclass(frozen=True, slots=True)
class Group:
    """Characters who have the fraction between them, and how much that is."""

    characters: tuple[str, ...]
    together: int


@dataclass(frozen=True, slots=True)
class ShapePart:
    """How much of a shape is shaded, and in the form that was asked for."""

    shape: str
    fraction: Fraction
    written: WrittenNumber | None = None


@dataclass(frozen=True, slots=True)
class EqualPair:
    """Two numbers that are worth the same."""

    equal: tuple[WrittenNumber, WrittenNumber]


@dataclass(frozen=True, slots=True)
class NumbersInOrder:
    """Numbers in order, and those of them that stand at one place."""

    order: tuple[WrittenNumber, ...]
    equal: tuple[tuple[WrittenNumber, ...], ...]


@dataclass(frozen=True, slots=True)
class PlaceAtMark:
    """A number that stands at a mark."""

    number: WrittenNumber
    mark: int


@dataclass(frozen=True, slots=True)
class PlaceBetween:
    """A number that stands between two marks."""

    number: WrittenNumber
    between: tuple[int, int]


@dataclass(frozen=True, slots=True)
class NumberAtMark:
    """The number that stands at a mark."""

    mark: int
    number: Fraction


@dataclass(frozen=True, slots=True)
class Rewritten:
    """A number, how else it is written, and its simplest form where a fraction was asked for."""

    number: WrittenNumber
    written: WrittenNumber
    simplest: WrittenNumber | None = None


LineAnswer = PlaceAtMark | PlaceBetween | NumberAtMark
FractionAnswer = (
    PartFound | Rest | Whole | SharedCount | PartOfCast | Group
    | ShapePart | EqualPair | NumbersInOrder | LineAnswer | Rewritten
)  # fmt: skip
