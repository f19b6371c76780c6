"""A grid of named squares with a start, a goal, blocked squares, and a way over it."""

from __future__ import annotations

from ...model.figures.shapes import GridRoute, Square
from .pen import at, box, disc, line, path, svg, words

_MARGIN = 30
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_TURNED = {"up": (0, -1), "right": (1, 0), "down": (0, 1), "left": (-1, 0)}


def draw(figure: GridRoute) -> str:
    """The grid, its letters below it and its numbers to the left."""
    columns, rows = figure.columns, figure.rows
    side = min(44.0, (320 - _MARGIN - 4) / columns)
    step = -(-18 // int(side))
    foot = 4 + rows * side

    def middle(square: Square) -> tuple[float, float]:
        return _MARGIN + (square[0] + 0.5) * side, foot - (square[1] + 0.5) * side

    pieces = []
    for column, row in figure.blocked:
        x, y = _MARGIN + column * side, foot - (row + 1) * side
        pieces += [box(x, y, side, side, "fig-fill"), line(x, y, x + side, y + side), line(x, y + side, x + side, y)]
    pieces += [line(_MARGIN + i * side, 4, _MARGIN + i * side, foot) for i in range(columns + 1)]
    pieces += [line(_MARGIN, 4 + i * side, _MARGIN + columns * side, 4 + i * side) for i in range(rows + 1)]
    pieces += [words(_MARGIN + (i + 0.5) * side, foot + 21, _LETTERS[i], 20) for i in range(0, columns, step)]
    pieces += [words(_MARGIN - 6, foot - (i + 0.5) * side + 7, str(i + 1), 20, "end") for i in range(0, rows, step)]
    if figure.path:
        corners = " L".join(f"{at(x)} {at(y)}" for x, y in map(middle, figure.path))
        pieces += [path(f"M{corners}", "fig-mark"), disc(*middle(figure.path[-1]), side / 7, "fig-mark fig-end")]
    if figure.goal:
        x, y = middle(figure.goal)
        pieces += [disc(x, y, side * 0.36), disc(x, y, side * 0.2)]
    pieces.append(_arrow(*middle(figure.start), side * 0.36, figure.facing))
    return svg(figure.NAME, _MARGIN + columns * side + 4, foot + 28, *pieces)


def _arrow(x: float, y: float, size: float, facing: str) -> str:
    """An arrowhead that points the way faced."""
    across, down = _TURNED[facing]
    tip = (x + across * size, y + down * size)
    ends = [
        (x - across * size + turn * down * size * 0.8, y - down * size - turn * across * size * 0.8) for turn in (1, -1)
    ]
    notch = (x - across * size * 0.4, y - down * size * 0.4)
    corners = " L".join(f"{at(px)} {at(py)}" for px, py in (tip, ends[0], notch, ends[1]))
    return path(f"M{corners} Z", "fig-fill")
