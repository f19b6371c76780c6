"""Days without school: a stretch of them, and the bank holidays known of with the grounds for each."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from .fields import Day, Id, Strict, Text

MonthDay = Annotated[str, Field(pattern=r"^(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$")]
_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_FIRST = datetime.date(1970, 1, 1).toordinal()


def number_of(day: datetime.date) -> int:
    """A day as the scripts count it: from 1 January 1970, so that no time zone can move it."""
    return day.toordinal() - _FIRST


def day_of(number: int) -> datetime.date:
    """The day of such a number."""
    return datetime.date.fromordinal(_FIRST + number)


@dataclass(frozen=True, slots=True, order=True)
class Holiday:
    """A stretch of days without school, both ends included, and what it is called."""

    first: datetime.date
    last: datetime.date
    name: str


class Ground(Strict):
    """Why some days are bank holidays, where that is written, and how certain their dates are."""

    id: Id
    says: Text
    source: Text
    certain: Text


class BankHoliday(Strict):
    """One day and the ground it is kept on."""

    date: Day
    name: Text
    by: Id
    moved: Text | None = None
    """Why it is not kept when it usually is, where a proclamation says so."""


class EachYear(Strict):
    """A bank holiday that there is in every year: between which days, as month-day, and on which day of the week."""

    name: Text
    first: MonthDay
    last: MonthDay
    weekday: Literal["Monday", "Tuesday", "Wednesday", "Thursday", "Friday"] | None = None

    def is_usual(self, day: datetime.date) -> bool:
        """Whether it may fall on a day."""
        return self.first <= f"{day:%m-%d}" <= self.last and self.weekday in (None, _WEEKDAYS[day.weekday()])

    @property
    def when(self) -> str:
        """When it falls, in words."""
        stretch = f"between {self.first} and {self.last}"
        return f"a {self.weekday} {stretch}" if self.weekday else stretch


class BankHolidays(Strict):
    """``bank_holidays.yaml``: every bank holiday of a nation, for whole years."""

    nation: Text
    first_year: Annotated[int, Field(ge=1900, le=2200, strict=True)]
    last_year: Annotated[int, Field(ge=1900, le=2200, strict=True)]
    grounds: Annotated[tuple[Ground, ...], Field(min_length=1)]
    holidays: tuple[BankHoliday, ...]
    each_year: tuple[EachYear, ...] = ()

    def as_holidays(self) -> tuple[Holiday, ...]:
        """The days, each a stretch of one."""
        return tuple(Holiday(day.date, day.date, day.name) for day in self.holidays)
