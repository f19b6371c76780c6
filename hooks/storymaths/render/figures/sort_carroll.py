"""A table of two by two boxes: across by the first rule, down by the second."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .lettering import LINE, block, broken, height, packed
from .pen import box, svg

_WIDE, _EDGE, _HEAD = 320, 4, 88
_BOX = (_WIDE - 2 * _EDGE - _HEAD) / 2
_PAD, _LEAST = 8, 80


def draw(data: Mapping[str, Any]) -> str:
    """``labels`` and ``otherwise``: two each; ``both``, ``first``, ``second``, ``neither``: lists of names."""
    across = [broken(str(data[kind][0]), _BOX - 2 * _PAD) for kind in ("labels", "otherwise")]
    down = [broken(str(data[kind][1]), _HEAD - 2 * _PAD) for kind in ("labels", "otherwise")]
    cells = [
        [packed(data[name], _BOX - 2 * _PAD) for name in row] for row in (("both", "second"), ("first", "neither"))
    ]
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
    return svg("sort-carroll", _WIDE, top + _EDGE, *pieces)
