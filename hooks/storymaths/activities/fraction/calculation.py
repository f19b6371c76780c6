"""How a part of an amount is calculated in a year: the steps in its signs, and the tables leaned on."""

from __future__ import annotations

from fractions import Fraction

from ...expression.number import WrittenNumber
from ...model.demands import Operation, operation
from ...model.year import YearLimits
from ..kind import Unsolvable

_LARGEST_TABLE = 12


def part_of_one(fraction: WrittenNumber) -> Fraction:
    """What it is worth. Raises ``Unsolvable`` unless it is more than nought and no more than one whole."""
    if not 0 < fraction.value <= 1:
        message = f"{fraction.text} is not a part of one whole."
        raise Unsolvable(("fraction",), message, "write a fraction more than 0 and no more than 1.")
    return fraction.value


def find_part(amount: Fraction, fraction: Fraction, year: YearLimits) -> tuple[Operation, ...]:
    """The steps to a part: sharing, as equal parts added before ÷ is met, then taking several parts."""
    over, under = fraction.as_integer_ratio()
    if under == 1:
        return ()
    each = amount / under
    shared = operation("÷", amount, under, each) if year.knows("÷") else operation("+", *[each] * under, amount)
    return (shared,) if over == 1 else (shared, put_together(over, each, year))


def put_together(times: int, each: Fraction, year: YearLimits) -> Operation:
    """So many equal parts, as repeated addition before × is met."""
    if year.knows("×"):
        return operation("×", times, each, times * each)
    return operation("+", *[each] * times, times * each)


def tables_leaned(parts: int, year: YearLimits) -> frozenset[int]:
    """The table that sharing into so many parts leans on.

    Halves, quarters and eighths are found by halving again and again; and a year that still shares the things out
    needs no table.
    """
    if not year.practice.fraction.shares_by_tables or not 1 < parts <= _LARGEST_TABLE:
        return frozenset()
    return frozenset({2 if parts in (2, 4, 8) else parts})
