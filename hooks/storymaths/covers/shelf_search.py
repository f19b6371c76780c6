"""Finds every cheapest cover by branch and bound: the textbook method of set covering.

A step takes the row with the fewest choices left to it and tries each of them in turn; what cannot lead to a cover as
cheap as the best so far is cut off, and choices too dear to be part of one are put aside. All sums are of whole numbers,
so that the copy of this search on the reader's device, ``look/shelf-search.js``, takes the very same steps.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from ..model.reference import ShelfCaps
from .shelf_bounds import ONE, affordable
from .shelf_reductions import Choice


@dataclass(slots=True)
class Found:
    """The cheapest covers found, as places in the list of choices."""

    ways: list[tuple[int, ...]] = field(default_factory=list)
    more: bool = False
    """Whether there are more than were kept."""
    proved: bool = True
    """False when the search was given up before it had seen all."""


def search(rows: int, choices: Sequence[Choice], caps: ShelfCaps) -> Found:
    """Every cheapest cover of ``rows``: fewest choices first, then fewest minutes. Some choice covers each row."""
    order = sorted(range(len(choices)), key=lambda n: (-choices[n].covers.bit_count(), choices[n].minutes, n))
    found = _Search([choices[n] for n in order], rows, caps).run()
    found.ways = [tuple(order[n] for n in way) for way in found.ways]
    return found


class _Search:
    """One search; ``_best`` is the number and minutes of the cheapest cover so far."""

    def __init__(self, choices: Sequence[Choice], rows: int, caps: ShelfCaps) -> None:
        self._covers = [choice.covers for choice in choices]
        self._minutes = [choice.minutes for choice in choices]
        self._rows, self._caps, self._tries, self._found = rows, caps, 0, Found()
        self._rows_of = [[row for row in range(rows.bit_length()) if covers >> row & 1] for covers in self._covers]

    def run(self) -> Found:
        """Searches to the end, or until it has tried too often."""
        first = self._greedy()
        self._best = self._cost(first)
        self._visit(self._rows, list(range(len(self._covers))), ())
        if not self._found.ways:
            self._found.ways.append(first)
        return self._found

    def _greedy(self) -> tuple[int, ...]:
        """A cover to begin with: again and again what covers most."""
        rows, taken = self._rows, list[int]()
        while rows:
            gain = [(covers & rows).bit_count() for covers in self._covers]
            taken.append(gain.index(max(gain)))
            rows &= ~self._covers[taken[-1]]
        return tuple(taken)

    def _cost(self, taken: Sequence[int]) -> tuple[int, int]:
        return len(taken), sum(self._minutes[n] for n in taken)

    def _visit(self, rows: int, live: list[int], taken: tuple[int, ...]) -> None:
        self._tries += 1
        if self._tries > self._caps.tries:
            self._found.proved = False
        elif not rows:
            self._note(taken)
        elif (narrowed := self._narrowed(rows, live, taken)) is not None:
            live, coverers = narrowed
            gain = {n: (self._covers[n] & rows).bit_count() for n in coverers}
            for n in sorted(coverers, key=lambda n: (-gain[n], self._minutes[n], n)):
                self._visit(rows & ~self._covers[n], live, (*taken, n))
                live = [other for other in live if other != n]

    def _note(self, taken: tuple[int, ...]) -> None:
        cost = self._cost(taken)
        if cost < self._best:
            self._best, self._found.ways, self._found.more = cost, [], False
        if cost == self._best:
            if len(self._found.ways) < self._caps.ways:
                self._found.ways.append(taken)
            else:
                self._found.more = True

    def _narrowed(self, rows: int, live: list[int], taken: tuple[int, ...]) -> tuple[list[int], list[int]] | None:
        """The choices worth trying, and those of the row with fewest; None when nothing as good as the best can come."""
        count, minutes = self._cost(taken)
        books, room = self._best[0] - count, (self._best[1] - minutes) * ONE
        if self._found.more:
            room -= 1  # one more that is only as good is no news
        while True:
            coverers = self._coverers(rows, live)
            if not all(coverers):
                return None
            size = {n: (self._covers[n] & rows).bit_count() for n in live}
            kept = affordable({n: ONE for n in live if size[n]}, size, coverers, books * ONE)
            if kept is not None and kept[0] > (books - 1) * ONE:  # not one book fewer will do, so minutes decide
                kept = self._in_time(kept[1], size, coverers, books, room)
            if kept is None:
                return None
            if len(kept[1]) == len(live):
                return live, coverers[0]
            live = kept[1]

    def _in_time(
        self, live: list[int], size: dict[int, int], coverers: list[list[int]], books: int, room: int
    ) -> tuple[int, list[int]] | None:
        """Those of ``live`` that can be part of a cover by exactly ``books`` choices within the minutes of ``room``."""
        if sum(sorted(self._minutes[n] for n in live)[:books]) * ONE > room:
            return None
        cost = {n: self._minutes[n] * ONE for n in size if size[n]}
        kept = affordable(cost, size, coverers, room)
        still = set(live)
        return kept and (kept[0], [n for n in kept[1] if n in still])

    def _coverers(self, rows: int, live: list[int]) -> list[list[int]]:
        """The choices that cover each row, the row with the fewest first."""
        found: dict[int, list[int]] = {row: [] for row in range(rows.bit_length()) if rows >> row & 1}
        for n in live:
            for row in self._rows_of[n]:
                if row in found:
                    found[row].append(n)
        return sorted(found.values(), key=len)
