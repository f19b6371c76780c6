"""What sharing and grouping practise in a year."""

from __future__ import annotations

from .rows import PracticeRow


class SharePractice(PracticeRow):
    """Numbers to share, best first."""

    sizes: tuple[int, ...]
    """Sizes of groups, what is new in the year first."""
    times: tuple[int, ...]
    """How many times a size is taken."""
    totals: tuple[int, ...]
    """Numbers with many ways of sharing them."""
    piles: tuple[tuple[int, int], ...]
    """How many groups the smallest of several amounts makes, and by how many the next ones are larger."""
    counts_in: tuple[int, ...]
    """Steps the year counts in, so that it need not add them."""
