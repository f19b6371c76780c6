"""The coins and notes of the United Kingdom.

Source: The Royal Mint, denominations of coins in general circulation (1p to £2); Bank of England,
denominations of its notes (£5 to £50). A denomination is a fact; nothing else of either is used.
"""

from __future__ import annotations

from collections.abc import Sequence

COINS: tuple[int, ...] = (1, 2, 5, 10, 20, 50, 100, 200)
"""What each coin is worth, in pence."""
NOTES: tuple[int, ...] = (500, 1000, 2000, 5000)
"""What each note is worth, in pence."""
MONEY: frozenset[int] = frozenset(COINS + NOTES)


def invented(values: Sequence[int]) -> list[int]:
    """Those that are not worth what any coin or note of the United Kingdom is, each once, smallest first."""
    return sorted(set(values) - MONEY)


def in_fewest_coins(pence: int) -> list[int]:
    """An amount in the fewest coins and notes, largest first.

    Taking the largest each time is best with these denominations, though not with any whatever.
    """
    taken: list[int] = []
    for worth in sorted(MONEY, reverse=True):
        count, pence = divmod(pence, worth)
        taken += [worth] * count
    return taken
