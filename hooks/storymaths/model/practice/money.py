"""What activities with money practise in a year."""

from __future__ import annotations

from ..fields import Count
from .amounts import Amounts
from .rows import PracticeRow


class MoneyPractice(PracticeRow):
    """Amounts in pence and coins to make them, best first."""

    times: tuple[Count, ...]
    """How many times as much an activity from a younger year becomes."""
    parts: tuple[Count, ...]
    """What part of it an activity from an older year becomes: 10 for a tenth."""
    largest: tuple[Amounts, ...]
    """What the largest amount of an activity may become."""
    make: tuple[Count, ...]
    """Amounts to make from coins."""
    coins: tuple[tuple[Count, ...], ...]
    """Kinds of coins and notes to make them from."""
