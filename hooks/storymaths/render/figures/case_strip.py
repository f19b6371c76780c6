"""Numbers in rows of ten, each marked where a statement holds for it and where it does not."""

from __future__ import annotations

from ...model.figures.cases import CaseStrip
from .pen import box, svg, words
from .ticks import cross, tick

_WIDE, _HIGH = 31, 44


def draw(figure: CaseStrip) -> str:
    """The numbers, each over its mark."""
    pieces = []
    for down, (row, marks) in enumerate(zip(figure.numbers, figure.cells, strict=True)):
        for column, (number, mark) in enumerate(zip(row, marks, strict=True)):
            left, top = 4 + column * _WIDE, 4 + down * _HIGH
            shown = str(number).replace("-", "−")
            pieces += [box(left, top, _WIDE, _HIGH), words(left + _WIDE / 2, top + 17, shown, 14)]
            if mark:
                pieces.append((tick if mark == "yes" else cross)(left + _WIDE / 2, top + 31, 7))
    return svg(figure.NAME, 320, 8 + _HIGH * len(figure.numbers), *pieces)
