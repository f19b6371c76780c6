"""What activities with measures practise in a year."""

from __future__ import annotations

from fractions import Fraction

from ..fields import Count
from .amounts import Amounts
from .rows import PracticeRow


class MeasurePractice(PracticeRow):
    """How large amounts become, and the scales they are read from, best first."""

    times: tuple[Fraction, ...]
    """How many times as much an amount from another year becomes."""
    largest: tuple[Amounts, ...]
    """What the largest number of an activity may become."""
    scales: tuple[tuple[Count, Count, Count], ...]
    """Scales from nought: the number at the end, how many parts, a number at every so many marks."""
