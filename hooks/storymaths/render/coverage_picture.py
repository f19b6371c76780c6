"""Coverage drawn: one mark for each objective, and objectives against sessions. Shapes differ, so that no colour is needed."""

from __future__ import annotations

from collections.abc import Sequence
from html import escape

from markupsafe import Markup

from ..covers.table import Row, YearTable
from ..covers.taught import How, SessionPage
from .figures.pen import at, box, disc, line, path, words

_ORDER: tuple[How | None, ...] = ("taught", "part", "again", "bend", None)
_SAID: dict[How | None, str] = {
    "taught": "taught in full", "part": "taught in part", "again": "taken up again", "bend": "touched", None: "not covered",
}  # fmt: skip
_CELL, _MARK = 22, 14
_PER_LINE = 12
_LABELS = 96
_HEAD = 44
MOST_SESSIONS, MOST_ROWS = 24, 60
"""A drawing of more can no longer be read; the table stands alone then."""


def mark(how: How | None) -> Markup:
    """One mark by itself, for the legend."""
    return Markup(_svg("", _CELL, _CELL, _drawn(how, 0, 0)))


def squares(table: YearTable) -> Markup:
    """A mark for each objective, the fullest coverage first."""
    ways = [how for how in _ORDER for _ in range(table.counts[how])]
    pieces = [_drawn(how, n % _PER_LINE * _CELL, n // _PER_LINE * _CELL) for n, how in enumerate(ways)]
    wide, high = min(len(ways), _PER_LINE) * _CELL, -(-len(ways) // _PER_LINE) * _CELL
    said = ", ".join(f"{table.counts[how]} {_SAID[how]}" for how in _ORDER if table.counts[how])
    return Markup(_svg(said, wide, high, *pieces))


def grid(rows: Sequence[Row], columns: Sequence[tuple[str, Sequence[SessionPage]]], title: str) -> Markup | None:
    """Objectives against sessions, which stand under their book's label; None where it could not be read."""
    sessions = [page for _, pages in columns for page in pages]
    if not rows or not sessions or len(sessions) > MOST_SESSIONS or len(rows) > MOST_ROWS:
        return None
    place = {id(page): n for n, page in enumerate(sessions)}
    wide, high = _LABELS + len(sessions) * _CELL, _HEAD + len(rows) * _CELL
    pieces = [*_heads(columns, high)]
    for n, row in enumerate(rows):
        top = _HEAD + n * _CELL
        if not n or rows[n - 1].objective.strand != row.objective.strand:
            pieces.append(line(0, top, wide, top, "cov-rule"))
        pieces.append(words(0, top + 16, row.objective.code, 14, "start", "cov-text"))
        own: How = "part" if row.missing else "taught"
        ways: dict[How, Sequence[SessionPage]] = {"bend": row.bend, "again": row.again, own: row.taught}
        for page, how in {id(page): how for how, pages in ways.items() for page in pages}.items():  # the fullest wins
            pieces.append(_drawn(how, _LABELS + place[page] * _CELL, top))
    return Markup(_svg(title, wide, high, *pieces))


def _heads(columns: Sequence[tuple[str, Sequence[SessionPage]]], high: float) -> list[str]:
    """The books' labels, the sessions' numbers under them, and a line before each book."""
    pieces, left = [], float(_LABELS)
    for label, pages in columns:
        if label:
            pieces.append(words(left + 4, 16, label if len(pages) > 1 else label[-2:].strip(), 14, "start", "cov-text"))
        pieces.append(line(left, 4, left, high, "cov-rule"))
        for n, page in enumerate(pages):
            pieces.append(words(left + (n + 0.5) * _CELL, 37, str(page.fields.number), 14, "middle", "cov-text"))
        left += len(pages) * _CELL
    return pieces


def _drawn(how: How | None, left: float, top: float) -> str:
    x, y = left + (_CELL - _MARK) / 2, top + (_CELL - _MARK) / 2
    if how == "taught":
        return box(x, y, _MARK, _MARK, "cov-taught")
    if how == "part":
        return box(x, y, _MARK, _MARK, "cov-line") + box(x, y + _MARK / 2, _MARK, _MARK / 2, "cov-taught")
    if how == "again":
        return path(f"M{at(x)} {at(y)}V{at(y + _MARK)}H{at(x + _MARK)}Z", "cov-line")
    if how == "bend":
        return disc(left + _CELL / 2, top + _CELL / 2, _MARK / 2 - 1, "cov-line")
    return box(x, y, _MARK, _MARK, "cov-gap")


def _svg(said: str, wide: float, high: float, *pieces: str) -> str:
    heard = f'role="img" aria-label="{escape(said)}"' if said else 'aria-hidden="true"'
    size = f'width="{at(wide)}" height="{at(high)}" viewBox="0 0 {at(wide)} {at(high)}"'
    return f'<svg class="cov" {size} {heard} focusable="false">{"".join(pieces)}</svg>'
