"""A comparison for another year: its numbers moved so that the same lines are true and the same signs belong."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import chain, islice, takewhile
from typing import TYPE_CHECKING

from ...model.activity import Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import revalued

if TYPE_CHECKING:
    from . import Compare, CompareFields

_PLAIN = re.compile(r"[\d\s+=≠<>?_]+")
_RELATION = re.compile(r"(\s*[=≠<>?]\s*)")
_NUMBER = re.compile(r"\d+")
_MORE: Mapping[int, tuple[int, ...]] = {
    0: (), 1: (5, 10), 2: (20, 30, 10, 40), 3: (200, 300, 120, 100), 4: (2000, 3500), 5: (20_000,), 6: (200_000,),
}  # fmt: skip
"""What is added to the largest number of each side for an older year."""
_LESS = (10, 20, 30, 40, 50, 60, 70, 80, 90, 5, 2, 100, 200, 500)
_NOT_NUMBERS = frozenset({"=", "≠", "<", ">", "true"})
_YEAR_OF_EQUALS, _YEAR_OF_SIGNS = 1, 2
_Change = tuple["CompareFields", Context, str]

_MOST_LOOKED_AT = 600
"""Candidates worked out before giving up: half a second's worth."""


def versions_of(kind: Compare, fields: CompareFields, context: Context, year: YearLimits) -> Iterator[_Change]:
    """Candidates, best first: for an older year larger numbers before the same ones, for a younger one after."""
    if year.year < _YEAR_OF_EQUALS:
        yield fields, context, "The same numbers."  # nothing can be written before = is known
        return
    wanted = _pattern(kind, fields, context)
    harder = year.year > context.year.year
    same: list[_Change] = [(fields, context, "The same numbers.")]
    moved = [*_moved(fields, context, year, harder), *_more_of_the_fact(fields, context, year)]
    offers = chain(moved, same) if harder else chain(same, moved)
    for offered in islice(chain(offers, _revalued(fields, context, year)), _MOST_LOOKED_AT):
        if _pattern(kind, offered[0], offered[1]) == wanted:
            yield offered
            yield from _with_equal_only(kind, offered, year)


def _pattern(kind: Compare, fields: CompareFields, context: Context) -> list[tuple[int, str]] | None:
    """Which lines have answers, and the signs that belong; None when it cannot be worked out."""
    try:
        answers = kind.solve(fields, context).answers
    except Unsolvable:
        return None
    return [(a.data["line"], a.data["fill"] if a.data["fill"] in _NOT_NUMBERS else "") for a in answers]


def _more_of_the_fact(fields: CompareFields, context: Context, year: YearLimits) -> Iterator[_Change]:
    """The values of the cast a table of the year times as much, the largest table first."""
    if fields.fact and context.characters and year.year > context.year.year:
        times = takewhile(lambda offer: offer[1].startswith("Every"), revalued(context, fields.fact, year))
        yield from ((fields, place, why) for place, why in reversed(list(times)))


def _revalued(fields: CompareFields, context: Context, year: YearLimits) -> Iterator[_Change]:
    if fields.fact and context.characters:
        yield from ((fields, place, why) for place, why in revalued(context, fields.fact, year))


def _moved(fields: CompareFields, context: Context, year: YearLimits, harder: bool) -> list[_Change]:
    """The numbers in the statements made larger or smaller, where they are whole numbers that are only added."""
    if not all(_PLAIN.fullmatch(text) for text in fields.statements):
        return []
    offers: list[_Change] = []
    if harder:
        steps = [(_shifted(fields.statements, by), f"{by:,} more on each side.") for by in _MORE[year.year]]
        steps += [(_scaled(fields.statements, by), f"Every number is {by} times as much.") for by in (10, 5, 2)]
    else:
        steps = [(_shifted(fields.statements, -by), f"{by:,} less on each side.") for by in _LESS]
        steps += [(_divided(fields.statements, by), f"Every number is divided by {by}.") for by in (10, 5, 2)]
    for statements, why in steps:
        if statements is not None:
            offers.append((fields.model_copy(update={"statements": statements}), context, why))
    return offers


def _with_equal_only(kind: Compare, offered: _Change, year: YearLimits) -> Iterator[_Change]:
    """The same without < and >, for a year that does not know them: = and ≠ take their place."""
    fields, context, why = offered
    if year.year >= _YEAR_OF_SIGNS or not re.search("[<>?]", " ".join(fields.statements)):
        return
    statements = tuple(_equal_or_not(kind, fields, context, text) for text in fields.statements)
    changed = fields.model_copy(update={"signs": ("=", "≠"), "statements": statements})
    yield changed, context, f"{why} Only = and ≠ are used."


def _equal_or_not(kind: Compare, fields: CompareFields, context: Context, text: str) -> str:
    """The line with = or ≠ for each < and >, whichever leaves it as true or as untrue as it was."""
    wanted = _pattern(kind, fields.model_copy(update={"statements": (text,)}), context)
    for sign in "≠=":
        changed = re.sub("[<>]", sign, text)
        if _pattern(kind, fields.model_copy(update={"statements": (changed,)}), context) == wanted:
            return changed
    return text


def _shifted(statements: Sequence[str], by: int) -> tuple[str, ...] | None:
    """The largest number of every side made larger by as much; None where one would drop below 1."""
    changed = []
    for statement in statements:
        sides = _RELATION.split(statement)
        for index in range(0, len(sides), 2):
            numbers = [int(number) for number in _NUMBER.findall(sides[index])]
            if not numbers:
                continue  # a side that is only a gap
            largest = max(numbers)
            if largest + by < 1:
                return None
            sides[index] = re.sub(rf"(?<!\d){largest}(?!\d)", str(largest + by), sides[index], count=1)
        changed.append("".join(sides))
    return tuple(changed)


def _scaled(statements: Sequence[str], by: int) -> tuple[str, ...]:
    return tuple(_NUMBER.sub(lambda m: str(int(m.group()) * by), statement) for statement in statements)


def _divided(statements: Sequence[str], by: int) -> tuple[str, ...] | None:
    if any(int(number) % by for statement in statements for number in _NUMBER.findall(statement)):
        return None
    return tuple(_NUMBER.sub(lambda m: str(int(m.group()) // by), statement) for statement in statements)
