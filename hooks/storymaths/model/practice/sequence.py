"""What counts and patterns practise in a year."""

from __future__ import annotations

from typing import Literal

from ..fields import Count
from .rows import PracticeRow


class SequencePractice(PracticeRow):
    """Steps, starts and places, best first."""

    steps: tuple[Count, ...]
    """Steps to count in, what is new in the year first."""
    starts: tuple[int, ...]
    """Where a count starts; in a table, how many times its step."""
    factors: tuple[Count, ...]
    """How many times the one before each number is."""
    multiplied: tuple[Count, ...]
    """The smallest number of a row that is multiplied along."""
    places: tuple[Count, ...]
    """Places of a pattern worth asking about, rising."""
    counts_in: tuple[Count, ...]
    """Steps the year counts in, so that it need not add them."""
    tells_steps: Literal["in words", "in signs"]
    """Whether one step is told as ``2 more than 6 is 8`` or as ``6 + 2 = 8``."""
