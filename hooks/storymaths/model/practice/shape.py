"""What is counted on shapes in a year, and how it is known what cannot be."""

from __future__ import annotations

from typing import Literal

from .rows import PracticeRow

Property = Literal[
    "sides", "corners", "symmetry", "right_angles", "acute", "obtuse", "parallel", "perpendicular",
    "faces", "edges", "vertices",
]  # fmt: skip
"""What can be looked at on a shape: the first eight on flat ones, the last three on solids."""


class ShapePractice(PracticeRow):
    """Shapes as a year looks at them."""

    counts: tuple[Property, ...]
    """What the year has a word for."""
    angle_sums: bool
    """Whether the angles of a shape are added up in degrees."""
