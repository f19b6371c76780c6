"""Boxes in a row with a number or a name in each, empty ones to fill in; in lines of equal length where they are many."""

from __future__ import annotations

from ...model.figures.amounts import Track
from .lettering import LINE, SIZE, block, broken
from .pen import box, even, svg

_WIDE, _LETTER, _PAD = 308, 9, 12
_MOST_ACROSS = 8


def draw(figure: Track) -> str:
    """The boxes, from left to right and then line by line."""
    cells = figure.cells
    longest = max((len(word) for cell in cells for word in (cell.split() or [""])), default=1)
    wide = min(_WIDE, max(42, _PAD + _LETTER * longest))
    across = figure.repeats if 1 < figure.repeats <= _MOST_ACROSS else even(len(cells), max(1, _WIDE // wide))
    texts = [broken(cell, wide - 6) for cell in cells]
    high = max(38, 14 + LINE * max((len(lines) for lines in texts), default=1))
    pieces: list[str] = []
    for place, lines in enumerate(texts):
        x, y = 6 + place % across * wide, 6 + place // across * (high + 8)
        pieces.append(box(x, y, wide, high, "fig-soft" if lines else "fig-line"))
        first = y + high / 2 + SIZE / 3 - LINE * (len(lines) - 1) / 2
        pieces.append(block(x + wide / 2, first, lines))
    rows = -(-len(cells) // across)
    return svg(figure.NAME, max(320, 12 + across * wide), 4 + rows * (high + 8), *pieces)
