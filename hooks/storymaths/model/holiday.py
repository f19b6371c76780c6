"""Days without school: a stretch of them, and the bank holidays known of with the grounds for each."""

from __future__ import annotations

import datetime
from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from .fields import Id, Strict, Text

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

    date: datetime.date
    name: Text
    by: Id


class BankHolidays(Strict):
    """``bank_holidays.yaml``: every bank holiday of a nation, for whole years."""

    nation: Text
    first_year: int
    last_year: int
    grounds: Annotated[tuple[Ground, ...], Field(min_length=1)]
    holidays: tuple[BankHoliday, ...]

    def as_holidays(self) -> tuple[Holiday, ...]:
        """The days, each a stretch of one."""
        return tuple(Holiday(day.date, day.date, day.name) for day in self.holidays)
