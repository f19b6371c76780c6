"""A bar or a circle cut into parts that need not be equal, each part shaded wholly, partly or not at all."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, sin

from ...model.figures.fractions import ShapeInParts
from .pen import at, box, disc, path, svg, words

_LABEL = 28
"""As high as letters must be where several of these stand side by side."""
_X, _Y, _RADIUS = 100, 114, 76


def draw(figure: ShapeInParts) -> str:
    """The shape under its label."""
    shares = [float(share) for share in figure.shares]
    if figure.form == "circle":
        return svg(figure.NAME, 2 * _X, 194, words(_X, 26, figure.label, _LABEL), *_circle(figure.sizes, shares))
    return svg(figure.NAME, 320, 90, words(160, 26, figure.label, _LABEL), *_bar(figure.sizes, shares))


def _bar(sizes: Sequence[int], shares: Sequence[float]) -> list[str]:
    left, unit, pieces = 8.0, 304 / sum(sizes), []
    for size, share in zip(sizes, shares, strict=True):
        width = size * unit
        pieces += [box(left, 36, width, 46, "fig-soft")]
        if share:
            pieces.append(box(left, 36, width * share, 46, "fig-fill"))
        pieces.append(box(left, 36, width, 46, "fig-line"))
        left += width
    return pieces


def _circle(sizes: Sequence[int], shares: Sequence[float]) -> list[str]:
    start, pieces = 0.0, [disc(_X, _Y, _RADIUS, "fig-soft")]
    for size, share in zip(sizes, shares, strict=True):
        turn = size / sum(sizes)
        if share >= 1 and turn == 1:
            pieces.append(disc(_X, _Y, _RADIUS, "fig-fill"))
        elif share:
            pieces.append(_slice(start, turn * share, "fig-fill"))
        pieces.append(disc(_X, _Y, _RADIUS, "fig-line") if turn == 1 else _slice(start, turn, "fig-line"))
        start += turn
    return pieces


def _slice(start: float, turn: float, kind: str) -> str:
    """A slice that begins at ``start`` of a turn from the top, clockwise, and takes ``turn`` of the circle."""
    ends = [(_X + _RADIUS * sin(2 * pi * t), _Y - _RADIUS * cos(2 * pi * t)) for t in (start, start + turn)]
    (x1, y1), (x2, y2) = ends
    arc = f"A{_RADIUS} {_RADIUS} 0 {int(turn > 0.5)} 1 {at(x2)} {at(y2)}"
    return path(f"M{_X} {_Y} L{at(x1)} {at(y1)} {arc} Z", kind)
