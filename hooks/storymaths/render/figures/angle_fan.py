"""Angles side by side round a point: arms, an arc in each, and what is written there."""

from __future__ import annotations

from math import cos, radians, sin

from ...model.figures.shapes import AngleFan
from .pen import at, disc, line, path, svg, words

_WIDE, _ARM, _ARC, _WORDS = 224, 96, 30, 62


def draw(figure: AngleFan) -> str:
    """The arms from one point, anti-clockwise from the right."""
    sizes = list(map(float, figure.degrees))
    x, y = _WIDE / 2, _ARM + 16.0
    tall = y + 16 if sum(sizes) <= 180 else 2 * y

    def on(degrees: float, far: float) -> tuple[float, float]:
        return x + far * cos(radians(degrees)), y - far * sin(radians(degrees))

    pieces = [line(x, y, *on(0, _ARM))]
    before = 0.0
    for degrees, label in zip(sizes, figure.labels, strict=True):
        after = before + degrees
        pieces.append(line(x, y, *on(after, _ARM)))
        (x1, y1), (x2, y2) = on(before, _ARC), on(after, _ARC)
        large = int(degrees > 180)
        pieces.append(path(f"M{at(x1)} {at(y1)} A{_ARC} {_ARC} 0 {large} 0 {at(x2)} {at(y2)}", "fig-mark"))
        middle = on(before + degrees / 2, _WORDS)
        pieces.append(words(middle[0], middle[1] + 7, label, 20))
        before = after
    return svg(figure.NAME, _WIDE, tall, *pieces, disc(x, y, 3, "fig-mark"))
