"""A bar chart with bars that run from left to right, over a scale in equal steps."""

from __future__ import annotations

from ...model.figures.charts import BarChart
from .chart_rows import LEFT, ROOM, TOP, WIDE, label_at, labels, scale, tall
from .pen import box, line, svg


def draw(figure: BarChart) -> str:
    """The bars, the scale below them."""
    each, most = figure.each, figure.top
    rows = list(zip(figure.rows, labels(figure.rows), strict=True))
    foot = TOP + sum(tall(label, 34) for _, label in rows)
    pieces = [
        line(LEFT + ROOM * mark / most, TOP, LEFT + ROOM * mark / most, foot, "fig-tick fig-faint")
        for mark in range(each, most + each, each)
    ]
    top = float(TOP)
    for row, label in rows:
        high = tall(label, 34)
        pieces.append(label_at(label, top, high))
        if row.amount:
            pieces.append(box(LEFT, top + 7, float(ROOM * row.amount / most), high - 14, "fig-fill"))
        top += high
    pieces += [line(LEFT, TOP, LEFT, top, "fig-line"), scale(top, most, each)]
    return svg(figure.NAME, WIDE, top + 32, *pieces)
