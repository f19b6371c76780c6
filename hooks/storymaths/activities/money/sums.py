"""Calculations with money as values: how each is written, and what it demands."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from ...model.activity import Context
from ...model.demands import Demands, Number, Sign, amounts, operation
from ..tables_used import table_of
from .amount import Notation, notation_for

_MOST_PARTS = 8
_LARGEST_TABLE = 12


@dataclass(frozen=True, slots=True)
class Sum:
    """Amounts put together or taken apart, in pence; multiplied or divided by ``count``."""

    sign: Sign
    amounts: tuple[int, ...]
    result: int
    count: int = 0


def add(amounts: Iterable[int]) -> Sum:
    """``20p + 5p = 25p``; one amount alone is no more than itself."""
    parts = tuple(amounts)
    return Sum("+", parts, sum(parts))


def take(first: int, others: Iterable[int]) -> Sum:
    """``£5 − £2 = £3``."""
    taken = tuple(others)
    return Sum("−", (first, *taken), first - sum(taken))


def multiply(count: int, each: int, context: Context) -> Sum:
    """``3 × 20p = 60p``, or the same by adding before × is met."""
    if adds_over(count, context):
        return add([each] * count)
    return Sum("×", (each,), count * each, count)


def adds_over(count: int, context: Context) -> bool:
    """Whether so many of an amount are added over and over: before × is met."""
    return not context.year.knows("×") and count <= _MOST_PARTS


def divide(amount: int, count: int) -> Sum:
    """``60p ÷ 3 = 20p``. The count divides the amount."""
    return Sum("÷", (amount,), amount // count, count)


def write_sum(one: Sum, context: Context) -> str:
    """A sum as a number sentence, in one unit throughout."""
    write = _notation(one, context).write
    parts = [write(pence) for pence in one.amounts]
    if one.sign == "×":
        parts.insert(0, f"{one.count:,}")
    elif one.sign == "÷":
        parts.append(f"{one.count:,}")
    return f"{f' {one.sign} '.join(parts)} = {write(one.result)}" if len(parts) > 1 else write(one.result)


def write_sums(sums: Sequence[Sum], context: Context) -> str:
    """Sums one after another, without the last full stop."""
    return ". ".join(write_sum(one, context) for one in sums)


def demands_of_sums(sums: Iterable[Sum], context: Context) -> Demands:
    """What reading and working out several sums demands."""
    seen = [(one, *_numbers(one, context)) for one in dict.fromkeys(sums)]
    worked = [(one, notation, numbers) for one, notation, numbers in seen if len(numbers) > 2]
    signs = {sign for one, _, _ in worked for sign in (one.sign, "=")}
    return Demands(
        amounts=tuple(dict.fromkeys(amount for _, _, numbers in seen for amount in amounts(numbers))),
        operations=tuple(dict.fromkeys(operation(one.sign, *numbers) for one, _, numbers in worked)),
        signs=frozenset(signs).union(*(notation.signs for _, notation, _ in seen)),
        tables=frozenset().union(*(_table(one, numbers, context) for one, _, numbers in worked)),
    )


def _notation(one: Sum, context: Context) -> Notation:
    return notation_for([*one.amounts, one.result], context)


def _numbers(one: Sum, context: Context) -> tuple[Notation, tuple[Number, ...]]:
    """The numbers in the order of the sentence."""
    notation = _notation(one, context)
    numbers: list[Number] = [notation.number(pence) for pence in one.amounts]
    if one.count:
        numbers.insert(0 if one.sign == "×" else 1, one.count)
    return notation, (*numbers, notation.number(one.result))


def _table(one: Sum, numbers: Sequence[Number], context: Context) -> frozenset[int]:
    """The table that multiplying leans on, and dividing backwards: 3 × 20 on that of 2 or 3; none for large factors."""
    factors = [_in_tens(number) for number in {"×": numbers[:2], "÷": numbers[1:]}.get(one.sign, ())]
    if not factors or min(factors) > _LARGEST_TABLE:
        return frozenset()
    return table_of(factors[0], factors[1], context.year)


def _in_tens(number: Number) -> Number:
    """What is left of 20 or 300 when tens or hundreds are counted; numbers of the tables stay as they are."""
    while number > _LARGEST_TABLE and number % 10 == 0:
        number = Fraction(number, 10)
    return number
