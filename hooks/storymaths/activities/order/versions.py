"""An order for another year: values of its size, in the same order, whose ones run against their tens."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain

from ...model.activity import Context
from ...model.year import YearLimits
from ..revalue import SAME_NUMBERS, easier_first, revalued, with_values
from .tasks import OrderByClues, OrderTask


def versions_of(task: OrderTask, context: Context, year: YearLimits) -> Iterator[tuple[OrderTask, Context, str]]:
    """With clues the same; with values, ones of the year's size that make every digit count."""
    if isinstance(task, OrderByClues):
        yield task, context, "The same clues."
        return
    harder = year.year > context.year.year
    others = easier_first((context, SAME_NUMBERS), _made_tricky(context, task.fact, year), harder)
    for changed, why in chain(others, revalued(context, task.fact, year)):
        yield task, changed, why


def _made_tricky(context: Context, fact: str, year: YearLimits) -> Iterator[tuple[Context, str]]:
    values = [character.facts[fact] for character in context.characters]
    levels = sorted({int(value) for value in values})
    why = "Other numbers, in the same order; whoever looks only at the ones goes wrong."
    for new in _against(len(levels), year):
        yield with_values(context, fact, dict(zip(levels, new, strict=True))), why


def _against(levels: int, year: YearLimits) -> Iterator[Sequence[int]]:
    """Rising numbers with falling ones, such as 19, 28, 37: only the digits before the last one tell."""
    for place in (100_000, 10_000, 1000, 100, 10):
        if 2 <= levels <= 9 and levels * place + 10 <= year.largest_number:
            spread = (
                [1 + index * 8 // (levels - 1) for index in range(levels)]
                if 9 * place + 10 <= year.largest_number
                else range(1, levels + 1)
            )
            yield [digit * place + (10 - digit) for digit in spread]
