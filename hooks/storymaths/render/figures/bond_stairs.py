"""Every pair that makes a number as bars of two colours, one under another, so that a missing one leaves a step."""

from __future__ import annotations

from ...model.figures.amounts import BondStairs
from .pen import box, svg, words

_HIGH, _LABEL, _WIDE = 24, 60, 320


def draw(figure: BondStairs) -> str:
    """The pairs, a bar each."""
    rows = figure.rows
    square = min(24.0, (_WIDE - 12 - 2 * _LABEL / 2) / max(1, *(a + b for a, b in rows)))
    pieces: list[str] = []
    for place, (first, second) in enumerate(rows):
        y = 6 + place * (_HIGH + 4)
        pieces.append(words(24, y + 18, str(first), 15, "end"))
        for at in range(first + second):
            kind = "fig-fill" if at < first else "fig-soft"
            pieces.append(box(32 + at * square, y, square, _HIGH, kind))
        pieces.append(words(38 + (first + second) * square, y + 18, str(second), 15, "start"))
    return svg(figure.NAME, _WIDE, 8 + len(rows) * (_HIGH + 4), *pieces)
