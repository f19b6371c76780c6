"""Sheets for tests: every one of the frozen collection, and those of a session around any activity, made once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path

from built import kept
from project import PROJECT, activities_on, all_activities, collection, text_of
from run_folder import run_folder, worked_out_once
from storymaths.activities.table import KINDS
from storymaths.model.document import Document
from storymaths.model.session import Needed, Session
from storymaths.parse.document import parse_document
from storymaths.publish.sheet_cache import fill, pdf_path
from storymaths.publish.sheets import Sheet, sheets_of
from storymaths.render.sheets.mat_kinds import FROM_MATERIAL
from storymaths.render.sheets.mats import session_mats
from storymaths.render.sheets.of_page import session_sheets
from storymaths.render.sheets.sheet import SheetData
from storymaths.render.sheets.sheet_context import SheetContext
from storymaths.render.sheets.typesetting import content_key, copy_of
from storymaths.render.sheets.whole_set import WHOLE_BOOK, WHOLE_LESSON
from storymaths.render.site import Site

WHOLE = (WHOLE_BOOK, WHOLE_LESSON)
SESSION = "books/cliff-house-lift/session-4.md"
CARROLL = """\
kind: sort
title: Two ways at once
cast: {gull: {legs: 2, flies: true}, crab: {legs: 10, flies: false}, moth: {legs: 6, flies: true}, whelk: {legs: 0, flies: false}}
by: [{rule: flies, says: can fly, otherwise: cannot fly}, {rule: legs > 4, says: more than 4 legs, otherwise: 4 legs or fewer}]
diagram: carroll
"""
THREE = "kind: sort\ntitle: Three rings\nyear: 3\nnumbers: [1, 2, 5, 10, 30]\nby: [odd(n), n > 4, 'multiple(n, 5)']\n"
HOOP = "kind: sort\ntitle: In or out\nnumbers: [1, 2, 3, 4]\nby: [odd(n)]\n"


@dataclass(frozen=True)
class Made:
    """A sheet and its PDF."""

    name: str
    data: SheetData
    pdf: bytes


@lru_cache(maxsize=1)
def frozen_sheets() -> tuple[Sheet, ...]:
    """Every sheet of the frozen collection."""
    return worked_out_once(
        "frozen-sheets", lambda: tuple(sheets_of(Site(collection(), all_activities()), PROJECT, cache()))
    )


def cache() -> Path:
    """Where they are kept."""
    return kept() / "sheets"


@lru_cache(maxsize=1)
def every_sheet() -> tuple[Made, ...]:
    """The frozen collection's sheets, whole sets left out, those of a session around each kind's example, and every mat.

    Of those that are the same to the byte, as the plan around many an example is, there is one.
    """
    of_pages = (
        Made(one.address, one.data, pdf_path(cache(), one.key).read_bytes())
        for one in frozen_sheets()
        if one.what not in WHOLE
    )
    around_examples = (sheet for kind in KINDS for sheet in kind_sheets(kind))
    different = dict[bytes, Made]()
    for sheet in (*of_pages, *around_examples, *more_mats()):
        different.setdefault(sheet.pdf, sheet)
    return tuple(different.values())


@lru_cache(maxsize=1)
def more_mats() -> tuple[Made, ...]:
    """A mat for every material, and those that no example of a kind is done on."""

    def made_of_all() -> tuple[Made, ...]:
        done_on = [
            session_mats(sheet_context(), page, sheet_context().activities(page))
            for page in (
                session_with(a, "Pairs have a two-way table, or a sorting ring.") for a in (CARROLL, HOOP, THREE)
            )
        ]
        return (*(mat(item) for item in FROM_MATERIAL), *(made(data) for mats in done_on for data in mats))

    return worked_out_once("more-mats", made_of_all)


def whole_sets() -> Iterator[Made]:
    """The sets of whole books, and of each book's first lesson."""
    for one in frozen_sheets():
        if one.what == WHOLE_BOOK or one.address.endswith(f"session-1-{WHOLE_LESSON}.pdf"):
            yield Made(one.address, one.data, pdf_path(cache(), one.key).read_bytes())


@lru_cache(maxsize=32)
def kind_sheets(kind: str) -> tuple[Made, ...]:
    """The sheets of a session whose one activity is the kind's example."""
    page = session_with(KINDS[kind].example)
    return worked_out_once(
        f"sheets-of-{kind}",
        lambda: tuple(made(data, f"{kind}: {data.what}") for data in session_sheets(sheet_context(), page)),
    )


def made(data: SheetData, name: str = "") -> Made:
    """A sheet set in type, once a run."""
    copy = copy_of(data)
    key = content_key(copy)
    fill(run_folder() / "sheets", {key: copy})
    return Made(name or data.what, data, pdf_path(run_folder() / "sheets", key).read_bytes())


def session_with(activity: str, words: str = "") -> Document[Session]:
    """A session of the frozen collection with one activity for its body, after some words."""
    opening, _, _ = text_of(SESSION).partition("\n## ")
    page = parse_document(f"content/{SESSION}", f"{opening}\n\n## Start\n\n{words}\n\n```maths\n{activity}```\n")
    assert isinstance(page, Document)
    assert isinstance(page.fields, Session)
    return page


def sheet_context(**drawings: str) -> SheetContext:
    """What sheets are made from, with the frozen collection's drawings; ``camel="<svg…>"`` puts another in place of that of the cast."""

    def read(source: str) -> str | None:
        for name, svg in drawings.items():
            if source.endswith(f"/{name}.svg"):
                return svg
        file = PROJECT / "content" / source
        return file.read_text(encoding="utf-8") if file.is_file() else None

    return SheetContext(collection(), activities_on, read)


def session_needing(item: str, note: str = "", year: int = 2) -> Document[Session]:
    """A session that gets one thing out of the cupboard, and has no activity."""
    return needing(session_with("kind: none of them\n"), item, note, year)


def needing(page: Document[Session], item: str, note: str = "", year: int = 2) -> Document[Session]:
    """A session with one thing for its materials."""
    needed = Needed(item=item, per="pair", note=note or None)
    return replace(page, fields=page.fields.model_copy(update={"materials": (needed,), "year": year}))


def mat(item: str, note: str = "", year: int = 2) -> Made:
    """The mat for a material."""
    (data,) = session_mats(sheet_context(), session_needing(item, note, year), [])
    return made(data)
