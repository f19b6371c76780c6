"""Boxes in a row with a number or a name in each, empty ones to fill in; in lines of equal length where they are many."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.figures.amounts import Track
from .lettering import LINE, SIZE, block, broken
from .pen import box, even, svg

_WIDE, _LETTER, _PAD = 308, 9, 10
_WIDEST = 330
"""Of a line of names: letters of the drawing stay large enough on a phone."""
_CLOSE, _NARROW = 10, 8
"""Round names, whose letters are narrower than figures."""
_LEAST_WIDE = 38
_MOST_ACROSS = 8
_TEN = 10


def draw(figure: Track) -> str:
    """The boxes, from left to right and then line by line."""
    cells = figure.cells
    longest = max((len(word) for cell in cells for word in (cell.split() or [""])), default=1)
    named = any(cell and not cell.isdecimal() for cell in cells)
    wide = min(_WIDE, max(_LEAST_WIDE, _CLOSE + _NARROW * longest if named else _PAD + _LETTER * longest))
    across = (named and _names_across(figure, wide)) or _across(cells, max(1, _WIDE // wide))
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


def _names_across(figure: Track, wide: int) -> int:
    """Names to a line: all of them, or whole repeats of them; 0 where nothing shows a repeat."""
    if 1 < figure.repeats <= _MOST_ACROSS:
        return figure.repeats * max(1, min(_MOST_ACROSS, _WIDEST // wide) // figure.repeats)
    return len(figure.cells) if len(figure.cells) <= min(_MOST_ACROSS, _WIDEST // wide) else 0


def _across(cells: Sequence[str], most: int) -> int:
    """As many to a row as make rows alike; where it is counted in ones, so that no row ends just before a ten."""
    alike = even(len(cells), most)
    start = _counted_from(cells)
    if start is None:
        return alike
    rows = range(alike, most + 1), range(alike - 1, 2, -1)
    keeps_tens = (n for some in rows for n in some if all((start + at) % _TEN for at in range(n, len(cells), n)))
    return next(keeps_tens, alike)


def _counted_from(cells: Sequence[str]) -> int | None:
    """The first number of a row that goes up in ones, be some of its boxes empty."""
    starts = {int(cell) - place for place, cell in enumerate(cells) if cell.isdecimal()}
    return starts.pop() if len(starts) == 1 and all(cell.isdecimal() or not cell for cell in cells) else None
