"""Statements between numbers of the cast, with the sign missing."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations, pairwise

from ...model.book import Character
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidates
from ..material import Material
from ..number_sets import NumberSet, number_sets
from .seed import Seed

_LINES = 4


def _plant(material: Material, limits: YearLimits) -> Candidates:
    if not limits.knows("="):
        return
    signs: list[Plain] = ["<", "=", ">"] if limits.knows("<") else ["=", "≠"]
    which = "<, = or >" if limits.knows("<") else "= or ≠"
    for numbers in number_sets(material, limits):
        for sums in (True, False):
            lines = list(_statements(numbers, sums, limits))[:_LINES]
            if len(lines) > 1:
                title = f"Which sign? {'Two with one' if sums else 'One with one'}: {numbers.words.things}"
                ask = f"Compare {numbers.words.everybodys}. Which sign belongs between the two sides: {which}?"
                statements: list[Plain] = [*lines]
                yield numbers.with_cast("compare", title, ask, statements=statements, signs=signs)


def _statements(numbers: NumberSet, sums: bool, limits: YearLimits) -> Iterator[str]:
    """One against one, or one and two against two; an equal one among them where there is one."""
    rising, values = numbers.rising, numbers.values
    if not sums:
        yield f"{rising[-1].name} ? {rising[0].name}"
        alike = next((pair for pair in combinations(rising, 2) if values[pair[0].id] == values[pair[1].id]), None)
        if alike:
            yield f"{alike[0].name} ? {alike[1].name}"
        yield from (f"{one.name} ? {other.name}" for one, other in pairwise(rising[1:]))
        return
    taken: set[tuple[str, str]] = set()
    for place, one in enumerate(reversed(rising)):
        pairs = [pair for pair in combinations(rising, 2) if one not in pair and _ids(pair) not in taken]
        near = sorted(pairs, key=lambda pair: abs(_together(numbers, pair) - values[one.id]))
        equal = [pair for pair in near if _together(numbers, pair) == values[one.id]]
        # An equal one first, and then every other time one that is not.
        fitting = equal if equal and place % 2 == 0 else [pair for pair in near if pair not in equal]
        for first, second in fitting[:1]:
            if _together(numbers, (first, second)) <= limits.largest_calculated:
                yield f"{first.name} + {second.name} ? {one.name}"


def _ids(pair: tuple[Character, Character]) -> tuple[str, str]:
    return pair[0].id, pair[1].id


def _together(numbers: NumberSet, pair: tuple[Character, Character]) -> int:
    return numbers.values[pair[0].id] + numbers.values[pair[1].id]


SEED = Seed("three characters or more with a number each", _plant)
