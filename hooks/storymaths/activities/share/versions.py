"""Sharing for another year: totals in its tables, as many left over as before, the same characters."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import islice

from ...model.activity import Context
from ...model.practice.share import SharePractice
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import SAME_NUMBERS, easier_first, revalued
from ..saying import listed, written
from .calculation import in_groups, shares_among
from .given import receivers_of
from .solve import find_answers
from .tasks import EachTask, GroupsTask, InGroups, PartsTask, PilesTask, ShareTask, TotalTask, WaysTask

Version = tuple[ShareTask, Context, str]


def versions_of(task: ShareTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """The same first for a younger year and last for an older one; between them, numbers of the year."""
    there = replace(context, year=year)
    same = (task, there, SAME_NUMBERS)
    yield from easier_first(same, _with_other_numbers(task, context, there), year.year > context.year.year)


def _with_other_numbers(task: ShareTask, context: Context, there: Context) -> Iterator[Version]:
    try:
        found = [in_groups(task, value) for value in find_answers(task, context)]
    except Unsolvable:
        return
    if task.fact is not None:
        yield from _with_new_cast(task, task.fact, there, len(found))
        return
    match task:
        case PilesTask():
            yield from _with_new_piles(task, there)
        case WaysTask():
            yield from _with_new_total(task, there)
        case EachTask() | GroupsTask() | TotalTask() | PartsTask():
            yield from _with_new_groups(task, there, found[0], there.year.year == context.year.year)


def _with_new_cast(task: ShareTask, fact: str, there: Context, wanted: int) -> Iterator[Version]:
    """The cast's numbers remade: as many answers as before and nobody with very few, first."""
    ranked = []
    for changed, _ in islice(revalued(there, fact, there.year), 1000):
        values = tuple(int(character.facts[fact]) for character in changed.characters)
        try:
            found = len(list(find_answers(task, changed)))
        except Unsolvable:
            continue
        rank = (abs(found - wanted), max(values) > there.year.largest_calculated, -min(values), values)
        ranked.append((rank, changed))
    for _, changed in sorted(ranked, key=lambda item: item[0]):
        yield task, changed, "Other numbers, in the same order."


def _with_new_groups(
    task: EachTask | GroupsTask | TotalTask | PartsTask, there: Context, old: InGroups, own: bool
) -> Iterator[Version]:
    """Groups and sizes of the year; where a cast shares, its number stays, and in its own year what it is shared by.

    In its own year things given out one to one stay so: two to each would be another task.
    """
    practice = there.year.practice.share
    one_to_one = old.each == 1 and isinstance(task, TotalTask)
    if own and (one_to_one or isinstance(task, GroupsTask)):
        counts = () if receivers_of(task, there) else (*practice.times, *practice.sizes)
        sizes: Iterator[tuple[int, int]] = ((groups, old.each) for groups in counts)
    else:
        stay = own or bool(receivers_of(task, there))
        sizes = _sizes(task, old.groups if stay else None, practice)
    for groups, each in dict.fromkeys(sizes):
        left = min(old.left, (each if isinstance(task, GroupsTask) else groups) - 1)
        says = f"{written(groups)} groups of {written(each)}{f' and {left} over' if left else ''}."
        if isinstance(task, PartsTask):
            says = f"There are {written(groups * each + left)}."
        yield task.with_groups(groups, each, left), there, says


def _sizes(task: ShareTask, sharers: int | None, practice: SharePractice) -> Iterator[tuple[int, int]]:
    sizes, times = practice.sizes, practice.times
    if sharers is not None:
        # Where the year's table is that of the number of characters, they may get any number each.
        yield from ((sharers, each) for each in (*(times if sharers in sizes else ()), *sizes, *times))
        return
    for size in sizes:
        yield from ((size, count) if shares_among(task) else (count, size) for count in times)


def _with_new_total(task: WaysTask, there: Context) -> Iterator[Version]:
    """Other totals with many ways; the number of groups within the same part of them."""
    for shared in there.year.practice.share.totals:
        yield task.with_shared(shared), there, f"There are {written(shared + task.left_over)}."


def _with_new_piles(task: PilesTask, there: Context) -> Iterator[Version]:
    """Piles in the same order that leave as much over as the old ones, in sizes of the year."""
    practice = there.year.practice.share
    by = task.by
    ranks = {quotient: rank for rank, quotient in enumerate(sorted({pile // by for pile in task.piles}))}
    for size in (2,) if by == 2 else (*practice.sizes, by):
        for start, step in practice.piles:
            new = tuple(size * (start + step * ranks[pile // by]) + min(pile % by, size - 1) for pile in task.piles)
            if len(set(new)) < len(set(task.piles)):
                continue
            says = f"The amounts are {listed([written(pile) for pile in new])}, shared by {written(size)}."
            yield task.with_piles(new, size), there, says
