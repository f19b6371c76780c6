"""What charts practise in a year."""

from __future__ import annotations

from ..fields import Count
from .rows import PracticeRow


class ChartPractice(PracticeRow):
    """What a picture is worth, and how many times as much is shown, best first."""

    pictures: tuple[Count, ...]
    """How many a picture of a pictogram may stand for."""
    blocks_to_bars: tuple[Count, ...]
    """How many times as much a bar chart shows that was a block diagram."""
    times: tuple[Count, ...]
    """How many times as much a bar chart or a table from another year shows."""
