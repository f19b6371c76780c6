"""A bar chart with bars that run from left to right, one or several to a label, over a scale in equal steps."""

from __future__ import annotations

from fractions import Fraction

from ...model.figures.charts import BarChart, ChartRow
from .chart_rows import LEFT, ROOM, TOP, WIDE, label_at, labels, scale, tall
from .pen import box, line, svg, words
from .upright_chart import draw_bars

_FILLS = ("fig-fill", "fig-soft", "fig-line")


def draw(figure: BarChart) -> str:
    """The bars, the scale below them."""
    if figure.upright:
        return draw_bars(figure)
    if figure.columns:
        return _draw_side_by_side(figure)
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


def _draw_side_by_side(figure: BarChart) -> str:
    """Several bars to a label, and a key to what each is."""
    each, most, wide = figure.each, figure.top, len(figure.columns)
    groups = [figure.rows[n : n + wide] for n in range(0, len(figure.rows), wide)]
    names = labels([ChartRow(group[0].label.removesuffix(f", {figure.columns[0]}"), Fraction(0)) for group in groups])
    high = [tall(name, 20 * wide + 14) for name in names]
    foot = TOP + sum(high)
    marks = [LEFT + ROOM * mark / most for mark in range(each, most + each, each)]
    pieces = [line(x, TOP, x, foot, "fig-tick fig-faint") for x in marks]
    top = float(TOP)
    for group, name, room in zip(groups, names, high, strict=True):
        pieces.append(label_at(name, top, room))
        for n, row in enumerate(group):
            if row.amount:
                pieces.append(box(LEFT, top + 7 + 20 * n, float(ROOM * row.amount / most), 20, _FILLS[n]))
        top += room
    pieces += [line(LEFT, TOP, LEFT, foot, "fig-line"), scale(foot, most, each)]
    for n, column in enumerate(figure.columns):
        pieces += [box(16, foot + 36 + 24 * n, 16, 16, _FILLS[n]), words(40, foot + 49 + 24 * n, column, 15, "start")]
    return svg(figure.NAME, WIDE, foot + 40 + 24 * wide, *pieces)
