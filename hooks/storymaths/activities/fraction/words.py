"""How a fraction of an amount is found and drawn, in the way its year finds it."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import Literal

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ...model.document import Loc
from ..kind import Unsolvable
from ..met import demands_met
from ..saying import alike, ending_places, mixed, part_name, written
from .number import WrittenNumber, tables_leaned

WORDS = (
    "half", "halves", "third", "thirds", "quarter", "quarters", "part", "parts", "share", "equal", "equal parts",
    "whole", "fraction", "number line", "tenths", "hundredths", "decimal",
)  # fmt: skip
_MOST_PARTS_DRAWN = 24
_MOST_PLACES = 4
WrittenAs = Literal["fraction", "decimal", "percent"]


def expressed(number: Fraction, written_as: WrittenAs, loc: Loc) -> str:
    """A number in the form asked for. Raises ``Unsolvable`` for a decimal that never ends."""
    if written_as == "percent":
        return f"{alike(number * 100, Fraction(1, 2))}%"
    if written_as == "decimal":
        places = ending_places(number)
        if places is None or places > _MOST_PLACES:
            message = f"{mixed(number)} does not come out as a decimal of {_MOST_PLACES} places or fewer."
            raise Unsolvable(loc, message, "ask for a fraction, or choose another number.")
        return written(number, places)
    return mixed(number)


def a_part(fraction: WrittenNumber | None) -> WrittenNumber:
    """The fraction, if it is more than nought and no more than one whole."""
    if fraction is None or not 0 < fraction.value <= 1:
        message = f"{fraction.text if fraction else 'That'} is not a part of one whole."
        raise Unsolvable(("fraction",), message, "write a fraction more than 0 and no more than 1.")
    return fraction


def shared_out(amount: Fraction, fraction: Fraction, context: Context) -> str:
    """Sentences that find a part: equal parts added before ÷ is met; then sharing, then taking several parts."""
    parts, over = fraction.denominator, fraction.numerator
    each = amount / parts
    whole, one = alike(amount, amount), alike(each, amount)
    if parts == 1:
        return f"All of {whole} is {whole}."
    if context.year.year < 2:
        found = f"{' + '.join([one] * parts)} = {whole}, so one {part_name(parts, 1)} is {one}."
    else:
        found = f"{whole} ÷ {parts} = {one}."
    return found if over == 1 else f"{found} {so_many(over, each, amount, context)}"


def so_many(times: int, each: Fraction, beside: Fraction, context: Context) -> str:
    """So many equal parts put together, as repeated addition before × is met."""
    one, total = alike(each, beside), alike(each * times, beside)
    if context.year.year < 2:
        return f"{' + '.join([one] * times)} = {total}."
    return f"{times} × {one} = {total}."


def slip_with_part(amount: Fraction, fraction: Fraction) -> LikelyError | None:
    """What goes wrong when a part is found: stopping after one part, halving once, taking away."""
    parts, over = fraction.denominator, fraction.numerator
    if parts > 1 and over > 1:
        return LikelyError(f"Finds one {part_name(parts, 1)} and stops.", alike(amount / parts, amount))
    if parts == 4:
        return LikelyError("Halves once in place of twice.", alike(amount / 2, amount))
    if 1 < parts < amount:
        return LikelyError(f"Takes {parts} away in place of sharing into {parts}.", alike(amount - parts, amount))
    return None


def bar(fraction: WrittenNumber, whole: str, each: str = "") -> tuple[Figure, ...]:
    """A bar in equal parts, some shaded, as the fraction is written; none when its parts are too many to see."""
    over, under = fraction.value.numerator, fraction.value.denominator
    if fraction.under > under:
        over, under = over * fraction.under // under, fraction.under
    if under > _MOST_PARTS_DRAWN or over > under:
        return ()
    alt = f"A bar in {under} equal parts, {over} shaded. The whole bar is {whole or 'not known'}."
    return (Figure("fraction-bar", {"parts": under, "shaded": over, "whole": whole or "?", "each": each}, alt),)


def solution(
    task: Task,
    answers: Sequence[Answer],
    context: Context,
    steps: int,
    note: str,
    likely_error: LikelyError | None = None,
    parts: Sequence[int] = (),
    figures: tuple[Figure, ...] = (),
) -> Solution:
    """The whole of a solution; ``parts`` are the denominators that things are shared into."""
    tables = frozenset().union(*(tables_leaned(n, context.year) for n in parts if n > 1))
    return Solution(task, tuple(answers), demands_met(task, answers, WORDS, tables), steps, note, likely_error, figures)
