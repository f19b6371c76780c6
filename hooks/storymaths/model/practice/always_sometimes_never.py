"""What statements about numbers are tried with in a year."""

from __future__ import annotations

from ..fields import Count
from .rows import PracticeRow


class AlwaysSometimesNeverPractice(PracticeRow):
    """Where stretches of numbers end, best first."""

    up_to: tuple[Count, ...]
