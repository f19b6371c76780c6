"""A plan as rows to read: one a day, and one a stretch of days without a lesson for one reason."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from itertools import groupby

from .lessons import Part
from .plan import Day, Plan
from .school_days import DAY_NAMES, in_words

FREE = "Left free"


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a plan."""

    week: int
    when: str
    """A day, or a stretch of days of one week, in words without their year."""
    first: datetime.date
    part: Part | None
    why: str
    """Why nothing is taught; empty where something is."""


def rows_of(plan: Plan, dated: bool = True) -> list[Row]:
    """The rows of a plan in order. Without dates a day is a weekday."""
    rows = []
    for _, run in groupby(plan.days, key=lambda day: (plan.week(day.date), day.part, day.holiday)):
        days = list(run)
        why = "" if days[0].part else days[0].holiday or FREE
        rows.append(Row(plan.week(days[0].date), _when(days, dated), days[0].date, days[0].part, why))
    return rows


def _when(days: list[Day], dated: bool) -> str:
    ends = [days[0].date] if len(days) == 1 else [days[0].date, days[-1].date]
    return " to ".join(in_words(day, year=False) if dated else DAY_NAMES[day.weekday()] for day in ends)


def weeks_of(plan: Plan, dated: bool = True) -> list[tuple[int, list[Row]]]:
    """The rows by the number of their week."""
    return [(week, list(rows)) for week, rows in groupby(rows_of(plan, dated), key=lambda row: row.week)]
