"""Every pair of numbers as a square of a grid, marked where a statement holds and where it does not."""

from __future__ import annotations

from ...model.figures.cases import CaseGrid
from .pen import box, svg, words
from .ticks import cross, tick

_MARGIN = 56


def draw(figure: CaseGrid) -> str:
    """The grid, with its letters and numbers along its edges; of long numbers, only some."""
    down, across = figure.letters
    side = min(30.0, (316 - _MARGIN) / len(figure.across))
    step = -(-30 // int(side)) if max(len(str(number)) for number in figure.across) > 2 else 1
    pieces = [words(_MARGIN - 10, 16, across), words(14, _MARGIN - 8, down)]
    for column, number in enumerate(figure.across):
        if column % step == 0:
            pieces.append(words(_MARGIN + (column + 0.5) * side, _MARGIN - 8, _said(number), 14))
    for row, number in enumerate(figure.down):
        top = _MARGIN + row * side
        pieces.append(words(_MARGIN - 8, top + side / 2 + 5, _said(number), 14, "end"))
        for column, mark in enumerate(figure.cells[row]):
            left = _MARGIN + column * side
            pieces.append(box(left, top, side, side))
            if mark:
                pieces.append((tick if mark == "yes" else cross)(left + side / 2, top + side / 2, 7))
    return svg(figure.NAME, 320, _MARGIN + len(figure.down) * side + 4, *pieces)


def _said(number: int) -> str:
    return str(number).replace("-", "−")
