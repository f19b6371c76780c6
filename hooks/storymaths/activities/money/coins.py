"""Coins and notes: what they are called, and how they are drawn."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Figure
from ...model.figures.measures import Coin, Coins
from ..saying import listed, number_word
from .uk_coins import NOTES

WORDS = ("coin", "coins", "pound", "pounds", "penny", "pence", "change", "value", "worth", "total", "more")
"""Words of money to look for in a task and its answers."""
_SHOWN = 24
_POUND = 100


def coin_name(pence: int) -> str:
    """What stands on a coin or note: ``20p``, ``£2``."""
    return f"£{pence // _POUND}" if pence >= _POUND and pence % _POUND == 0 else f"{pence}p"


def piece(worth: int, count: int) -> str:
    """``coin``, ``coins``, ``note`` or ``notes``."""
    return ("note" if worth >= NOTES[0] else "coin") + ("" if count == 1 else "s")


def pieces(count: int) -> str:
    """``three coins``."""
    return f"{number_word(count)} coin{'' if count == 1 else 's'}"


def coins_figure(coins: Sequence[int], what: str) -> Figure:
    """Coins and notes side by side, each with its worth on it; the first two dozen of a great many."""
    shown = tuple(Coin(coin_name(worth), "note" if worth >= NOTES[0] else "coin") for worth in coins[:_SHOWN])
    more = f", and {len(coins) - _SHOWN} more" if len(coins) > _SHOWN else ""
    return Figure(Coins(shown), f"{what}: {listed([name for name, _ in shown]) or 'none'}{more}.")
