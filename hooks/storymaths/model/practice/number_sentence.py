"""What number sentences practise in a year."""

from __future__ import annotations

from .rows import PracticeRow


class NumberSentencePractice(PracticeRow):
    """Numbers to put in the places of a sentence."""

    numbers: tuple[int, ...]
    """Numbers the year works with."""
    newer_tables: tuple[int, ...]
    """Tables of the year that want practice more than the first ones."""
    times: int
    """How many times as large as in the first years its numbers are."""
