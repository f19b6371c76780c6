"""A bar chart with bars that run from left to right, over a scale in equal steps."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .chart_rows import LEFT, ROOM, TOP, WIDE, amount, label_at, labels, scale, tall
from .pen import box, line, svg


def draw(data: Mapping[str, Any]) -> str:
    """``rows``; ``each``: the numbers from one mark of the scale to the next; ``top``: its end."""
    each, most = int(data["each"]), int(data["top"])
    rows = list(zip(data["rows"], labels(data["rows"]), strict=True))
    foot = TOP + sum(tall(label, 34) for _, label in rows)
    pieces = [
        line(LEFT + ROOM * mark / most, TOP, LEFT + ROOM * mark / most, foot, "fig-tick fig-faint")
        for mark in range(each, most + each, each)
    ]
    top = float(TOP)
    for row, label in rows:
        high = tall(label, 34)
        pieces.append(label_at(label, top, high))
        if amount(row):
            pieces.append(box(LEFT, top + 7, ROOM * amount(row) / most, high - 14, "fig-fill"))
        top += high
    pieces += [line(LEFT, TOP, LEFT, top, "fig-line"), scale(top, most, each)]
    return svg("bar-chart", WIDE, top + 32, *pieces)
