"""Dots in equal rows, with a name beside each row where the rows are somebody's, and what is left over below."""

from __future__ import annotations

from ...model.figures.amounts import Array
from .pen import disc, svg, words

_WIDE, _DOT, _LETTER = 320, 22.0, 8.6


def draw(figure: Array) -> str:
    """The dots, as wide apart as there is room for."""
    rows, columns, left = figure.rows, figure.columns, figure.left
    labels = [label[:14] for label in figure.labels]
    aside = 12 + _LETTER * max((len(label) for label in labels), default=0)
    gap = min(_DOT, (_WIDE - aside - 8) / max(1, columns, left))
    high = max(20.0, gap)
    pieces: list[str] = []
    for row in range(rows):
        y = 8 + high * (row + 0.5)
        if labels:
            pieces.append(words(aside - 8, y + 5, labels[row], 15, "end"))
        pieces += [disc(aside + gap * (n + 0.5), y, gap * 0.36, "fig-fill") for n in range(columns)]
    foot = 8 + high * rows
    if left:
        pieces += [disc(aside + gap * (n + 0.5), foot + high * 0.8, gap * 0.36, "fig-line") for n in range(left)]
        foot += high * 1.4
    return svg(figure.NAME, _WIDE, foot + 8, *pieces)
