"""What balances practise in a year."""

from __future__ import annotations

from .rows import PracticeRow


class BalancePractice(PracticeRow):
    """How large the numbers of an older year grow."""

    blends: tuple[int, ...]
    """How many times the old values go into new ones, so that the sums are of the year's size."""
