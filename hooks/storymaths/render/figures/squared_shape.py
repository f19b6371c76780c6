"""A shape of whole squares: its squares in thin lines, its outline in a strong one."""

from __future__ import annotations

from ...model.figures.shapes import SquaredShape
from .pen import box, line, svg

_WIDE, _EDGE, _LARGEST = 320, 6, 36.0


def draw(figure: SquaredShape) -> str:
    """The squares, then the edges that only one of them has."""
    rows = figure.rows
    side = min(_LARGEST, (_WIDE - 2 * _EDGE) / len(rows[0]))
    left, top = (_WIDE - len(rows[0]) * side) / 2, float(_EDGE)
    shape = {(across, down) for down, row in enumerate(rows) for across, mark in enumerate(row) if mark == "x"}
    squares, edges = [], []
    for across, down in sorted(shape):
        x, y = left + across * side, top + down * side
        squares.append(box(x, y, side, side, "fig-soft fig-faint"))
        ends = {(0, -1): (x, y, x + side, y), (1, 0): (x + side, y, x + side, y + side),
                (0, 1): (x, y + side, x + side, y + side), (-1, 0): (x, y, x, y + side)}  # fmt: skip
        edges += [line(*end) for (a, d), end in ends.items() if (across + a, down + d) not in shape]
    return svg(figure.NAME, _WIDE, 2 * _EDGE + len(rows) * side, *squares, *edges)
