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
