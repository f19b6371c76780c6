"""Bonds for another year: wholes in the ones, tens or hundreds it works with."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from typing import TYPE_CHECKING

from ...model.activity import Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..number_sentence.fact_family import pairs_for
from ..revalue import revalued
from ..saying import written
from .found import bonds_in

if TYPE_CHECKING:
    from . import BondsFields

Version = tuple["BondsFields", Context, str]
_WHOLES: dict[int, tuple[tuple[int, int], ...]] = {
    0: ((10, 1), (8, 1), (7, 1), (6, 1), (5, 1), (9, 1), (4, 1), (3, 1)),
    1: ((10, 1), (20, 1), (12, 1), (11, 1), (9, 1), (8, 1), (7, 1), (6, 1), (5, 1)),
    2: ((100, 10), (50, 5), (20, 1), (80, 10), (60, 10), (10, 1)),
    3: ((100, 5), (1000, 100), (500, 50), (800, 100), (100, 10)),
    4: ((1000, 50), (10_000, 1000), (5000, 500), (8000, 1000)),
    5: ((100_000, 10_000), (1_000_000, 100_000), (80_000, 10_000)),
    6: ((1_000_000, 50_000), (10_000_000, 1_000_000), (100_000, 10_000)),
}
"""By year: wholes worth splitting, and the steps to split them in."""
_MOST_REMADE = 1500


def versions_of(fields: BondsFields, context: Context, year: YearLimits) -> Iterator[Version]:
    """The same numbers first for a younger year and last for an older one; between them, remade ones."""
    there = replace(context, year=year)
    harder = year.year > context.year.year
    if not harder:
        yield fields, there, "The same numbers."
    if fields.fact:
        yield from _with_new_cast(fields, context, there)
    elif fields.known:
        yield from _with_new_parts(fields, there)
    else:
        yield from _with_new_whole(fields, there)
    if harder:
        yield fields, there, "The same numbers."


def _with_new_cast(fields: BondsFields, context: Context, there: Context) -> Iterator[Version]:
    """The cast's numbers remade, and the whole with them, so that whoever made it first still does."""
    fact = fields.fact or ""
    try:
        ways = bonds_in(fields, context).ways
    except Unsolvable:
        return
    first = [character.id for character in ways[0].who] if ways else []
    offered = []
    for changed, _ in islice(revalued(there, fact, there.year), _MOST_REMADE):
        new = {character.id: int(character.facts[fact]) for character in changed.characters}
        whole = new[fields.whole] if isinstance(fields.whole, str) else sum(new[id_] for id_ in first)
        if not whole:
            return
        update = {} if isinstance(fields.whole, str) else {"whole": whole}
        made = fields.model_copy(update=update)
        found = len(bonds_in(made, changed).ways)
        rank = (whole > there.year.largest_calculated, abs(found - len(ways)), whole % 10 != 0, -whole)
        offered.append((rank, made, changed, whole))
    for _, made, changed, whole in sorted(offered, key=lambda item: item[0]):
        yield made, changed, f"The cast has other numbers, in the same order; the whole is {written(whole)}."


def _with_new_parts(fields: BondsFields, there: Context) -> Iterator[Version]:
    """Known parts and whole remade: two parts across a ten, or everything ten or a hundred times as much."""
    known = fields.known
    if len(known) + (isinstance(fields.whole, int)) == 2:
        for small, large in pairs_for("+", there.year):
            update: dict[str, object] = {"known": (small,), "whole": small + large}
            if fields.whole is None:
                update = {"known": (small, large) if known[0] < known[1] else (large, small)}
            elif isinstance(fields.whole, int) and 2 * known[0] > fields.whole:
                update["known"] = (large,)
            yield fields.model_copy(update=update), there, f"The parts are {written(small)} and {written(large)}."
    for factor in (100, 10):
        new = tuple(part * factor for part in known)
        update = {"known": new, "step": fields.step * factor, "smallest": fields.smallest * factor}
        if isinstance(fields.whole, int):
            update["whole"] = fields.whole * factor
        if fields.largest is not None:
            update["largest"] = fields.largest * factor
        if factor * max(sum(known), fields.whole if isinstance(fields.whole, int) else 0) <= there.caps.number:
            yield fields.model_copy(update=update), there, f"Everything is {factor} times as much."


def _with_new_whole(fields: BondsFields, there: Context) -> Iterator[Version]:
    """Another whole; the least and the most a part may be keep their place in it."""
    if not isinstance(fields.whole, int) or not fields.whole:
        return
    for whole, step in _WHOLES[there.year.year]:
        update: dict[str, object] = {"whole": whole, "step": step, "smallest": fields.smallest // fields.step * step}
        if fields.largest is not None:
            share = fields.largest * whole // fields.whole
            update["largest"] = max(step, share // step * step)
        by = f", split in steps of {written(step)}" if step > 1 else ""
        yield fields.model_copy(update=update), there, f"The whole is {written(whole)}{by}."
