"""Bonds for another year: wholes and parts in the ones, tens or hundreds it works with."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice
from math import comb

from ...model.activity import Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import SAME_NUMBERS, easier_first, revalued
from ..saying import written
from .given import whole_of
from .solve import find_bonds
from .tasks import BondsTask, CastTask, MissingTask, SplitTask, WholeTask

Version = tuple[BondsTask, Context, str]
_MOST_REMADE = 1500
_SAYING = 40
"""Steps to put what is found into words."""


def versions_of(task: BondsTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """The same numbers first for a younger year and last for an older one; between them, those of the year."""
    there = replace(context, year=year)
    same: Version = (task, there, SAME_NUMBERS)
    yield from easier_first(same, _with_other_numbers(task, context, there), year.year > context.year.year)


def _with_other_numbers(task: BondsTask, context: Context, there: Context) -> Iterator[Version]:
    match task:
        case CastTask():
            yield from _with_new_cast(task, context, there)
        case SplitTask():
            yield from _with_new_whole(task, there)
        case WholeTask():
            yield from _with_new_parts(task, there)
        case MissingTask():
            yield from _with_new_missing(task, there)


def _with_new_cast(task: CastTask, context: Context, there: Context) -> Iterator[Version]:
    """The cast's numbers remade, and the whole with them, so that whoever made it first still does."""
    try:
        bonds = find_bonds(task, context)
    except Unsolvable:
        return
    first = (bonds[0].who or ()) if bonds else ()
    offered = []
    for changed, _ in islice(revalued(there, task.fact, there.year), _MOST_REMADE):
        made = task.with_whole(
            sum(int(character.facts[task.fact]) for character in changed.characters if character.id in first)
        )
        whole = whole_of(made, changed)
        if not whole:
            return
        there.effort.spend(steps_of(made, changed) - _SAYING)
        found = len(find_bonds(made, changed))
        rank = (whole > there.year.largest_calculated, abs(found - len(bonds)), whole % 10 != 0, -whole)
        offered.append((rank, made, changed, whole))
    for _, made, changed, whole in sorted(offered, key=lambda item: item[0]):
        yield made, changed, f"The cast has other numbers, in the same order; the whole is {written(whole)}."


def steps_of(task: BondsTask, context: Context) -> int:
    """How long it takes to solve one: where characters are chosen, each choice of them is looked at."""
    return _SAYING + 2 + (comb(len(context.characters), task.parts) // 6 if isinstance(task, CastTask) else 0)


def _with_new_whole(task: SplitTask, there: Context) -> Iterator[Version]:
    """Another whole; the least and the most a part may be keep their place in it."""
    if not task.whole:
        return
    for whole, step in there.year.practice.bonds.wholes:
        by = f", split in steps of {written(step)}" if step > 1 else ""
        yield task.with_whole(whole, step), there, f"The whole is {written(whole)}{by}."


def _with_new_parts(task: WholeTask, there: Context) -> Iterator[Version]:
    """Two parts of the year in the order of size they had, or everything ten or a hundred times as much."""
    if len(task.known) == 2:
        for small, large in there.year.practice.bonds.pairs:
            known = (small, large) if task.known[0] < task.known[1] else (large, small)
            yield task.with_known(known), there, _say_pair(small, large)
    for factor in _factors(sum(task.known), there):
        yield task.with_known(tuple(part * factor for part in task.known)), there, _say_times(factor)


def _with_new_missing(task: MissingTask, there: Context) -> Iterator[Version]:
    """A part of the year, the larger one known if it was, or everything ten or a hundred times as much."""
    if len(task.known) == 1:
        for small, large in there.year.practice.bonds.pairs:
            known = large if 2 * task.known[0] > task.whole else small
            yield task.with_known((known,), small + large), there, _say_pair(small, large)
    for factor in _factors(task.whole, there):
        yield task.times(factor), there, _say_times(factor)


def _say_pair(small: int, large: int) -> str:
    return f"The parts are {written(small)} and {written(large)}."


def _factors(largest: int, there: Context) -> list[int]:
    return [factor for factor in (100, 10) if factor * largest <= there.caps.number]


def _say_times(factor: int) -> str:
    return f"Everything is {factor} times as much."
