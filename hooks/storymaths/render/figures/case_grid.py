"""Every pair of numbers as a square of a grid, marked where a statement holds and where it does not."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .pen import box, svg, words
from .ticks import cross, tick

_MARGIN = 56


def draw(data: Mapping[str, Any]) -> str:
    """``across`` and ``down``: numbers; ``letters``: for down, then across; ``cells``: ``yes``, ``no`` or empty."""
    down, across = (str(letter) for letter in data["letters"])
    side = min(30.0, (316 - _MARGIN) / len(data["across"]))
    step = -(-30 // int(side)) if max(len(str(number)) for number in data["across"]) > 2 else 1
    pieces = [words(_MARGIN - 10, 16, across), words(14, _MARGIN - 8, down)]
    for column, number in enumerate(data["across"]):
        if column % step == 0:
            pieces.append(words(_MARGIN + (column + 0.5) * side, _MARGIN - 8, _said(number), 14))
    for row, number in enumerate(data["down"]):
        top = _MARGIN + row * side
        pieces.append(words(_MARGIN - 8, top + side / 2 + 5, _said(number), 14, "end"))
        for column, mark in enumerate(data["cells"][row]):
            left = _MARGIN + column * side
            pieces.append(box(left, top, side, side))
            if mark:
                pieces.append((tick if mark == "yes" else cross)(left + side / 2, top + side / 2, 7))
    return svg("case-grid", 320, _MARGIN + len(data["down"]) * side + 4, *pieces)


def _said(number: int) -> str:
    return str(number).replace("-", "−")
