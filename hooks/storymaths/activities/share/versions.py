"""Sharing for another year: totals in its tables, as many left over as before, the same characters."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from typing import TYPE_CHECKING

from ...model.activity import Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import revalued
from ..saying import listed, written
from .found import Shared, Shares, shares_in

if TYPE_CHECKING:
    from . import ShareFields

Version = tuple["ShareFields", Context, str]
_SIZES: dict[int, tuple[int, ...]] = {
    0: (2,),
    1: (5, 2, 10),
    2: (5, 10, 2),
    3: (4, 8, 3, 5),
    4: (7, 6, 9, 12, 11),
    5: (12, 25, 20, 50),
    6: (15, 24, 36, 48),
}
"""By year: the sizes of groups it learns to work with, what is new in it first."""
_TIMES = {0: (3, 4, 5, 2), 1: (4, 3, 2, 5, 6, 8), 2: (6, 7, 8, 4, 9, 3), 3: (6, 7, 9, 12, 8)}
"""By year: how many times a size is taken; from Year 3 on those of Year 3."""
_TOTALS: dict[int, tuple[int, ...]] = {
    0: (6, 8, 10, 4),
    1: (12, 10, 20, 8, 6),
    2: (20, 12, 18, 16, 40, 10),
    3: (24, 32, 40, 16),
    4: (36, 48, 60, 72),
    5: (96, 100, 84, 120),
    6: (144, 180, 120, 200),
}


def versions_of(fields: ShareFields, context: Context, year: YearLimits) -> Iterator[Version]:
    """The same first for a younger year and last for an older one; between them, remade ones."""
    there = replace(context, year=year)
    harder = year.year > context.year.year
    if not harder:
        yield fields, there, "The same numbers."
    try:
        shares = shares_in(fields, context)
    except Unsolvable:
        return
    if fields.fact is not None:
        yield from _with_new_cast(fields, there, len(shares.found))
    elif shares.mode == "piles":
        yield from _piles(fields, there, shares)
    elif shares.mode == "ways":
        yield from _ways(fields, there)
    else:
        yield from _sharing(fields, there, shares)
    if harder:
        yield fields, there, "The same numbers."


def _with_new_cast(fields: ShareFields, there: Context, wanted: int) -> Iterator[Version]:
    """The cast's numbers remade: as many answers as before and nobody with very few, first."""
    fact = fields.fact or ""
    ranked = []
    for changed, _ in islice(revalued(there, fact, there.year), 1000):
        values = tuple(int(character.facts[fact]) for character in changed.characters)
        try:
            found = len(shares_in(fields, changed).found)
        except Unsolvable:
            continue
        ranked.append(
            ((abs(found - wanted), max(values) > there.year.largest_calculated, -min(values), values), changed)
        )
    for _, changed in sorted(ranked, key=lambda item: item[0]):
        yield fields, changed, "The numbers of the cast are remade, in the same order."


def _sharing(fields: ShareFields, there: Context, shares: Shares) -> Iterator[Version]:
    """Groups and sizes of the year; where a cast shares, its number stays."""
    old = shares.found[0]
    for groups, each in dict.fromkeys(_sizes(old, shares, there.year.year)):
        left = min(old.left, (each if shares.mode == "groups" else groups) - 1)
        new = {"total": groups * each + left, "among": groups, "each": each}
        update = {name: new[name] for name in new if getattr(fields, name) is not None}
        says = f"{written(groups)} groups of {written(each)}{f' and {left} over' if left else ''}."
        if shares.mode == "parts":
            says = f"There are {written(new['total'])}."
        yield fields.model_copy(update=update), there, says


def _sizes(old: Shared, shares: Shares, year: int) -> Iterator[tuple[int, int]]:
    times = _TIMES[min(year, 3)]
    if shares.receivers:
        # Where the year's table is that of the number of characters, they may get any number each.
        yield from (
            (old.groups, each) for each in (*(times if old.groups in _SIZES[year] else ()), *_SIZES[year], *times)
        )
        return
    for size in _SIZES[year]:
        yield from ((count, size) if shares.mode in ("groups", "total") else (size, count) for count in times)


def _ways(fields: ShareFields, there: Context) -> Iterator[Version]:
    """Other totals with many ways; the number of groups within the same part of them."""
    if not isinstance(fields.total, int):
        return
    left = fields.left_over or 0
    for shared in _TOTALS[there.year.year]:
        update: dict[str, object] = {"total": shared + left}
        if fields.most is not None:
            update["most"] = max(fields.fewest, min(shared, fields.most * shared // fields.total))
        yield fields.model_copy(update=update), there, f"There are {written(shared + left)}."


def _piles(fields: ShareFields, there: Context, shares: Shares) -> Iterator[Version]:
    """Piles in the same order that leave as much over as the old ones, in sizes of the year."""
    by = fields.among or fields.each or 1
    sizes = (2,) if by == 2 else (*_SIZES[there.year.year], by)
    old = [pile for pile, _ in shares.piles]
    ranks = {quotient: rank for rank, quotient in enumerate(sorted({pile // by for pile in old}))}
    starts = ((2, 1), (3, 1), (4, 2), (1, 1)) if there.year.year < 2 else ((11, 3), (6, 2), (3, 1), (4, 2))
    for size in sizes:
        for start, step in starts:
            new = tuple(size * (start + step * ranks[pile // by]) + min(pile % by, size - 1) for pile in old)
            left = min(fields.left_over or 0, size - 1)
            update: dict[str, object] = {"piles": new, "among" if fields.among else "each": size}
            if fields.left_over is not None:
                update["left_over"] = left
            says = f"The amounts are {listed([written(pile) for pile in new])}, shared by {written(size)}."
            yield fields.model_copy(update=update), there, says
