"""A plan as a calendar to take into a calendar program: RFC 5545, an event a day.

Events last a day (``VALUE=DATE``): a plan knows days and not the school's timetable, and a date has no time zone to go
wrong in. An event's UID says which part of which session it is and not when, so that a plan read in again moves its
events instead of adding more; plans of two classes are told apart by the name of the class. ``DTSTAMP`` is the day the
series last changed, never the clock. ``METHOD`` is left out: it would make the calendar a message that needs a sender.
``theme/look/weeks-files.js`` writes the same bytes on the reader's device.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator

from ..model.address import slug
from .lessons import Part, SeriesRun
from .plan import Plan
from .words import counted, name_of, steps_in_words

_MAKER = "-//storymaths//Plan of the weeks//EN-GB"
_LONGEST_LINE = 75
"""Octets of a line, its end not counted: RFC 5545, section 3.1."""
_UNPRINTABLE = re.compile(r"[\x00-\x08\x0b-\x1f\x7f]")


def as_icalendar(run: SeriesRun, plan: Plan) -> bytes:
    """The calendar, an event a lesson or part of one, in order."""
    named = f"{run.title}: {plan.asked.of_class}" if plan.asked.of_class else run.title
    lines = ["BEGIN:VCALENDAR", "VERSION:2.0", f"PRODID:{_MAKER}", "CALSCALE:GREGORIAN", f"NAME:{text_of(named)}"]
    for day, part in plan.taught:
        lines += _event(run, plan.asked.of_class, day, part)
    return "".join(fold(line) for line in (*lines, "END:VCALENDAR")).encode("utf-8")


def _event(run: SeriesRun, of_class: str, day: datetime.date, part: Part) -> Iterator[str]:
    lesson = part.lesson
    yield "BEGIN:VEVENT"
    yield f"UID:{uid_of(run, of_class, part)}"
    yield f"DTSTAMP:{run.changed:%Y%m%d}T000000Z"
    yield f"DTSTART;VALUE=DATE:{_basic(day)}"
    yield f"DTEND;VALUE=DATE:{_basic(day + datetime.timedelta(days=1))}"
    yield f"SUMMARY:{text_of(f'{lesson.book_title} {lesson.number}: {name_of(part)}')}"
    yield f"DESCRIPTION:{text_of(_described(part))}"
    yield "TRANSP:TRANSPARENT"
    yield "END:VEVENT"


def uid_of(run: SeriesRun, of_class: str, part: Part) -> str:
    """What the event is called for good: the same for the same part of a session, whenever it is taught."""
    names = [run.id, part.lesson.book, f"session-{part.lesson.number}", f"part-{part.number}", _class_id(of_class)]
    return "/".join(name for name in names if name) + "@storymaths"


def _class_id(of_class: str) -> str:
    """A class in a few plain letters: in figures where letters alone would make two classes one."""
    plain = slug(of_class)
    return plain if plain == of_class.lower().replace(" ", "-") else f"c-{of_class.encode().hex()}"


def _described(part: Part) -> str:
    reads = part.lesson.reads
    return f"{counted(part.minutes, 'minute')}. {reads[:1].upper()}{reads[1:]}.\n{steps_in_words(part)}."


def _basic(day: datetime.date) -> str:
    return day.isoformat().replace("-", "")


def text_of(words: str) -> str:
    """A TEXT value: its own signs escaped, what cannot be printed left out (section 3.3.11)."""
    plain = _UNPRINTABLE.sub("", words.replace("\r\n", "\n"))
    return re.sub(r"([\\;,])", r"\\\1", plain).replace("\n", "\\n")


def fold(line: str) -> str:
    """A content line with its end, folded where it is too long, never within a character (section 3.1)."""
    folded, used = [], 0
    for character in line:
        width = len(character.encode("utf-8"))
        if used + width > _LONGEST_LINE:
            folded.append("\r\n ")
            used = 1
        folded.append(character)
        used += width
    return "".join(folded) + "\r\n"
