"""How far the axes go in a year."""

from __future__ import annotations

from .rows import PracticeRow


class CoordinatesPractice(PracticeRow):
    """Coordinates as a year meets them."""

    four_quadrants: bool
    """Whether points may be below nought along or up."""
