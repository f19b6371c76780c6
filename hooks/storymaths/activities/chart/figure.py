"""A chart as a figure, drawn and in words."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from ...model.activity import Figure
from ...model.figures.charts import BarChart, BlockDiagram, ChartRow, Pictogram, TallyChart
from .marks import marks_of
from .rows import Rows
from .say import describe_chart
from .tasks import Chart


def draw_chart(rows: Rows, show: Chart, each: int, *, filled: bool, revealed: bool = False) -> Figure:
    """The chart; without its marks where it is to be drawn, and with the hidden row where it is ``revealed``."""
    seen = [filled and (revealed or not row.hidden) for row in rows.rows]
    each_row = list(zip(rows.rows, seen, strict=True))
    shown = tuple(ChartRow(row.label, row.amount if is_seen else Fraction(0)) for row, is_seen in each_row)
    marks = {row.label: marks_of(row, show, each) if is_seen else None for row, is_seen in each_row}
    top = ceil(max(row.amount for row in rows.rows) / each) * each
    alt = describe_chart(marks, show, each, rows.thing, "left open" if filled else "still empty")
    return Figure(_chart(show, shown, each, rows.thing, max(top, each)), alt)


def _chart(
    show: Chart, rows: tuple[ChartRow, ...], each: int, thing: str, top: int
) -> TallyChart | Pictogram | BlockDiagram | BarChart:
    match show:
        case "tally":
            return TallyChart(rows)
        case "pictogram":
            return Pictogram(rows, each, thing, top)
        case "block":
            return BlockDiagram(rows, top)
        case "bar":
            return BarChart(rows, each, top)
