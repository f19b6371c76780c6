"""Every basket of things that costs an amount, or no more than it: complete, and given up when there is too much to try."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice

from .coin_ways import Supply, TooMuch, ways

Basket = tuple[int, ...]
"""How many of each thing, in the order of their prices."""
_MOST_TRIED = 200_000


def baskets_for(prices: Sequence[int], amount: int, choose: int | None, repeats: bool, limit: int) -> list[Basket]:
    """The first ``limit`` baskets that cost exactly ``amount``. Raises ``TooMuch``."""
    most = tuple(amount // price if repeats else 1 for price in prices)
    return ways(amount, Supply(tuple(prices), most), choose, limit)


def baskets_within(prices: Sequence[int], amount: int, choose: int | None, repeats: bool, limit: int) -> list[Basket]:
    """The first ``limit`` baskets of something that cost no more than ``amount``. Raises ``TooMuch``."""
    return list(islice(_Within(prices, repeats).baskets(0, amount, choose), limit))


class _Within:
    """Every basket of something that costs no more than an amount, each met once."""

    def __init__(self, prices: Sequence[int], repeats: bool) -> None:
        self._prices, self._repeats, self._tried = prices, repeats, 0

    def baskets(self, kind: int, left: int, choose: int | None, empty: bool = True) -> Iterator[Basket]:
        """Endings of a basket from one line of the price list on. Raises ``TooMuch`` after too many tries."""
        self._tried += 1
        if self._tried > _MOST_TRIED:
            raise TooMuch
        if kind == len(self._prices):
            if not choose and not empty:
                yield ()
            return
        most = left // self._prices[kind] if self._repeats else int(left >= self._prices[kind])
        for taken in range(most if choose is None else min(most, choose), -1, -1):
            rest = None if choose is None else choose - taken
            spare = left - taken * self._prices[kind]
            for ending in self.baskets(kind + 1, spare, rest, empty and not taken):
                yield taken, *ending
