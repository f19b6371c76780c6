"""How angles are named in a year."""

from __future__ import annotations

from typing import Literal

from .rows import PracticeRow


class AnglePractice(PracticeRow):
    """Angles as a year names them."""

    names: tuple[Literal["acute", "right", "obtuse", "straight", "reflex"], ...]
    """What the year has a name for."""
