"""The corners of the named flat shapes, in a space some hundred wide and high, with y upwards."""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, pi, sin, sqrt

Point = tuple[float, float]


def regular(sides: int) -> tuple[Point, ...]:
    """A shape with equal sides and angles, standing on a side."""
    turn = -pi / 2 + pi / sides
    return tuple((50 * cos(turn + 2 * pi * i / sides), 50 * sin(turn + 2 * pi * i / sides)) for i in range(sides))


OUTLINES: Mapping[str, tuple[Point, ...]] = {
    "equilateral triangle": ((0, 0), (100, 0), (50, 50 * sqrt(3))),
    "isosceles triangle": ((0, 0), (60, 0), (30, 100)),
    "scalene triangle": ((0, 0), (100, 0), (70, 60)),
    "right-angled triangle": ((0, 0), (100, 0), (0, 60)),
    "right-angled isosceles triangle": ((0, 0), (90, 0), (0, 90)),
    "square": ((0, 0), (90, 0), (90, 90), (0, 90)),
    "rectangle": ((0, 0), (110, 0), (110, 60), (0, 60)),
    "rhombus": ((0, 50), (35, 0), (70, 50), (35, 100)),
    "parallelogram": ((0, 0), (85, 0), (110, 60), (25, 60)),
    "kite": ((0, 70), (35, 0), (70, 70), (35, 100)),
    "isosceles trapezium": ((0, 0), (110, 0), (85, 60), (25, 60)),
    "right-angled trapezium": ((0, 0), (110, 0), (70, 65), (0, 65)),
    "regular pentagon": regular(5),
    "house-shaped pentagon": ((0, 0), (80, 0), (80, 55), (40, 85), (0, 55)),
    "regular hexagon": regular(6),
    "L-shaped hexagon": ((0, 0), (90, 0), (90, 40), (40, 40), (40, 90), (0, 90)),
    "regular heptagon": regular(7),
    "regular octagon": regular(8),
}
