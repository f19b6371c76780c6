"""A part–whole model: the whole above, a line down to each of its parts."""

from __future__ import annotations

from ...model.figures.amounts import PartWhole
from .lettering import SIZE, broken
from .pen import box, disc, line, svg, words

_HIGH, _DEEP, _ONE_LINE = 44, 150, 9
_ROW = 5
"""Dots to a row, so that six to ten are five and some more."""
_NUMBER, _FIGURES = 24, 4
"""How large a number is written, and of how many figures."""


def draw(figure: PartWhole) -> str:
    """The whole above, its parts side by side below."""
    parts = figure.parts
    across = 308 / max(1, len(parts))
    wide = min(96.0, across - 4)
    pieces: list[str] = []
    for place, part in enumerate(parts):
        middle = 6 + across * (place + 0.5)
        pieces.append(line(160, _HIGH + 6, middle, _DEEP - _HIGH - 6))
        pieces += _boxed(middle, _DEEP - _HIGH - 6, wide, part, figure.in_dots)
    return svg(figure.NAME, 320, _DEEP, *pieces, *_boxed(160, 6, 110, figure.whole, figure.in_dots))


def _boxed(middle: float, top: float, wide: float, text: str, in_dots: bool) -> list[str]:
    empty = text in ("", "?")
    frame = box(middle - wide / 2, top, wide, _HIGH, "fig-line" if empty else "fig-soft", 8)
    if empty:
        return [frame]
    if in_dots and text.isdecimal() and int(text) <= 2 * _ROW:
        return [frame, *_dots(middle, top + _HIGH / 2, int(text), wide)]
    if len(text) <= _FIGURES:
        return [frame, words(middle, top + _HIGH / 2 + _NUMBER / 3, text, _NUMBER)]
    lines = [text] if len(text) <= _ONE_LINE else broken(text, wide)[:2]
    first = top + _HIGH / 2 + SIZE / 3 - 9 * (len(lines) - 1)
    return [frame, *(words(middle, first + 18 * place, said, SIZE) for place, said in enumerate(lines))]


def _dots(middle: float, across: float, count: int, wide: float) -> list[str]:
    """So many dots, the first five in one row and the others below."""
    gap = min(18.0, (wide - 8) / _ROW)
    rows = [min(_ROW, count), max(0, count - _ROW)]
    first = across - gap / 2 if rows[1] else across
    return [
        disc(middle + gap * (place - (rows[0] - 1) / 2), first + gap * row, gap * 0.36, "fig-fill")
        for row, dots in enumerate(rows)
        for place in range(dots)
    ]
