"""A plan of the weeks as a table for a spreadsheet.

``theme/look/weeks-files.js`` writes the same bytes on the reader's device.
"""

from __future__ import annotations

from ..weeks.lessons import SeriesRun
from ..weeks.plan import Plan
from ..weeks.school_days import DAY_NAMES
from ..weeks.words import steps_in_words
from .open_data.spreadsheet import as_csv

_HEADINGS = "Week,Date,Day,Book,Session,Title,Part,Parts,Minutes,Reads,Steps,Class".split(",")


def weeks_table(run: SeriesRun, plan: Plan) -> bytes:
    """A row a lesson or part of one, in order; days without are left out."""
    rows: list[list[str | int]] = [list(_HEADINGS)]
    for day, part in plan.taught:
        lesson = part.lesson
        row: list[str | int] = [plan.week(day), day.isoformat(), DAY_NAMES[day.weekday()]]
        row += [lesson.book_title, lesson.number, lesson.title, part.number, part.of, part.minutes]
        rows.append([*row, lesson.reads, steps_in_words(part), plan.asked.of_class])
    return as_csv(rows).encode("utf-8")
