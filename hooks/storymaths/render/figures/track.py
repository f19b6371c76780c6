"""Boxes in a row with a number or a name in each, broken into lines where they are many; empty boxes to fill in."""

from __future__ import annotations

from ...model.figures.amounts import Track
from .lettering import LINE, SIZE, block, broken
from .pen import box, svg

_WIDE, _LETTER, _PAD = 308, 9, 12


def draw(figure: Track) -> str:
    """The boxes, from left to right and then line by line."""
    cells = figure.cells
    longest = max((len(word) for cell in cells for word in (cell.split() or [""])), default=1)
    wide = min(_WIDE, max(42, _PAD + _LETTER * longest))
    across = max(1, min(_WIDE // wide, len(cells)))
    texts = [broken(cell, wide - 6) for cell in cells]
    high = max(38, 14 + LINE * max((len(lines) for lines in texts), default=1))
    pieces: list[str] = []
    for place, lines in enumerate(texts):
        x, y = 6 + place % across * wide, 6 + place // across * (high + 8)
        pieces.append(box(x, y, wide, high, "fig-soft" if lines else "fig-line"))
        first = y + high / 2 + SIZE / 3 - LINE * (len(lines) - 1) / 2
        pieces.append(block(x + wide / 2, first, lines))
    rows = -(-len(cells) // across)
    return svg(figure.NAME, 320, 4 + rows * (high + 8), *pieces)
