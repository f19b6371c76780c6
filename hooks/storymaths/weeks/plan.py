"""A plan of the weeks: what is taught on which day, which days are holidays, and which are left free."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from .lay import at_once, lay
from .lessons import Lesson, Part, parts_of
from .school_days import Asked, chosen_days, days_for, week_of


@dataclass(frozen=True, slots=True)
class Day:
    """A chosen weekday: what is taught on it, or else why nothing is."""

    date: datetime.date
    part: Part | None = None
    holiday: str | None = None
    """What the holiday is called; a day with neither is left free."""


@dataclass(frozen=True, slots=True)
class Plan:
    """The sessions of a series on the days of a school."""

    asked: Asked
    days: tuple[Day, ...]
    """Every chosen weekday from the first to the last lesson's, in order."""

    @property
    def taught(self) -> list[tuple[datetime.date, Part]]:
        """The days with a lesson."""
        return [(day.date, day.part) for day in self.days if day.part is not None]

    @property
    def free(self) -> list[datetime.date]:
        """Days left free so that books are cut less."""
        return [day.date for day in self.days if day.part is None and day.holiday is None]

    def week(self, day: datetime.date) -> int:
        """The number of a day's week, 1 for that of the first day."""
        return week_of(day) - week_of(self.days[0].date) + 1

    def cut(self) -> list[tuple[str, int]]:
        """Books with weekends inside them: the title, and how many."""
        found = []
        for _, run in groupby(self.taught, key=lambda taught: taught[1].lesson.book):
            taught = list(run)
            weekends = week_of(taught[-1][0]) - week_of(taught[0][0])
            if weekends:
                found.append((taught[0][1].lesson.book_title, weekends))
        return found


def plan_weeks(lessons: Sequence[Lesson], asked: Asked) -> Plan:
    """Lays lessons, in their order, on the days asked for: at most one a day, longer ones split at a step.

    Every step must fit into the minutes of a day, and the lessons of a book stand together.
    """
    parts = [part for lesson in lessons for part in parts_of(lesson, asked.minutes)]
    books = [list(run) for _, run in groupby(parts, key=lambda part: part.lesson.book)]
    needed = [len(book) for book in books]
    days = days_for(asked, needed)
    on: dict[datetime.date, Part] = {}
    places = lay(needed, [week_of(day) for day in days]) if asked.waits else at_once(needed)
    for start, book in zip(places, books, strict=True):
        on.update(zip(days[start : start + len(book)], book, strict=True))
    if not on:
        return Plan(asked, ())
    return Plan(asked, tuple(Day(day, on.get(day), asked.holiday_on(day)) for day in chosen_days(asked, max(on))))
