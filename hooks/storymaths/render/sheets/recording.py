"""The recording sheet: room to draw and write what the task asks, for each year that has its own version."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from ...model.document import Document
from ...model.fields import year_name
from ...model.session import Needed, Session
from .card_faces import SIGNS
from .paper import PaperUse, in_sets
from .recording_tasks import shown_task
from .sheet import Part, SheetData
from .sheet_context import SheetActivity, SheetContext, SheetPictures
from .words import runs

_SHAPES = ("a circle", "a triangle", "a square", "a pentagon", "a hexagon", "a heptagon", "an octagon")
"""Those of the years, Reception first, as on the site: how hard a page is says nothing to the child who has it."""

_LINE_MM = {0: 16, 1: 15, 2: 13}
_OLDER_LINE_MM = 11
_TABLE = re.compile(r"\btable: ([^.]+)")


def recording_sheet(
    sheets: SheetContext, page: Document[Session], activities: Sequence[SheetActivity]
) -> SheetData | None:
    """A page for each version that differs, the session's own among them; none where nothing is recorded on paper."""
    session = page.fields
    needed = next((one for one in session.materials if one.item == "recording-sheet"), None)
    writes = sheets.collection.reference.years[session.year].writes
    if needed is None and not (activities and writes):
        return None
    needed = needed or Needed(item="recording-sheet", per="child")
    pictures = SheetPictures(sheets.drawings)
    pages = _pages(session, activities, pictures, _table_asked(needed.note or ""))
    marked = sorted(pages) if len(pages) > 1 else []
    parts = tuple(
        Part("recording", {**pages[year], "mark": {"year": year, "name": year_name(year)} if marked else None})
        for year in sorted(pages, key=lambda year: (year != session.year, year))
    )
    names = ", ".join(f"{_SHAPES[year]} for {_for_whom(year, session.year)}" for year in marked)
    use = in_sets(needed, 1, "recording sheet", sheets.children, session.group_size)
    return SheetData(
        "recording-sheet",
        f"Recording sheet: {session.title}",
        "Room to draw and write the task." + (f" Each version has the shape of its year: {names}." if names else ""),
        parts,
        PaperUse(use.children, use.sets, "", use.each, versions=len(pages)),
        pictures.kept,
    )


def _for_whom(year: int, own: int) -> str:
    """Support, expected or challenge, and the year whose version it is."""
    return f"{'support' if year < own else 'challenge' if year > own else 'expected'} ({year_name(year)})"


def _pages(
    session: Session, activities: Sequence[SheetActivity], pictures: SheetPictures, asked: list[str]
) -> dict[int, dict[str, Any]]:
    """What stands on the page of each year that writes something other than the class does."""
    written = {year for one in activities for year in one.by_year.keys() - one.aloud}
    pages: dict[int, dict[str, Any]] = {}
    for year in dict.fromkeys((session.year, *sorted(written))):
        others = [one for one in activities if year in one.by_year and year not in one.aloud]
        tasks = once([shown_task(one.titles[year], one.by_year[year], pictures) for one in others])
        shown = {"heading": session.title, "line": line_height(year), "tasks": tasks}
        shown |= {"stems": [runs(stem) for stem in session.stem_sentences], "signs": _signs(session), "table": asked}
        shown["same"] = [runs(one.title) for one in activities if year in one.same - one.aloud]
        if all(shown["tasks"] != page["tasks"] for page in pages.values()):
            pages[year] = shown
    return pages


def line_height(year: int) -> int:
    """From one line to write on to the next, in mm."""
    return _LINE_MM.get(year, _OLDER_LINE_MM)


def once(tasks: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The tasks with each drawing where it first comes, and not again."""
    seen: list[dict[str, str]] = []
    for task in tasks:
        task["figures"] = [figure for figure in task["figures"] if figure not in seen]
        seen += task["figures"]
    return tasks


def _table_asked(note: str) -> list[str]:
    """The headings of a table that the author's note describes: ``A plain table: boats, lights, number sentences.``"""
    found = _TABLE.search(note)
    return [head.strip() for head in found[1].split(",")] if found else []


def _signs(session: Session) -> list[str]:
    known = (*session.symbols.new, *session.symbols.again)
    return [sign for sign in SIGNS if sign in known]
