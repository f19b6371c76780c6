"""Shaded squares on a grid with a mirror line across the middle."""

from __future__ import annotations

from ...model.figures.shapes import MirrorSquares
from .pen import box, line, svg

_PAST = 14
"""How far the mirror line runs on past the squares."""


def draw(figure: MirrorSquares) -> str:
    """The squares, the mirror line running on past them."""
    rows = figure.rows
    across, down = len(rows[0]), len(rows)
    side = min(32.0, 280 / across)
    left, top = (320 - across * side) / 2, float(_PAST + 4)
    pieces = [
        box(left + column * side, top + row * side, side, side, "fig-fill" if mark == "x" else "fig-line")
        for row, marks in enumerate(rows)
        for column, mark in enumerate(marks)
    ]
    if figure.upright:
        x = left + across * side / 2
        pieces.append(line(x, top - _PAST, x, top + down * side + _PAST, "fig-mark fig-mirror"))
    else:
        y = top + down * side / 2
        pieces.append(line(left - _PAST, y, left + across * side + _PAST, y, "fig-mark fig-mirror"))
    return svg(figure.NAME, 320, top + down * side + _PAST + 4, *pieces)
