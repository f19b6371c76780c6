"""Every way to make an amount from things of given worth: complete, and given up early when there are too many."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice
from math import gcd

MOST_AMOUNT = 20_000
"""The largest amount made, in the smallest useful step: £200 in pennies."""
MOST_COUNT = 50
Counts = tuple[int, ...]
"""How many of each, in the order their worths are given."""


class TooMuch(ValueError):
    """The amount is too large to be made coin by coin."""


@dataclass(frozen=True, slots=True)
class Supply:
    """What may be taken: how much each kind is worth, and how many of it there are."""

    worths: tuple[int, ...]
    most: tuple[int, ...]

    @classmethod
    def endless(cls, worths: Sequence[int], amount: int) -> Supply:
        """As many of each as an amount could need."""
        return cls(tuple(worths), tuple(amount // worth for worth in worths))

    def in_steps_of(self, step: int, amount: int) -> Supply:
        """The same, counted in larger steps; none of a kind is kept than the amount could use."""
        most = (min(most, amount // worth) for worth, most in zip(self.worths, self.most, strict=True))
        return Supply(tuple(worth // step for worth in self.worths), tuple(most))


def ways(amount: int, supply: Supply, count: int | None, limit: int) -> list[Counts]:
    """Every way to make an amount, or the first ``limit``: most of the first kind first.

    ``count`` is how many things in all, or None for any number of at most ``MOST_AMOUNT``.
    Raises ``TooMuch`` for an amount beyond ``MOST_AMOUNT`` steps or a count beyond ``MOST_COUNT``.
    """
    amount, supply = _smallest_steps(amount, supply)
    if count is not None and count > MOST_COUNT:
        raise TooMuch
    if not amount:
        return []
    reach = _reached(amount, supply) if count is None else _reached_with(amount, supply, count)
    if not supply.worths or not reach[0][count or 0] >> amount & 1:
        return []
    return list(islice(_ways(supply, reach, 0, amount, count), limit))


def fewest(amount: int, supply: Supply) -> int | None:
    """The least number of things that make an amount; None when no number up to ``MOST_COUNT`` does."""
    amount, supply = _smallest_steps(amount, supply)
    if not amount:
        return None
    reach = _reached_with(amount, supply, min(MOST_COUNT, sum(supply.most)))[0]
    return next((count for count, reached in enumerate(reach) if reached >> amount & 1), None)


def _smallest_steps(amount: int, supply: Supply) -> tuple[int, Supply]:
    step = gcd(amount, *supply.worths)
    if amount // step > MOST_AMOUNT:
        raise TooMuch
    return amount // step, supply.in_steps_of(step, amount)


def _reached(amount: int, supply: Supply) -> list[list[int]]:
    """For each kind on, the amounts that it and later kinds can make, as the bits of one number."""
    within = (1 << amount + 1) - 1
    reach = [1]
    for worth, most in zip(reversed(supply.worths), reversed(supply.most), strict=True):
        bits, left, step = reach[-1], most, 1
        while left:
            # Doubling: having reached with up to n more, reach with up to 2n more.
            taken = min(step, left)
            bits |= bits << worth * taken & within
            left, step = left - taken, step * 2
        reach.append(bits)
    return [[bits] for bits in reversed(reach)]


def _reached_with(amount: int, supply: Supply, count: int) -> list[list[int]]:
    """The same, apart for each number of things used, from none to ``count``."""
    within = (1 << amount + 1) - 1
    reach = [[1, *[0] * count]]
    for worth, most in zip(reversed(supply.worths), reversed(supply.most), strict=True):
        after = reach[-1]
        row = []
        for used in range(count + 1):
            bits = 0
            for taken in range(min(used, most) + 1):
                bits |= after[used - taken] << worth * taken & within
            row.append(bits)
        reach.append(row)
    return reach[::-1]


def _ways(supply: Supply, reach: list[list[int]], kind: int, left: int, count: int | None) -> Iterator[Counts]:
    """Every ending from a kind on; only steps that can still come out are taken."""
    worth = supply.worths[kind]
    if kind == len(supply.worths) - 1:
        yield (left // worth,)
        return
    most = min(supply.most[kind], left // worth, MOST_AMOUNT if count is None else count)
    for taken in range(most, -1, -1):
        rest = left - taken * worth
        still = None if count is None else count - taken
        if reach[kind + 1][still or 0] >> rest & 1:
            for ending in _ways(supply, reach, kind + 1, rest, still):
                yield taken, *ending
