"""What number bonds practise in a year."""

from __future__ import annotations

from .rows import PracticeRow


class BondsPractice(PracticeRow):
    """Numbers to split and to make, best first."""

    wholes: tuple[tuple[int, int], ...]
    """Wholes worth splitting, and the steps to split them in."""
    pairs: tuple[tuple[int, int], ...]
    """Two parts that make a whole, the smaller first: across a ten where the year goes there."""
