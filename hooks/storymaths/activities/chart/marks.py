"""What each row of a chart holds, and how it is counted."""

from __future__ import annotations

from fractions import Fraction

from ...model.demands import Number, Operation, operation
from ...model.year import YearLimits
from .rows import Row
from .tasks import Bar, Blocks, Chart, Found, Pictures, Point, RowMarks, Show, Slice, Tallies

_BUNDLE = 5


def marks_of(row: Row, show: Chart, each: int, total: Fraction) -> RowMarks:
    """What shows the amount of a row; whole, or in half pictures where it must be; of a pie, by the total of all."""
    match show:
        case "tally":
            return Tallies(row.label, *divmod(int(row.amount), _BUNDLE))
        case "pictogram":
            whole, rest = divmod(int(row.amount * 4 / each), 4)
            return Pictures(row.label, whole, *divmod(rest, 2))
        case "block":
            return Blocks(row.label, int(row.amount))
        case "bar":
            return Bar(row.label, Found(row.amount))
        case "line":
            return Point(row.label, Found(row.amount))
        case "pie":
            return Slice(row.label, Found(row.amount * 360 / total))


def numbers_of(marks: RowMarks) -> list[Number]:
    """The numbers by which the marks are told."""
    match marks:
        case Tallies(_, fives, ones):
            return [count for count in (fives, ones) if count]
        case Pictures(_, pictures):
            return [pictures] if pictures else []
        case Blocks(_, blocks):
            return [blocks]
        case Bar(_, height) | Point(_, height):
            return [height.number]
        case Slice(_, degrees):
            return [degrees.number]


def count_row(row: Row, show: Show, each: int, year: YearLimits) -> list[Operation]:
    """Bundles of tallies, or pictures that stand for several, put together; nothing where the marks tell it at once."""
    size = {"tally": _BUNDLE, "pictogram": each}.get(show, 1)
    times, rest = divmod(row.amount, size)
    if size == 1 or not times or not year.knows("+"):
        return []
    if show == "pictogram" and year.knows("×"):
        whole = operation("×", times, size, times * size)
        return [whole, operation("+", times * size, rest, row.amount)] if rest else [whole]
    parts = [size] * times + ([rest] if rest else [])
    return [operation("+", *parts, row.amount)] if len(parts) > 1 else []


def tables_of(show: Show, each: int) -> frozenset[int]:
    """The multiplication tables that counting pictures leans on: 20s are counted as 2s and 10s."""
    if show != "pictogram" or each == 1:
        return frozenset()
    bare = int(str(each).rstrip("0"))
    return frozenset({bare, 10} if bare < each else {bare}) - {1}
