"""A chart as a figure and in marks: what each row holds, how it is described, and what is drawn."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from ...model.activity import Answer, Figure
from ...model.figures.charts import BarChart, BlockDiagram, ChartRow, Pictogram, TallyChart
from ..saying import capital, counted, listed
from .rows import Chart, Row, Rows, Show
from .words import number

NAMES = {
    "tally": "tally chart",
    "pictogram": "pictogram",
    "block": "block diagram",
    "bar": "bar chart",
    "table": "table",
}
_FIRST_WITH_TIMES = 2
"""The year that first meets ×."""
_STEPS = (1, 2, 5, 10, 20, 25, 50)


def scale_step(rows: Rows, each: int | None) -> int:
    """The numbers between two marks of a bar chart's scale: as given, else the smallest handy one for ten marks."""
    if each:
        return each
    largest = max(row.amount for row in rows.rows)
    handy = (step * 10**power for power in range(0, 8, 2) for step in _STEPS)
    return next((step for step in handy if step * 10 >= largest), 10_000_000)


def tables_of(show: Show, each: int) -> frozenset[int]:
    """The multiplication tables that counting pictures leans on: 20s are counted as 2s and 10s."""
    if show != "pictogram" or each == 1:
        return frozenset()
    bare = int(str(each).rstrip("0"))
    return frozenset({bare, 10} if bare < each else {bare}) - {1}


def marks(row: Row, show: Show, each: int) -> tuple[dict[str, int | str], str]:
    """What a row of the chart holds, as data and in words."""
    if show == "tally":
        fives, ones = divmod(int(row.amount), 5)
        parts = [counted(count, name) for count, name in ((fives, "fives"), (ones, "ones")) if count]
        return {"fives": fives, "ones": ones}, listed(parts) or "no marks"
    if show == "pictogram":
        whole, half = divmod(int(row.amount * 2 / each), 2)
        return {"pictures": whole, "halves": half}, _pictures(whole, half)
    if show == "block":
        return {"blocks": int(row.amount)}, counted(row.amount, "blocks")
    height = row.amount.numerator if row.amount.denominator == 1 else number(row.amount)
    return {"height": height}, f"a bar to {number(row.amount)}"


def _pictures(whole: int, half: int) -> str:
    if half:
        return f"{whole} and a half pictures" if whole else "half a picture"
    return counted(whole, "pictures") if whole else "no pictures"


def reason(row: Row, show: Show, each: int, year: int) -> str:
    """How a row of the chart is read: fives and ones of tallies, pictures that stand for more than one."""
    if show == "table":
        return "Read off the table."
    said = marks(row, show, each)[1]
    size = 5 if show == "tally" else each
    times, rest = divmod(row.amount, size)
    if year and show in ("tally", "pictogram") and size > 1 and times:
        if year >= _FIRST_WITH_TIMES and show == "pictogram":
            whole = number(Fraction(times * size))
            over = f"; {whole} + {number(rest)} = {number(row.amount)}" if rest else ""
            return f"{times} × {size} = {whole}{over}."
        parts = [str(size)] * int(times) + ([number(rest)] if rest else [])
        if len(parts) > 1:
            return f"{' + '.join(parts)} = {number(row.amount)}."
    return f"There {'is' if said.startswith(('1 ', 'a ', 'half')) else 'are'} {said}."


def drawn(row: Row, show: Show, each: int, year: int) -> Answer:
    """A row to be drawn."""
    data, said = marks(row, show, each)
    return Answer(f"{capital(row.label)}: {said}.", reason(row, show, each, year), {"draw": row.label, **data})


def figure(rows: Rows, show: Chart, each: int, *, filled: bool, revealed: bool = False) -> Figure:
    """The chart; without its marks where it is to be drawn, and with the hidden row where it is ``revealed``."""
    shown, said = [], []
    for row in rows.rows:
        seen = filled and (revealed or not row.hidden)
        amount = row.amount if seen else Fraction(0)
        shown.append(ChartRow(row.label, amount))
        said.append(
            f"{capital(row.label)}: {marks(row, show, each)[1] if seen else 'left open' if filled else 'still empty'}."
        )
    top = ceil(max(row.amount for row in rows.rows) / each) * each
    key = f" Each picture stands for {counted(each, rows.thing)}." if show == "pictogram" else ""
    scale = f" Its scale goes up in {each}s." if show == "bar" else ""
    chart = _chart(show, tuple(shown), each, rows.thing, max(top, each))
    return Figure(chart, f"A {NAMES[show]}.{key}{scale} {' '.join(said)}")


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
