"""How positions and turns are practised in a year."""

from __future__ import annotations

from typing import Literal

from .rows import PracticeRow

Saying = Literal["left and right", "clockwise", "degrees"]
"""How turns are said."""


class PositionPractice(PracticeRow):
    """Turns as a year says them."""

    turns: Saying
