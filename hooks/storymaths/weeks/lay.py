"""Books laid on school days, so that weekends cut them as little as can be.

A book takes some days one after another. Leaving days free before it may spare it a weekend in the middle; this finds
the laying with the fewest weekends inside books, of those the one that ends first, and of those the one in which each
book in turn begins first. It is exact: every laying is weighed, by working back from the last book. The page of a series
does the same on the reader's device: ``theme/look/weeks-lay.js`` keeps to this file.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate
from typing import NamedTuple


class _Best(NamedTuple):
    """The best that can be had from a day on: smaller is better, first things first."""

    weekends: int
    last: int
    """The place of the last day used."""


_CANNOT = _Best(1_000_000_000, 1_000_000_000)


def lay(needed: Sequence[int], weeks: Sequence[int]) -> list[int]:
    """The place of each book's first day.

    ``needed`` says how many days each book takes, in order, each at least one; ``weeks`` is the week each school day is
    in, in order. There must be days enough for all. A book from Thursday to the Monday after next has two weekends in
    it: holidays between make a cut worse.
    """
    here = [_Best(0, day - 1) for day in range(len(weeks) + 1)]
    starts: list[list[int]] = []
    for days in reversed(needed):
        here, begins = _one_book_more(days, weeks, here)
        starts.append(begins)
    found, day = [], 0
    for days, begins in zip(needed, reversed(starts), strict=True):
        found.append(begins[day])
        day = begins[day] + days
    return found


def at_once(needed: Sequence[int]) -> list[int]:
    """The place of each book's first day where no day is left free: each begins as the one before it ends."""
    return list(accumulate(needed, initial=0))[:-1]


def _one_book_more(days: int, weeks: Sequence[int], after: Sequence[_Best]) -> tuple[list[_Best], list[int]]:
    """The best from each day on with one book more before those already weighed, and where that book then begins."""
    best, begins = [_CANNOT] * (len(weeks) + 1), [len(weeks)] * (len(weeks) + 1)
    for day in range(len(weeks) - days, -1, -1):
        then = after[day + days]
        now = _Best(then.weekends + weeks[day + days - 1] - weeks[day], then.last)
        best[day], begins[day] = (now, day) if now <= best[day + 1] else (best[day + 1], begins[day + 1])
    return best, begins
