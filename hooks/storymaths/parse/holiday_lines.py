"""A school's own holidays, one a line, as ``15/02/2027 - 19/02/2027 Half term``: what they say, and what cannot be read.

They are read by ``hooks/scripts/weeks/holidays.js``, as the page of a series reads them on the reader's device.
"""

from __future__ import annotations

import datetime

from pydantic import BaseModel

from ..model import holiday
from ..model.holiday import Holiday
from ..scripts.run import run


class UnreadLine(BaseModel, frozen=True):
    """A line that could not be taken as meant: where, both counted from 1, and why."""

    line: int
    column: int
    why: str


class _Away(BaseModel):
    first: int
    last: int
    name: str


class _Lines(BaseModel):
    """What ``readHolidays`` gives."""

    holidays: tuple[_Away, ...]
    unread: tuple[UnreadLine, ...]


class _Day(BaseModel):
    """What ``dayOf`` gives: a day, or why there is none."""

    day: int | None
    why: str | None


def read_holidays(text: str) -> tuple[tuple[Holiday, ...], tuple[UnreadLine, ...]]:
    """The holidays of a text in its order, and every line that could not be read.

    A line is a day, or two days with ``-``, ``to`` or ``..`` between, both without school, and then what to call it,
    which may be left out. Empty lines and lines that begin with ``#`` say nothing. Days are written as people write
    them in England (15/02/2027, Mon 15 Feb 2027), or as computers do (2027-02-15).
    """
    found = _Lines.model_validate_json(run("weeks/holidays.js", "readHolidays", text))
    read = (Holiday(holiday.day_of(one.first), holiday.day_of(one.last), one.name) for one in found.holidays)
    return tuple(read), found.unread


def day_of(words: str) -> datetime.date:
    """A day written 15/02/2027, 15 February 2027 or 2027-02-15. Raises ``ValueError`` with the reason in words."""
    read = _Day.model_validate_json(run("weeks/dates.js", "dayOf", words))
    if read.day is None:
        raise ValueError(read.why)
    return holiday.day_of(read.day)
