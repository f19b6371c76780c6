"""Towers of squares side by side, so that the step from one to the next can be seen."""

from __future__ import annotations

from ...model.figures.amounts import Towers
from .pen import box, line, svg, words

_WIDE, _HIGH = 308, 150


def draw(figure: Towers) -> str:
    """The towers, each over its height."""
    heights = figure.heights
    across = _WIDE / max(1, len(heights))
    square = min(18.0, across - 6, _HIGH / max(1, *heights))
    foot = 8 + _HIGH
    pieces = [line(6, foot, 6 + _WIDE, foot)]
    for place, height in enumerate(heights):
        middle = 6 + across * (place + 0.5)
        left = middle - square / 2
        pieces += [box(left, foot - square * (n + 1), square, square, "fig-soft") for n in range(height)]
        pieces.append(words(middle, foot + 20, str(height) if height else "?"))
    return svg(figure.NAME, 320, foot + 28, *pieces)
