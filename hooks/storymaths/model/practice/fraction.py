"""What activities with fractions practise in a year."""

from __future__ import annotations

from ..fields import Count
from .rows import PracticeRow


class FractionPractice(PracticeRow):
    """Fractions and amounts, best first."""

    denominators: tuple[Count, ...]
    """Denominators of fractions of an amount, a shape or one whole."""
    each: tuple[Count, ...]
    """What one equal part of an amount may be."""
    shares_by_tables: bool
    """Whether sharing leans on multiplication tables; before that, the things are shared out."""
    names_fraction: bool
    """Whether the year says fraction; before that, it says part."""
