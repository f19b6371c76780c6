"""New values for a fact of the cast that keep the story's order and suit a year."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from itertools import combinations, islice
from typing import TypeVar

from ..model.activity import CastMember, Context
from ..model.year import YearLimits

_MOST_TRIED = 4000
_STEPS_OF_ONE = 5
SAME_NUMBERS = "The same numbers."
"""What changed in a version that changes nothing."""


def revalued(context: Context, fact: str, year: YearLimits) -> Iterator[tuple[Context, str]]:
    """Scenes whose whole-number values of ``fact`` are remade for ``year``, best first, at most a few thousand.

    Whoever had more still has more, and equals stay equal. First the old values multiplied by a table
    of the year, then every rising choice of values, smallest first.
    """
    old = {
        character.id: character.facts[fact]
        for character in context.characters
        if isinstance(character.facts.get(fact), int)
    }
    if len(old) != len(context.characters) or not old:
        return
    levels = sorted({int(value) for value in old.values()})
    top = min(year.largest_calculated, year.largest_number, context.caps.number)
    for factor in year.tables:
        if factor > 1 and levels[-1] * factor <= top:
            yield (
                with_values(context, fact, {v: v * factor for v in levels}),
                f"Every {fact} is {'twice' if factor == 2 else f'{factor} times'} as much.",
            )
    rising = combinations(range(1, min(top, 40) + 1), len(levels))
    for new in islice(rising, _MOST_TRIED):
        context.effort.spend(_STEPS_OF_ONE)
        if list(new) != levels:
            yield (
                with_values(context, fact, dict(zip(levels, new, strict=True))),
                "Other numbers, in the same order.",
            )


def with_values(context: Context, fact: str, new: Mapping[int, int]) -> Context:
    """The context with each whole-number value of a fact become another."""

    def remade(character: CastMember) -> CastMember:
        return replace(character, facts={**character.facts, fact: new[int(character.facts[fact])]})

    return replace(context, characters=tuple(remade(character) for character in context.characters))


T = TypeVar("T")


def easier_first(same: T, regenerated: Iterable[T], harder: bool) -> Iterator[T]:
    """The same numbers first for a younger year, and last for an older one; those made anew between."""
    if not harder:
        yield same
    yield from regenerated
    if harder:
        yield same
