"""What things come to: the sorts bought, the sentences that add them, and how a pupil is told of them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..met import demands_met
from ..saying import listed
from .amount import adding, brief, writer
from .coins import WORDS

if TYPE_CHECKING:
    from . import MoneyFields

_MOST_PARTS = 8
LOTS = "{count:,} lots of {each}"


def solution(
    task: Task,
    answers: Sequence[Answer],
    steps: int,
    note: str,
    likely_error: LikelyError | None = None,
    tables: Sequence[int] = (),
) -> Solution:
    """A solution whose uses are read off its words."""
    return Solution(task, tuple(answers), demands_met(task, answers, WORDS, tables), steps, note, likely_error)


def bought(fields: MoneyFields, context: Context) -> tuple[list[int], list[str]]:
    """What there is or is bought: an amount for each sort, and sentences for the sorts of several."""
    amounts = [fields.start] if fields.start else []
    amounts += [count * each for count, each in fields.items]
    amounts += [*(fields.prices or {}).values(), *fields.purse]
    if sum(amounts) > context.caps.number:
        raise Unsolvable(("items",), "All that comes to more than £100,000.", "use smaller numbers.")
    return amounts, [times(count, each, context) for count, each in fields.items if count > 1]


def times(count: int, each: int, context: Context) -> str:
    """``3 × 20p = 60p``, or the same by adding before × is met."""
    if context.year.year < 2 and count <= _MOST_PARTS:
        return adding([each] * count, count * each, context.year)
    write = writer([each, count * each], context.year)
    return f"{count:,} × {write(each)} = {write(count * each)}"


def taking(first: int, others: Sequence[int], left: int, context: Context) -> str:
    """``£5 − £2 = £3``, in one unit throughout."""
    write = writer([first, *others, left], context.year)
    return f"{' − '.join(map(write, [first, *others]))} = {write(left)}"


def sorts(fields: MoneyFields, context: Context, several: str = "{count:,} at {each} each") -> list[str]:
    """What there is, in words; ``several`` is how things of one price are told."""
    year = context.year
    parts = [brief(fields.start, year)] if fields.start else []
    for count, worth in fields.items:
        each = brief(worth, year)
        parts.append(several.format(count=count, each=each) if count > 1 else each)
    parts += [f"{name} at {brief(price, year)}" for name, price in (fields.prices or {}).items()]
    if fields.purse:
        parts.append(f"coins of {listed([brief(worth, year) for worth in fields.purse])}")
    return parts


def tables_of(fields: MoneyFields, context: Context) -> list[int]:
    """Tables that the sorts of several lean on."""
    if context.year.year < 2:
        return []
    return [each for count, each in fields.items if 1 < count <= 12 and 1 < each <= 12]
