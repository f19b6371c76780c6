"""A table of two by two boxes: across by the first rule, down by the second."""

from __future__ import annotations

from ...model.figures.sorting import SortCarroll
from .lettering import LINE, block, broken, height, packed
from .pen import box, svg

_WIDE, _EDGE, _HEAD = 320, 4, 88
_BOX = (_WIDE - 2 * _EDGE - _HEAD) / 2
_PAD, _LEAST = 8, 80


def draw(figure: SortCarroll) -> str:
    """The boxes with their headings, each as tall as its names need."""
    headings = (figure.labels, figure.otherwise)
    across = [broken(first, _BOX - 2 * _PAD) for first, _ in headings]
    down = [broken(second, _HEAD - 2 * _PAD) for _, second in headings]
    rows = ((figure.both, figure.second), (figure.first, figure.neither))
    cells = [[packed(names, _BOX - 2 * _PAD) for names in row] for row in rows]
    top = _EDGE + max(map(height, across)) + _PAD
    pieces = [
        block(_EDGE + _HEAD + (column + 0.5) * _BOX, _EDGE + LINE - 4, label, kind="fig-text fig-mark-text")
        for column, label in enumerate(across)
    ]
    for label, row in zip(down, cells, strict=True):
        tall = max(_LEAST, max(height(lines) for lines in (label, *row)) + 2 * _PAD)
        middle = top + tall / 2
        pieces.append(
            block(_EDGE + _HEAD / 2, middle - height(label) / 2 + LINE - 5, label, kind="fig-text fig-mark-text")
        )
        for column, lines in enumerate(row):
            left = _EDGE + _HEAD + column * _BOX
            pieces += [box(left, top, _BOX, tall, "fig-soft"), box(left, top, _BOX, tall, "fig-line")]
            pieces.append(block(left + _BOX / 2, middle - height(lines) / 2 + LINE - 5, lines))
        top += tall
    return svg(figure.NAME, _WIDE, top + _EDGE, *pieces)
