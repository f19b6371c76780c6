"""Coins and notes in rows, each with what it is worth written on it; all of one size, so that size tells nothing."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .pen import box, disc, svg, words

_A_ROW, _STEP = 6, 52


def draw(data: Mapping[str, Any]) -> str:
    """``coins`` are pairs: what is written on it, and ``coin`` or ``note``."""
    coins = list(data["coins"])
    pieces = []
    for index, (text, form) in enumerate(coins):
        x, y = 30 + _STEP * (index % _A_ROW), 30 + _STEP * (index // _A_ROW)
        shape = (
            box(x - 24, y - 15, 48, 30, "fig-soft fig-line", 3)
            if form == "note"
            else disc(x, y, 22, "fig-soft fig-line")
        )
        pieces += [shape, words(x, y + 6, str(text), 14 if len(str(text)) > 3 else 16)]
    rows = max(1, -(-len(coins) // _A_ROW))
    return svg("coins", 320, 8 + _STEP * rows, *pieces)
