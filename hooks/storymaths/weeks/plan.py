"""A plan of the weeks as the scripts lay it, and all that is made of it: rows to read, a table, a calendar."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from itertools import groupby

from pydantic import BaseModel

from ..model.holiday import day_of
from ..scripts.run import run
from .lessons import Lesson, SeriesRun, Step
from .school_days import Asked


@dataclass(frozen=True, slots=True)
class Part:
    """What is taught on one day: a whole lesson, or the first, second … part of one."""

    lesson: Lesson
    steps: tuple[Step, ...]
    number: int
    of: int
    name: str
    """The title, and which part of it."""
    steps_in_words: str

    @property
    def minutes(self) -> int:
        """How long it is."""
        return sum(step.minutes for step in self.steps)


@dataclass(frozen=True, slots=True)
class Day:
    """A chosen weekday: what is taught on it, or else why nothing is."""

    date: datetime.date
    part: Part | None
    holiday: str | None
    """What the holiday is called; a day with neither is left free."""


@dataclass(frozen=True, slots=True)
class Row:
    """A line of a plan to read: a day, or a stretch of days of one week without a lesson for one reason."""

    week: int
    when: str
    part: Part | None
    why: str
    """Why nothing is taught; empty where something is."""


@dataclass(frozen=True, slots=True)
class Plan:
    """The sessions of a series on the days of a school."""

    asked: Asked
    days: tuple[Day, ...]
    """Every chosen weekday from the first to the last lesson's, in order."""
    rows: tuple[Row, ...]
    sentences: tuple[str, ...]
    """What the plan says of itself."""
    cut: tuple[tuple[str, int], ...]
    """Books with weekends inside them: the title, and how many."""
    csv: str
    """The plan as a table for a spreadsheet."""
    calendar: str
    """The plan as RFC 5545 writes calendars."""

    @property
    def taught(self) -> list[tuple[datetime.date, Part]]:
        """The days with a lesson."""
        return [(day.date, day.part) for day in self.days if day.part is not None]

    @property
    def weeks(self) -> list[tuple[int, list[Row]]]:
        """The rows by the number of their week, 1 for that of the first day."""
        return [(week, list(rows)) for week, rows in groupby(self.rows, key=lambda row: row.week)]


class _Part(BaseModel):
    lesson: int
    steps: tuple[tuple[str, int], ...]
    number: int
    of: int
    name: str
    steps_in_words: str


class _Day(BaseModel):
    day: int
    part: _Part | None
    holiday: str | None


class _Row(BaseModel):
    week: int
    when: str
    part: _Part | None
    why: str


class _Whole(BaseModel):
    """What ``wholePlan`` in ``hooks/scripts/weeks/whole.js`` gives."""

    days: tuple[_Day, ...]
    rows: tuple[_Row, ...]
    sentences: tuple[str, ...]
    cut: tuple[tuple[str, int], ...]
    csv: str
    calendar: str


def plan_weeks(series: SeriesRun, asked: Asked, dated: bool = True) -> Plan:
    """Lays the lessons of a series on the days asked for: at most one a day, longer ones split at a step.

    Every step must fit into the minutes of a day, and the lessons of a book stand together. Without ``dated``, rows and
    sentences name weekdays and no dates.
    """
    whole = _Whole.model_validate_json(run("weeks/whole.js", "wholePlan", series.as_data(), asked.as_data(), dated))

    def part(found: _Part | None) -> Part | None:
        if found is None:
            return None
        steps = tuple(Step(name, minutes) for name, minutes in found.steps)
        lesson = series.lessons[found.lesson]
        return Part(lesson, steps, found.number, found.of, found.name, found.steps_in_words)

    days = tuple(Day(day_of(day.day), part(day.part), day.holiday) for day in whole.days)
    rows = tuple(Row(row.week, row.when, part(row.part), row.why) for row in whole.rows)
    return Plan(asked, days, rows, whole.sentences, whole.cut, whole.csv, whole.calendar)
