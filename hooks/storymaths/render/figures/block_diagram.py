"""A block diagram: one block for each thing, and a scale."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .chart_rows import LEFT, ROOM, TOP, WIDE, amount, label_at, labels, scale, tall
from .pen import box, line, svg


def draw(data: Mapping[str, Any]) -> str:
    """``rows``: label, amount as ``over`` / ``under``; ``top``: the end of the scale."""
    most = int(data["top"])
    side = min(30.0, ROOM / most)
    top = float(TOP)
    pieces = []
    for row, label in zip(data["rows"], labels(data["rows"]), strict=True):
        high = tall(label, side + 12)
        pieces.append(label_at(label, top, high))
        for index in range(int(amount(row))):
            pieces.append(box(LEFT + index * ROOM / most, top + (high - side) / 2, ROOM / most, side, "fig-fill"))
        top += high
    pieces += [line(LEFT, TOP, LEFT, top, "fig-line"), scale(top, most, 1)]
    return svg("block-diagram", WIDE, top + 32, *pieces)
