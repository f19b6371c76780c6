"""The days a plan may use: chosen weekdays from a first day on, without the holidays."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ..model.holiday import Holiday

WEEKDAYS = ("mon", "tue", "wed", "thu", "fri")
USUAL_DAYS = frozenset({0, 1, 2, 3})
"""Monday to Thursday: four sessions a week are common practice, no source."""
DAY_NAMES = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday")
MONTHS = "January February March April May June July August September October November December".split()


@dataclass(frozen=True, slots=True)
class Asked:
    """What a school asks of a plan."""

    start: datetime.date
    minutes: int
    """The most minutes a day has."""
    days: frozenset[int] = USUAL_DAYS
    """Weekdays by number, 0 for Monday to 4 for Friday; at least one."""
    holidays: tuple[Holiday, ...] = ()
    known: tuple[int, int] | None = None
    """The first and last year whose bank holidays are among the holidays; None where none are."""
    waits: bool = True
    """Whether days may be left free so that weekends cut books less; else every school day is used from the first on."""
    of_class: str = ""
    """Whose plan it is, where somebody plans for more than one class."""

    def holiday_on(self, day: datetime.date) -> str | None:
        """What the holiday of a day is called; the first in order where there are several, None on a school day."""
        return next((holiday.name for holiday in self.holidays if holiday.first <= day <= holiday.last), None)


def week_of(day: datetime.date) -> int:
    """The number of a day's week: weeks begin on Monday, and each is one more than the one before."""
    return (day.toordinal() - 1) // 7


def days_for(asked: Asked, needed: Sequence[int]) -> list[datetime.date]:
    """School days enough to lay books that need so many days each, in the best way there is.

    After the last holiday every week is alike, and a book that begins with such a week is cut as little as any can be;
    so nothing better comes later than a week or two a book beyond that.
    """
    weeks = sum(-(-days // len(asked.days)) + 1 for days in needed)
    last = max((asked.start, *(holiday.last for holiday in asked.holidays)))
    end = last + datetime.timedelta(weeks=weeks + 1)
    return [day for day in chosen_days(asked, end) if asked.holiday_on(day) is None]


def chosen_days(asked: Asked, end: datetime.date) -> Iterator[datetime.date]:
    """Every chosen weekday from the first day up to ``end``, holidays among them."""
    for ordinal in range(asked.start.toordinal(), end.toordinal() + 1):
        day = datetime.date.fromordinal(ordinal)
        if day.weekday() in asked.days:
            yield day


def in_words(day: datetime.date, year: bool = True) -> str:
    """A day as people write it: Monday 11 January 2027."""
    words = f"{DAY_NAMES[day.weekday()]} {day.day} {MONTHS[day.month - 1]}"
    return f"{words} {day.year}" if year else words
