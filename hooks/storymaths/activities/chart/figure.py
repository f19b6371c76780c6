"""A chart as a figure, drawn and in words."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from ...model.activity import Figure
from ...model.figures.charts import BarChart, BlockDiagram, ChartRow, LineGraph, Pictogram, PieChart, TallyChart
from .marks import marks_of
from .rows import Rows
from .say import describe_chart
from .tasks import Chart, ChartTask


def draw_chart(task: ChartTask, rows: Rows, each: int, *, filled: bool, revealed: bool = False) -> Figure:
    """The chart; without its marks where it is to be drawn, and with the hidden row where it is ``revealed``."""
    assert task.show != "table", "a table is no drawing"
    show, key = task.show, None if task.asks_for_key else each
    seen = [filled and (revealed or not row.hidden) for row in rows.rows]
    each_row = list(zip(rows.rows, seen, strict=True))
    shown = tuple(ChartRow(row.label, row.amount if is_seen else Fraction(0)) for row, is_seen in each_row)
    marks = {row.label: marks_of(row, show, each, rows.total) if is_seen else None for row, is_seen in each_row}
    top = ceil(max(row.amount for row in rows.rows) / each) * each
    alt = describe_chart(marks, show, key, rows, "left open" if filled else "still empty")
    return Figure(_chart(show, task.upright, shown, each, rows, max(top, each), key is not None), alt)


def _chart(
    show: Chart, upright: bool, shown: tuple[ChartRow, ...], each: int, rows: Rows, top: int, keyed: bool
) -> TallyChart | Pictogram | BlockDiagram | BarChart | LineGraph | PieChart:
    match show:
        case "tally":
            return TallyChart(shown)
        case "pictogram":
            return Pictogram(shown, each, rows.thing, top, keyed)
        case "block":
            return BlockDiagram(shown, top, upright)
        case "bar":
            return BarChart(shown, each, top, rows.columns, upright)
        case "line":
            return LineGraph(shown, each, top, rows.axis, rows.thing, rows.along)
        case "pie":
            return PieChart(shown, rows.total)
