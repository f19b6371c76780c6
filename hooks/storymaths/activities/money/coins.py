"""Coins and notes: what they are called, the fewest that make an amount, and how they are drawn."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from ...model.activity import Context, Figure
from ...model.figures.measures import Coin, Coins
from ...model.money import PARTS, Currency
from ..saying import listed, number_word

_SHOWN = 24


def name_coin(worth: int, money: Currency) -> str:
    """What stands on a coin or note: ``20p``, ``£2``."""
    whole = worth >= PARTS and worth % PARTS == 0
    return f"{money.whole.sign}{worth // PARTS}" if whole else f"{worth}{money.part.sign}"


def name_form(worth: int, count: int, money: Currency) -> str:
    """``coin``, ``coins``, ``note`` or ``notes``."""
    return ("note" if money.is_note(worth) else "coin") + ("" if count == 1 else "s")


def count_coins(count: int) -> str:
    """``three coins``."""
    return f"{number_word(count)} coin{'' if count == 1 else 's'}"


def find_invented(worths: Sequence[int], money: Currency) -> list[int]:
    """Those that are not worth what any coin or note of the country is, each once, smallest first."""
    return sorted(set(worths) - set(money.worths))


def pay_in_fewest(pence: int, money: Currency) -> tuple[int, ...]:
    """An amount in the fewest coins and notes, largest first; none where they do not make it.

    What is worth more than two of the largest is paid in the largest first.
    """
    largest = money.worths[-1]
    many = max(0, pence // largest - 1)
    rest = _fewest_by_amount(money.worths)[pence - many * largest]
    return () if rest is None else (largest,) * many + rest


@lru_cache(maxsize=8)
def _fewest_by_amount(worths: tuple[int, ...]) -> list[tuple[int, ...] | None]:
    """The fewest coins for each amount below two of the largest, from those for the smaller amounts."""
    best: list[tuple[int, ...] | None] = [()]
    for amount in range(1, 2 * worths[-1]):
        ways = ((worth, best[amount - worth]) for worth in reversed(worths) if worth <= amount)
        best.append(min(((worth, *rest) for worth, rest in ways if rest is not None), key=len, default=None))
    return best


def mark_coins(coins: Sequence[int], context: Context) -> list[str]:
    """What stands on coins and notes as a year meets them: before it has met the sign for pence, the bare number of each."""
    known = context.year.knows(context.money.part.sign) or any(worth >= PARTS for worth in coins)
    return [name_coin(worth, context.money) if known else str(worth) for worth in coins]


def draw_coins(coins: Sequence[int], what: str, context: Context) -> Figure:
    """Coins and notes side by side, each with its worth on it; the first two dozen of a great many."""
    money, some = context.money, coins[:_SHOWN]
    shown = tuple(
        Coin(text, "note" if money.is_note(worth) else "coin")
        for worth, text in zip(some, mark_coins(some, context), strict=True)
    )
    more = f", and {len(coins) - _SHOWN} more" if len(coins) > _SHOWN else ""
    return Figure(Coins(shown), f"{what}: {listed([coin.text for coin in shown]) or 'none'}{more}.")
