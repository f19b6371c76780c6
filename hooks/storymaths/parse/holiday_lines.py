"""A school's own holidays, one a line, as ``2027-02-15..2027-02-19 Half term``: what they say, and what cannot be read.

The page of a series reads the same lines on the reader's device: ``theme/look/weeks-holidays.js`` keeps to this file.
"""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass

from ..model.holiday import Holiday

NO_NAME = "No school"
FIRST_YEAR, LAST_YEAR, LONGEST = 2000, 2099, 366
_LINE_END = re.compile(r"\r\n|\n|\r")
_DATE = re.compile(r"([0-9]{4})-([0-9]{2})-([0-9]{2})")
_UNPRINTABLE = re.compile(r"[\x00-\x1f\x7f]")


@dataclass(frozen=True, slots=True)
class UnreadLine:
    """A line that could not be taken as meant: where, both counted from 1, and why."""

    line: int
    column: int
    why: str


class _NotADay(ValueError):
    """Words that are not a day a plan can use; the reason is the message."""


def read_holidays(text: str) -> tuple[tuple[Holiday, ...], tuple[UnreadLine, ...]]:
    """The holidays of a text in its order, and every line that could not be read.

    A line is a day, or two days with ``..`` between, both without school, and then what to call it, which may be left
    out. Empty lines and lines that begin with ``#`` say nothing. Days are written 2027-02-15.
    """
    holidays, unread = [], []
    for number, line in enumerate(_LINE_END.split(text.removeprefix("\ufeff")), start=1):
        said = line.strip(" \t")
        if not said or said.startswith("#"):
            continue
        read = _read(said, number, line.index(said) + 1)
        if isinstance(read, Holiday):
            holidays.append(read)
        else:
            unread.append(read)
    return tuple(holidays), tuple(unread)


def _read(said: str, line: int, column: int) -> Holiday | UnreadLine:
    days, _, name = said.replace("\t", " ").partition(" ")
    if second := _DATE.search(name):
        at = column + len(days) + 1 + second.start()
        return UnreadLine(line, at, 'Two days of one line are joined by ".." with no space: 2027-02-15..2027-02-19.')
    first, stretch, last = days.partition("..")
    try:
        start = day_of(first)
    except _NotADay as error:
        return UnreadLine(line, column, str(error))
    try:
        end = day_of(last) if stretch else start
    except _NotADay as error:
        return UnreadLine(line, column + len(first) + len(".."), str(error))
    if end < start:
        return UnreadLine(line, column, f"It ends on {end}, before it starts on {start}.")
    if (end - start).days >= LONGEST:
        return UnreadLine(line, column, f"It is {(end - start).days + 1} days long, which is more than a year.")
    return Holiday(start, end, _UNPRINTABLE.sub(" ", name).strip(" ") or NO_NAME)


def day_of(words: str) -> datetime.date:
    """A day written 2027-02-15. Raises ``ValueError`` with the reason in words."""
    match = _DATE.fullmatch(words)
    if match is None:
        raise _NotADay(f'"{words}" is not a day written like 2027-02-15.')
    year, month, day = map(int, match.groups())
    if not FIRST_YEAR <= year <= LAST_YEAR:
        raise _NotADay(f'"{words}" is not in the years {FIRST_YEAR} to {LAST_YEAR}.')
    try:
        return datetime.date(year, month, day)
    except ValueError:
        raise _NotADay(f'"{words}" is not a day of the calendar.') from None
