"""What comparisons practise in a year."""

from __future__ import annotations

from .rows import PracticeRow


class ComparePractice(PracticeRow):
    """How far the numbers of a statement are moved when it comes from a younger year, best first."""

    more: tuple[int, ...]
    """What is added to the largest number of each side."""
