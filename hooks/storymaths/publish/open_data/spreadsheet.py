"""Tables for spreadsheet programs: CSV they open with the right letters, and in which no words are taken for a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence

_BOM = "\ufeff"
"""Without it some spreadsheet programs take UTF-8 for another alphabet."""
_STARTS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
"""Cells that begin so may be worked out, or worse, instead of shown (OWASP, CSV Injection)."""


def as_csv(rows: Iterable[Sequence[str | int]]) -> str:
    """A table, its first row the headings. Source: RFC 4180 (comma, CRLF, quotes doubled), and a byte order mark.

    Words that would start a formula get an apostrophe before them, which spreadsheet programs show as words.
    """
    out = io.StringIO(newline="")
    csv.writer(out, lineterminator="\r\n").writerows([_cell(value) for value in row] for row in rows)
    return _BOM + out.getvalue()


def _cell(value: str | int) -> str | int:
    return f"'{value}" if isinstance(value, str) and value.startswith(_STARTS_A_FORMULA) else value
