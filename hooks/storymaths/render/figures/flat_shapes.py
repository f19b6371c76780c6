"""Flat shapes side by side, each over its name."""

from __future__ import annotations

from math import cos, radians, sin

from ...model.figures.shapes import FlatShapes
from .flat_outlines import OUTLINES
from .lettering import LINE, block, broken
from .pen import at, disc, path, svg

_ACROSS, _WIDE, _HIGH = 3, 106, 100


def draw(figure: FlatShapes) -> str:
    """Three to a row, the titles in lines that fit."""
    pieces, top = [], 6.0
    shapes = [(name, broken(title, _WIDE + 4), turn) for name, title, turn in figure.shapes]
    for first in range(0, len(shapes), _ACROSS):
        row = shapes[first : first + _ACROSS]
        for column, (name, title, turn) in enumerate(row):
            middle = 1 + (column + 0.5) * _WIDE
            pieces += [_shape(name, middle, top + _HIGH / 2, turn), block(middle, top + _HIGH + LINE - 2, title)]
        top += _HIGH + LINE * max(len(title) for _, title, _ in row) + 12
    return svg(figure.NAME, 2 + _WIDE * min(_ACROSS, len(shapes)), top, *pieces)


def _shape(name: str, x: float, y: float, turn: int) -> str:
    return disc(x, y, 40, "fig-fill") if name == "circle" else path(outline(name, x, y, turn), "fig-fill")


def outline(name: str, x: float = 50, y: float = 50, turn: int = 0) -> str:
    """The course of a shape's outline around a middle, about 90 across; empty for no flat shape of the set.

    It is turned by so many degrees with the clock, and as large as it was.
    """
    if name == "circle":
        return f"M{at(x - 40)} {at(y)} a40 40 0 1 0 80 0 a40 40 0 1 0 -80 0 Z"
    if name in _ROUNDED:
        one, other, tall = _ROUNDED[name]
        (x1, y1), (x2, y2) = (_turned(point, turn) for point in (one, other))
        there = f"A{at(abs(one[0]))} {at(tall)} {turn} 0 1"
        back = "" if name == "semicircle" else f" {there} {at(x + x1)} {at(y + y1)}"
        return f"M{at(x + x1)} {at(y + y1)} {there} {at(x + x2)} {at(y + y2)}{back} Z"
    if name not in OUTLINES:
        return ""
    corners = [_turned((px, -py), turn) for px, py in OUTLINES[name]]
    across, down = [point[0] for point in corners], [point[1] for point in corners]
    grow = 84 / max(max(across) - min(across), max(down) - min(down))
    left, middle = (max(across) + min(across)) / 2, (max(down) + min(down)) / 2
    course = " L".join(f"{at(x + (px - left) * grow)} {at(y + (py - middle) * grow)}" for px, py in corners)
    return f"M{course} Z"


_ROUNDED = {"oval": ((-46.0, 0.0), (46.0, 0.0), 28.0), "semicircle": ((-44.0, 22.0), (44.0, 22.0), 44.0)}
"""From where to where a curve runs, and how tall it is."""


def _turned(point: tuple[float, float], turn: int) -> tuple[float, float]:
    """A point turned about nought with the clock, y going down."""
    x, y = point
    return (x * cos(radians(turn)) - y * sin(radians(turn)), x * sin(radians(turn)) + y * cos(radians(turn)))
