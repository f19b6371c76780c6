"""Numbers in rows of ten, each marked where a statement holds for it and where it does not."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .pen import box, svg, words
from .ticks import cross, tick

_WIDE, _HIGH = 31, 44


def draw(data: Mapping[str, Any]) -> str:
    """``numbers`` and ``cells``: rows of ten or fewer; a cell is ``yes``, ``no`` or empty."""
    pieces = []
    for down, (row, marks) in enumerate(zip(data["numbers"], data["cells"], strict=True)):
        for column, (number, mark) in enumerate(zip(row, marks, strict=True)):
            left, top = 4 + column * _WIDE, 4 + down * _HIGH
            shown = str(number).replace("-", "−")
            pieces += [box(left, top, _WIDE, _HIGH), words(left + _WIDE / 2, top + 17, shown, 14)]
            if mark:
                pieces.append((tick if mark == "yes" else cross)(left + _WIDE / 2, top + 31, 7))
    return svg("case-strip", 320, 8 + _HIGH * len(data["numbers"]), *pieces)
