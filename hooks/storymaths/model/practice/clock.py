"""What activities with clocks and times practise in a year; how finely a clock is read stands in ``years.yaml``."""

from __future__ import annotations

from typing import Literal

from .rows import PracticeRow


class ClockPractice(PracticeRow):
    """How times are told, and how those of an activity are moved."""

    tells: Literal["parts of the day", "words", "digits"]
    """``in the morning``, ``half past 7`` or ``7:30``."""
    clocks: tuple[Literal[12, 24], ...]
    """Clocks of 12 and of 24 hours, where they are told in digits."""
    roman: bool
    """Whether clock faces have Roman numerals too."""
    strides: tuple[int, ...]
    """By how many minutes each time of an activity from a younger year moves on from the one before it, best first."""
