"""What the answers to each task with measures hold. Amounts are exact, in the unit named beside them."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal


@dataclass(frozen=True, slots=True)
class Compared:
    """What is more, by its id, as ``first`` or ``second`` of two amounts, or ``same``; and by how much."""

    more: str
    difference: Fraction
    unit: str


@dataclass(frozen=True, slots=True)
class Ordered:
    """By id, or as the amount is told; ``together`` are those that share a place."""

    order: tuple[str, ...]
    together: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class Converted:
    """An amount as it is told, its number in another unit, and what has it."""

    amount: str
    number: Fraction
    unit: str
    thing: str | None = None


@dataclass(frozen=True, slots=True)
class AtMark:
    """What an arrow at a mark shows."""

    arrow: str
    reading: Fraction
    unit: str


@dataclass(frozen=True, slots=True)
class BetweenMarks:
    """The marks that an arrow stands between, and the nearer."""

    arrow: str
    between: tuple[Fraction, Fraction]
    nearer: Fraction | Literal["halfway"]
    unit: str


@dataclass(frozen=True, slots=True)
class UnitCount:
    """How many of a unit make the amount, and what is left over."""

    unit: str
    count: int
    left: Fraction


@dataclass(frozen=True, slots=True)
class Levelled:
    """The weights against a load and those beside it, the largest first; and whose load it is."""

    against: tuple[Fraction, ...]
    beside: tuple[Fraction, ...]
    character: str | None = None


@dataclass(frozen=True, slots=True)
class Reached:
    """A load that can be levelled, and how."""

    load: Fraction
    against: tuple[Fraction, ...]
    beside: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class Total:
    """What there is in all."""

    total: Fraction
    unit: str


@dataclass(frozen=True, slots=True)
class Rate:
    """What the wanted amount comes to."""

    amount: Fraction
    unit: str


@dataclass(frozen=True, slots=True)
class Parts:
    """The parts in the order of the ratio."""

    parts: tuple[Fraction, ...]
    unit: str


@dataclass(frozen=True, slots=True)
class Volume:
    """A volume, in a cubic unit."""

    volume: Fraction
    unit: str


@dataclass(frozen=True, slots=True)
class ChosenUnit:
    """The unit in which something has its true amount."""

    thing: str
    number: Fraction
    unit: str


@dataclass(frozen=True, slots=True)
class Perimeter:
    """The distance all the way round."""

    perimeter: Fraction
    unit: str


Reading = AtMark | BetweenMarks
MeasureAnswer = (
    Compared
    | Ordered
    | Converted
    | Reading
    | UnitCount
    | Levelled
    | Reached
    | Total
    | Rate
    | Parts
    | Volume
    | ChosenUnit
    | Perimeter
)
