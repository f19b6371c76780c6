"""Amounts put together and taken away."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, listed, plain
from .amount import Amount, in_sum, say, shown
from .words import all_alike, leaned, like_units, solution, turned

if TYPE_CHECKING:
    from . import MeasureFields


def total(fields: MeasureFields, context: Context) -> Solution:
    """What there is in all, less what goes: a step for each amount after the first, and for each multiplied."""
    amounts, less, year = _what_there_is(fields), list(fields.less), context.year
    if any(amount.number <= 0 for amount in less):
        raise Unsolvable(("less",), "An amount taken away is nothing or below nothing.", "take away more than 0.")
    unit = like_units([*amounts, *less], ("less",) if less else ("amounts",))
    if fields.to:
        unit = turned(Amount(Fraction(1), unit), fields.to, ("to",)).unit
    there, gone = [amount.into(unit) for amount in amounts], [amount.into(unit) for amount in less]
    together = _sum(there, unit)
    left = Amount(together.number - _sum(gone, unit).number, unit)
    if left.number < 0 and unit != "°C":
        raise Unsolvable(("less",), "More is taken away than there is.", "take away less.")
    sentences = all_alike([*amounts, *less], unit, context)
    if len(there) > 1:
        sentences.append(f"{_joined(there, ' + ', context)} = {in_sum(together, year)}")
    if gone:
        sentences.append(f"{_joined([together, *gone], ' − ', context)} = {in_sum(left, year)}")
    worked = ". ".join(sentences or [f"It is {say(left, year)} and nothing more"]) + "."
    answer = Answer(f"{capital(say(left, year))}.", worked, {"total": plain(left.number), "unit": unit})
    task = Task(_asked(amounts, less, unit, context), lines=(_gap(amounts, less, context),))
    steps = max(1, len(amounts) + len(less) - 1 + sum(amount.count > 1 for amount in amounts))
    likely_error = _slip_of_one_each(amounts, gone, unit, context)
    note = "Amounts come to the same in whatever order they are put together."
    tables = [table for amount in amounts for table in leaned(amount.count, amount.each.number, context)]
    return solution(task, [answer], steps, note, likely_error, tables=tables)


def _what_there_is(fields: MeasureFields) -> list[Amount]:
    amounts = [*([fields.start] if fields.start else []), *fields.amounts, *(fields.things or {}).values()]
    if not amounts:
        raise Unsolvable(("find",), "There is nothing to begin with.", 'give "start", "amounts" or "things".')
    return amounts


def _sum(amounts: Sequence[Amount], unit: str) -> Amount:
    return Amount(sum((amount.number for amount in amounts), Fraction(0)), unit)


def _joined(amounts: Sequence[Amount], sign: str, context: Context) -> str:
    return sign.join(in_sum(amount, context.year) for amount in amounts)


def _asked(amounts: Sequence[Amount], less: Sequence[Amount], unit: str, context: Context) -> str:
    told = [shown(amount, context.year) for amount in amounts]
    gone = listed([shown(amount, context.year) for amount in less])
    if unit == "°C":
        changes = [f"rises by {text}" for text in told[1:]] + ([f"falls by {gone}"] if less else [])
        return (
            f"The temperature is {told[0]} and {listed(changes)}. What is it then?" if changes else f"It is {told[0]}."
        )
    opening = f"Put together {listed(told)}." if len(told) > 1 else f"Start with {told[0]}."
    return f"{opening} {f'Take away {gone}. How much is left?' if less else 'How much is that in all?'}"


def _gap(amounts: Sequence[Amount], less: Sequence[Amount], context: Context) -> str:
    parts = [
        f"{amount.count} × {in_sum(amount.each, context.year)}" if amount.count > 1 else in_sum(amount, context.year)
        for amount in amounts
    ]
    return " − ".join([" + ".join(parts), *(in_sum(amount, context.year) for amount in less)]) + " = ___"


def _slip_of_one_each(
    amounts: Sequence[Amount], gone: Sequence[Amount], unit: str, context: Context
) -> LikelyError | None:
    once = _sum([amount.each.into(unit) for amount in amounts], unit).number - _sum(gone, unit).number
    if all(amount.count == 1 for amount in amounts) or once <= 0:
        return None
    return LikelyError("Takes one of each in place of all of them.", say(Amount(once, unit), context.year))
