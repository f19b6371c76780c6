"""Every order that keeps all clues, without looking at those that cannot be finished."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache

from .clues import Clue


class Orders:
    """The orders of so many characters that keep some clues.

    How many ways an order can be finished depends only on who is placed, and on who came last where a clue
    speaks of neighbours; each such state is counted once, so twelve characters take well under a second.
    """

    def __init__(self, count: int, clues: Sequence[Clue]) -> None:
        self._count = count
        self._neighbours = frozenset(index for clue in clues if clue.minds_the_last for index in clue.who)
        # A clue speaks of its own characters; only "next to" also forbids others to come between.
        self._about = [[c for c in clues if index in c.who or c.says == "next"] for index in range(count)]
        self._ways = cache(self._count_ways)

    @property
    def number(self) -> int:
        """How many orders there are."""
        return self._ways(0, None)

    def __iter__(self) -> Iterator[tuple[int, ...]]:
        """Each order from least to most; sorted as the cast is listed."""
        yield from self._finished((), 0)

    def _finished(self, order: tuple[int, ...], placed: int) -> Iterator[tuple[int, ...]]:
        if len(order) == self._count:
            yield order
            return
        for newcomer in self._allowed(placed, order[-1] if order else None):
            if self._ways(placed | 1 << newcomer, self._worth_knowing(newcomer)):
                yield from self._finished((*order, newcomer), placed | 1 << newcomer)

    def _count_ways(self, placed: int, last: int | None) -> int:
        if placed.bit_count() == self._count:
            return 1
        return sum(
            self._ways(placed | 1 << newcomer, self._worth_knowing(newcomer))
            for newcomer in self._allowed(placed, last)
        )

    def _worth_knowing(self, last: int) -> int | None:
        """Who came last, if a clue speaks of that character's neighbours."""
        return last if last in self._neighbours else None

    def _allowed(self, placed: int, last: int | None) -> Iterator[int]:
        for newcomer, about in enumerate(self._about):
            if not placed >> newcomer & 1 and all(c.allows(newcomer, placed, last, self._count) for c in about):
                yield newcomer


def too_few_to_clash(count: int, clues: Sequence[Clue]) -> list[Clue]:
    """Of clues that no order keeps, some that clash by themselves: without any one of them there is an order."""
    kept = list(clues)
    for clue in clues:
        without = [other for other in kept if other is not clue]
        if not Orders(count, without).number:
            kept = without
    return kept
