"""Coins and notes in rows, each with what it is worth written on it; all of one size, so that size tells nothing."""

from __future__ import annotations

from ...model.figures.measures import Coins
from .pen import box, disc, svg, words

_A_ROW, _STEP = 6, 52


def draw(figure: Coins) -> str:
    """The coins and notes, six to a row."""
    pieces = []
    for index, (text, form) in enumerate(figure.coins):
        x, y = 30 + _STEP * (index % _A_ROW), 30 + _STEP * (index // _A_ROW)
        shape = (
            box(x - 24, y - 15, 48, 30, "fig-soft fig-line", 3)
            if form == "note"
            else disc(x, y, 22, "fig-soft fig-line")
        )
        pieces += [shape, words(x, y + 6, text, 14 if len(text) > 3 else 16)]
    rows = max(1, -(-len(figure.coins) // _A_ROW))
    return svg(figure.NAME, 320, 8 + _STEP * rows, *pieces)
