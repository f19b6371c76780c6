"""Which search answers which task with times."""

from __future__ import annotations

from ...model.activity import Context, Solution
from .solve_order import order_day
from .solve_reading import convert_times, read_clocks, set_clocks
from .solve_spans import find_end, find_repeats, find_start, measure_spans
from .solve_timetable import read_timetable
from .tasks import (
    ClockAnswer,
    ClockTask,
    ConvertTimes,
    FindEnd,
    FindRepeats,
    FindStart,
    MeasureSpans,
    OrderDay,
    ReadClocks,
    ReadTimetable,
    SetClocks,
)


def solve(task: ClockTask, context: Context) -> Solution[ClockAnswer]:
    """Every answer, and what the task demands."""
    match task:
        case ReadClocks():
            return read_clocks(task, context)
        case SetClocks():
            return set_clocks(task, context)
        case ConvertTimes():
            return convert_times(task, context)
        case MeasureSpans():
            return measure_spans(task, context)
        case FindEnd():
            return find_end(task, context)
        case FindStart():
            return find_start(task, context)
        case FindRepeats():
            return find_repeats(task, context)
        case OrderDay():
            return order_day(task, context)
        case ReadTimetable():
            return read_timetable(task, context)
