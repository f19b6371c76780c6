"""A tally chart: bundles of five, the fifth mark across the four, and ones."""

from __future__ import annotations

from ...model.figures.charts import TallyChart
from .chart_rows import LEFT, TOP, WIDE, label_at, labels, tall
from .pen import box, line, svg

_HIGH, _APART, _BUNDLE, _IN_LINE = 22, 6, 34, 6


def draw(figure: TallyChart) -> str:
    """The rows, many tallies in several lines."""
    top = float(TOP)
    pieces = []
    for row, label in zip(figure.rows, labels(figure.rows), strict=True):
        count = int(row.amount)
        lines = max(1, -(-count // (5 * _IN_LINE)))
        high = tall(label, lines * (_HIGH + 10) + 6)
        pieces += [box(LEFT, top, WIDE - LEFT - 4, high, "fig-line"), label_at(label, top, high)]
        pieces += [_mark(index, top + (high - lines * (_HIGH + 10)) / 2 + 5) for index in range(count)]
        top += high
    return svg(figure.NAME, WIDE, top + 4, *pieces)


def _mark(index: int, top: float) -> str:
    bundle, place = divmod(index, 5)
    left = LEFT + 8 + (bundle % _IN_LINE) * _BUNDLE
    upper = top + bundle // _IN_LINE * (_HIGH + 10)
    if place == 4:
        return line(left - 4, upper + _HIGH - 4, left + 3 * _APART + 4, upper + 4, "fig-mark")
    x = left + place * _APART
    return line(x, upper, x, upper + _HIGH, "fig-tick")
