"""What a task and its answers demand of a child, as values: numbers, operations, signs, units, words, tables, times."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Number = int | Fraction
Sign = Literal["+", "−", "×", "÷"]


@dataclass(frozen=True, slots=True)
class Amount:
    """A number a child reads, writes or says, and its unit."""

    number: Fraction
    unit: str = ""
    """As in ``years.yaml``, such as ``cm``; empty for a bare number and for things that are counted."""


@dataclass(frozen=True, slots=True)
class Operation:
    """A calculation: what is put together or taken apart, and what comes of it, in the order of the sentence."""

    sign: Sign
    numbers: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class Demands:
    """What a child meets in a task and in all its answers. ``one | other`` is what both demand together."""

    amounts: tuple[Amount, ...] = ()
    operations: tuple[Operation, ...] = ()
    signs: frozenset[str] = frozenset()
    """Signs that are read or written: of operations, relations, money, percentages, decimals."""
    other_units: frozenset[str] = frozenset()
    """Units met as words, with no number before them, such as ``minutes`` in a question."""
    words: tuple[str, ...] = ()
    """Words of the word bank."""
    tables: frozenset[int] = frozenset()
    """Multiplication tables leaned on."""
    parts: frozenset[int] = frozenset()
    """Parts a whole is cut into, where fractions are written that could be simpler: 6 for 3/6."""
    clock: int | None = None
    """To how many minutes a clock is read or set; None where none is."""
    shapes: frozenset[str] = frozenset()
    """Names of shapes."""
    charts: frozenset[str] = frozenset()
    """Sorts of chart, as in ``years.yaml``."""
    counting: bool = False
    """Whether the numbers are those of a count, on or back, with which nothing is worked out."""
    places: int = 0
    """Decimal places that numbers are written with, at most."""

    @property
    def numbers(self) -> tuple[Fraction, ...]:
        """Every number met, each once, the smallest first."""
        return tuple(sorted({amount.number for amount in self.amounts} | {Fraction(1, part) for part in self.parts}))

    @property
    def calculated(self) -> tuple[Fraction, ...]:
        """The numbers that are added or taken away, or come of it, each once, the smallest first."""
        adding = (operation for operation in self.operations if operation.sign in ("+", "−"))
        return tuple(sorted({number for operation in adding for number in operation.numbers}))

    @property
    def units(self) -> frozenset[str]:
        """Every unit met."""
        return self.other_units | {amount.unit for amount in self.amounts if amount.unit}

    @property
    def largest(self) -> Fraction:
        """The largest number met; nought when there is none."""
        return max((*self.numbers, *self.calculated), default=Fraction(0))

    def __or__(self, other: Demands) -> Demands:
        """What both demand."""
        clocks = [clock for clock in (self.clock, other.clock) if clock is not None]
        return Demands(
            tuple(dict.fromkeys((*self.amounts, *other.amounts))),
            tuple(dict.fromkeys((*self.operations, *other.operations))),
            self.signs | other.signs,
            self.other_units | other.other_units,
            tuple(dict.fromkeys((*self.words, *other.words))),
            self.tables | other.tables,
            self.parts | other.parts,
            min(clocks, default=None),
            self.shapes | other.shapes,
            self.charts | other.charts,
            self.counting or other.counting,
            max(self.places, other.places),
        )


def amounts(numbers: Iterable[Number], unit: str = "") -> tuple[Amount, ...]:
    """The numbers, all in one unit, each once and the smallest first."""
    return tuple(Amount(Fraction(number), unit) for number in sorted(set(numbers)))


def operation(sign: Sign, *numbers: Number) -> Operation:
    """A calculation: ``operation("+", 3, 4, 7)`` for 3 + 4 = 7."""
    return Operation(sign, tuple(map(Fraction, numbers)))


def number_sentences(*operations: Operation) -> Demands:
    """What it takes to read or write these calculations out with what comes of them."""
    return Demands(
        amounts(number for one in operations for number in one.numbers),
        operations,
        frozenset({one.sign for one in operations} | ({"="} if operations else set())),
    )
