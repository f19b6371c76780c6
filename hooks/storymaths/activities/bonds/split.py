"""Every way to split a whole number into parts, in order: the smallest part first, each rising in turn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import permutations


@dataclass(frozen=True, slots=True)
class Split:
    """What parts may be: how many, between which numbers, in equal steps from nought, all different or not."""

    parts: int
    least: int
    most: int
    step: int = 1
    different: bool = False

    def ways(self, whole: int, taken: tuple[int, ...] = ()) -> Iterator[tuple[int, ...]]:
        """Each set of parts once, rising; with ``different``, none of those ``taken``. Lazy, and never idle for long."""
        if whole % self.step == 0:
            low, high = -(-self.least // self.step), self.most // self.step
            for way in self._rising(whole // self.step, self.parts, low, high):
                parts = tuple(part * self.step for part in way)
                if not (self.different and set(parts) & set(taken)):
                    yield parts

    def _rising(self, rest: int, count: int, low: int, high: int) -> Iterator[tuple[int, ...]]:
        if count == 0:
            if rest == 0:
                yield ()
            return
        apart = int(self.different)
        others = count - 1
        # The others reach at most this much, so that this part is at least the rest of it.
        reach = others * high - apart * others * (others - 1) // 2
        first = max(low, rest - reach)
        while count * first + apart * count * others // 2 <= rest and first <= high:
            for way in self._rising(rest - first, others, first + apart, high):
                yield (first, *way)
            first += 1

    def smallest_whole(self) -> int:
        """The least the parts can come to."""
        return self._total(-(-self.least // self.step), 1)

    def largest_whole(self) -> int:
        """The most the parts can come to."""
        return self._total(self.most // self.step, -1)

    def _total(self, end: int, way: int) -> int:
        spread = self.parts * (self.parts - 1) // 2 if self.different else 0
        return (self.parts * end + way * spread) * self.step


def orders_of(way: tuple[int, ...]) -> list[tuple[int, ...]]:
    """Every different order of the parts, in the order of numbers."""
    return sorted(set(permutations(way)))
