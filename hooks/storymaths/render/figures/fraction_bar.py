"""A bar in equal parts, some of them shaded, with the whole above it and one part's worth inside."""

from __future__ import annotations

from ...model.figures.fractions import FractionBar
from .pen import box, line, svg, words

_LEFT, _WIDE, _TOP, _HIGH = 8, 304, 42, 44


def draw(figure: FractionBar) -> str:
    """The bar, the whole above it."""
    parts, each = figure.parts, figure.each
    width = _WIDE / parts
    pieces = [
        box(_LEFT + i * width, _TOP, width, _HIGH, "fig-fill" if i < figure.shaded else "fig-soft")
        for i in range(parts)
    ]
    pieces += [box(_LEFT + i * width, _TOP, width, _HIGH, "fig-line") for i in range(parts)]
    pieces += [
        line(_LEFT, 30, _LEFT + _WIDE, 30, "fig-tick"),
        line(_LEFT, 24, _LEFT, 36, "fig-tick"),
        line(_LEFT + _WIDE, 24, _LEFT + _WIDE, 36, "fig-tick"),
        words(_LEFT + _WIDE / 2, 20, figure.whole, 24),
    ]
    if each and len(each) * 9 < width:
        pieces += [words(_LEFT + (i + 0.5) * width, _TOP + _HIGH / 2 + 6, each) for i in range(parts)]
    return svg(figure.NAME, 320, 96, *pieces)
