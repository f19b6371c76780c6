"""An order for another year: values of its size, in the same order, whose ones run against their tens."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from ...model.activity import Context
from ...model.year import YearLimits
from ..revalue import revalued

if TYPE_CHECKING:
    from . import OrderFields


def other_values(fields: OrderFields, context: Context, year: YearLimits) -> Iterator[tuple[Context, str]]:
    """Scenes for ``year``, best first."""
    same = (context, "The same numbers." if fields.fact else "The same clues.")
    if not fields.fact or fields.clues:
        yield same
        return
    values = [character.facts.get(fields.fact) for character in context.characters]
    whole = [value for value in values if isinstance(value, int) and not isinstance(value, bool)]
    harder = year.year > context.year.year
    if not harder:
        yield same
    if len(whole) == len(values):
        levels = sorted(set(whole))
        for new in _against(len(levels), year):
            change = dict(zip(levels, new, strict=True))
            yield (
                _with(context, fields.fact, [change[value] for value in whole]),
                f"Each {fields.fact} is remade, in the same order; the ones run the other way from the digits before them.",
            )
    if harder:
        yield same
    yield from revalued(context, fields.fact, year)


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


def _with(context: Context, fact: str, values: Sequence[int]) -> Context:
    characters = tuple(
        replace(character, facts={**character.facts, fact: value})
        for character, value in zip(context.characters, values, strict=True)
    )
    return replace(context, characters=characters)
