"""Flat shapes side by side, each over its name."""

from __future__ import annotations

from ...model.figures.shapes import FlatShapes
from .flat_outlines import OUTLINES
from .lettering import LINE, block, broken
from .pen import at, disc, path, svg

_ACROSS, _WIDE, _HIGH = 3, 106, 100


def draw(figure: FlatShapes) -> str:
    """Three to a row, the titles in lines that fit."""
    pieces, top = [], 6.0
    shapes = [(name, broken(title, _WIDE + 4)) for name, title in figure.shapes]
    for first in range(0, len(shapes), _ACROSS):
        row = shapes[first : first + _ACROSS]
        for column, (name, title) in enumerate(row):
            middle = 1 + (column + 0.5) * _WIDE
            pieces += [_shape(name, middle, top + _HIGH / 2), block(middle, top + _HIGH + LINE - 2, title)]
        top += _HIGH + LINE * max(len(title) for _, title in row) + 12
    return svg(figure.NAME, 2 + _WIDE * min(_ACROSS, len(shapes)), top, *pieces)


def _shape(name: str, x: float, y: float) -> str:
    return disc(x, y, 40, "fig-fill") if name == "circle" else path(outline(name, x, y), "fig-fill")


def outline(name: str, x: float = 50, y: float = 50) -> str:
    """The course of a shape's outline around a middle, about 90 across; empty for no flat shape of the set."""
    if name == "circle":
        return f"M{at(x - 40)} {at(y)} a40 40 0 1 0 80 0 a40 40 0 1 0 -80 0 Z"
    if name == "oval":
        return f"M{at(x - 46)} {at(y)} a46 28 0 1 0 92 0 a46 28 0 1 0 -92 0 Z"
    if name == "semicircle":
        return f"M{at(x - 44)} {at(y + 22)} a44 44 0 0 1 88 0 Z"
    if name not in OUTLINES:
        return ""
    corners = OUTLINES[name]
    across, up = [point[0] for point in corners], [point[1] for point in corners]
    grow = 84 / max(max(across) - min(across), max(up) - min(up))
    left, foot = (max(across) + min(across)) / 2, (max(up) + min(up)) / 2
    course = " L".join(f"{at(x + (px - left) * grow)} {at(y - (py - foot) * grow)}" for px, py in corners)
    return f"M{course} Z"
