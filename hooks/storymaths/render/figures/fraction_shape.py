"""A bar or a circle cut into parts that need not be equal, each part shaded wholly, partly or not at all."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, pi, sin

from ...model.figures.fractions import ShapeInParts
from .pen import at, box, disc, path, svg, words


def draw(figure: ShapeInParts) -> str:
    """The shape under its label."""
    shares = [float(share) for share in figure.shares]
    label = words(160, 20, figure.label)
    if figure.form == "circle":
        return svg(figure.NAME, 320, 180, label, *_circle(figure.sizes, shares))
    return svg(figure.NAME, 320, 84, label, *_bar(figure.sizes, shares))


def _bar(sizes: Sequence[int], shares: Sequence[float]) -> list[str]:
    left, unit, pieces = 8.0, 304 / sum(sizes), []
    for size, share in zip(sizes, shares, strict=True):
        width = size * unit
        pieces += [box(left, 30, width, 46, "fig-soft")]
        if share:
            pieces.append(box(left, 30, width * share, 46, "fig-fill"))
        pieces.append(box(left, 30, width, 46, "fig-line"))
        left += width
    return pieces


def _circle(sizes: Sequence[int], shares: Sequence[float]) -> list[str]:
    start, pieces = 0.0, [disc(160, 102, 70, "fig-soft")]
    for size, share in zip(sizes, shares, strict=True):
        turn = size / sum(sizes)
        if share >= 1 and turn == 1:
            pieces.append(disc(160, 102, 70, "fig-fill"))
        elif share:
            pieces.append(_slice(start, turn * share, "fig-fill"))
        pieces.append(disc(160, 102, 70, "fig-line") if turn == 1 else _slice(start, turn, "fig-line"))
        start += turn
    return pieces


def _slice(start: float, turn: float, kind: str) -> str:
    """A slice that begins at ``start`` of a turn from the top, clockwise, and takes ``turn`` of the circle."""
    ends = [(160 + 70 * sin(2 * pi * t), 102 - 70 * cos(2 * pi * t)) for t in (start, start + turn)]
    (x1, y1), (x2, y2) = ends
    arc = f"A70 70 0 {int(turn > 0.5)} 1 {at(x2)} {at(y2)}"
    return path(f"M160 102 L{at(x1)} {at(y1)} {arc} Z", kind)
