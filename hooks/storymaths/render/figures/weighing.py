"""A level balance with weights on it, a load among them."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.figures.measures import OnPan, Weighing
from .pen import box, line, path, svg, words

_HIGH, _WIDE, _GAP, _A_ROW, _LETTERS = 30, 64, 4, 2, 8


def draw(figure: Weighing) -> str:
    """The balance, two weights to a row."""
    rows = max(1, *(-(-len(side) // _A_ROW) for side in (figure.left, figure.right)))
    pan = rows * (_HIGH + _GAP) + 8
    pieces = [
        line(85, pan + 22, 235, pan + 22),
        path(f"M160 {pan + 22} L146 {pan + 62} H174 Z", "fig-fill"),
        line(110, pan + 62, 210, pan + 62),
        *_loaded(85, pan, figure.left),
        *_loaded(235, pan, figure.right),
    ]
    return svg(figure.NAME, 320, pan + 70, *pieces)


def _loaded(middle: int, level: int, things: Sequence[OnPan]) -> list[str]:
    pieces = [line(middle - 70, level, middle + 70, level), line(middle, level, middle, level + 22)]
    for index, (name, mass) in enumerate(things):
        row, place = divmod(index, _A_ROW)
        in_row = min(_A_ROW, len(things) - row * _A_ROW)
        x = middle - in_row * (_WIDE + _GAP) / 2 + place * (_WIDE + _GAP) + _GAP / 2
        y = level - (row + 1) * (_HIGH + _GAP) + _GAP - 2
        pieces.append(box(x, y, _WIDE, _HIGH, "fig-fill fig-line" if name else "fig-soft fig-line", 4))
        text = name or mass
        short = text if len(text) <= _LETTERS else f"{text[: _LETTERS - 1]}…"
        pieces.append(words(x + _WIDE / 2, y + 20, short, 14))
    return pieces
