"""A block diagram: one block for each thing, and a scale."""

from __future__ import annotations

from ...model.figures.charts import BlockDiagram
from .chart_rows import LEFT, ROOM, TOP, WIDE, label_at, labels, scale, tall
from .pen import box, line, svg
from .upright_chart import draw_blocks


def draw(figure: BlockDiagram) -> str:
    """The blocks, the scale below them."""
    if figure.upright:
        return draw_blocks(figure)
    most = figure.top
    side = min(30.0, ROOM / most)
    top = float(TOP)
    pieces = []
    for row, label in zip(figure.rows, labels(figure.rows), strict=True):
        high = tall(label, side + 12)
        pieces.append(label_at(label, top, high))
        for index in range(int(row.amount)):
            pieces.append(box(LEFT + index * ROOM / most, top + (high - side) / 2, ROOM / most, side, "fig-fill"))
        top += high
    pieces += [line(LEFT, TOP, LEFT, top, "fig-line"), scale(top, most, 1)]
    return svg(figure.NAME, WIDE, top + 32, *pieces)
