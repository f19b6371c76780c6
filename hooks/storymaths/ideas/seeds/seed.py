"""How a kind of activity is filled from a book: a function from its material and a year to candidates."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from ...model.year import YearLimits
from ..candidate import Candidates
from ..material import Material


@dataclass(frozen=True, slots=True)
class Seed:
    """What a kind needs of a book, and what it makes of it."""

    needs: str
    """What a story must have for it, in words that follow "it needs"."""
    plant: Callable[[Material, YearLimits], Candidates]
    """Candidates, the likeliest first; none where the book has nothing for the kind."""
