"""A plan as a table for a spreadsheet: RFC 4180, with a byte order mark so that spreadsheets read it as UTF-8.

``theme/look/weeks-files.js`` writes the same bytes on the reader's device.
"""

from __future__ import annotations

import re

from .lessons import SeriesRun
from .plan import Plan
from .school_days import DAY_NAMES
from .words import steps_in_words

_BYTE_ORDER_MARK = "\ufeff"
_LINE_END = "\r\n"
_HEADINGS = "Week,Date,Day,Book,Session,Title,Part,Parts,Minutes,Reads,Steps,Class".split(",")
# A spreadsheet takes a cell that begins so for a formula: OWASP ASVS 5.0, requirement 1.2.10, and the full-width forms.
_FORMULA = re.compile(r"[=+\-@\t\r\n\x00＝＋－＠]")
_QUOTED = re.compile(r'[",\r\n]')


def as_csv(run: SeriesRun, plan: Plan) -> bytes:
    """A row a lesson or part of one, in order; days without are left out."""
    rows = [_HEADINGS]
    for day, part in plan.taught:
        lesson = part.lesson
        cells = [plan.week(day), day.isoformat(), DAY_NAMES[day.weekday()], lesson.book_title, lesson.number]
        cells += [lesson.title, part.number, part.of, part.minutes, lesson.reads, steps_in_words(part)]
        rows.append([str(cell) for cell in (*cells, plan.asked.of_class)])
    lines = [",".join(map(cell_of, row)) + _LINE_END for row in rows]
    return (_BYTE_ORDER_MARK + "".join(lines)).encode("utf-8")


def cell_of(words: str) -> str:
    """A cell: never a formula, and quoted where it must be."""
    plain = f"'{words}" if _FORMULA.match(words) else words
    return '"' + plain.replace('"', '""') + '"' if _QUOTED.search(plain) else plain
