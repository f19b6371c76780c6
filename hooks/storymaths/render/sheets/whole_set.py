"""All the sheets of a book, or of one session, in one file, after a page that says what there is and how often to print it."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.book import Book
from ...model.document import Document
from ...model.session import Session
from .paper import PaperUse
from .sheet import Part, SheetData

WHOLE_BOOK, WHOLE_LESSON = "all-sheets", "whole-lesson"
_Sheets = Sequence[tuple[SheetData, int]]
"""Each with the number of its pages."""


def whole_book(book: Document[Book], sheets: _Sheets) -> SheetData:
    """All of a book."""
    says = "Every sheet of the book in one file, with a list of what to print how often."
    return _whole_set(WHOLE_BOOK, f"Print sheets: {book.fields.title}", says, sheets)


def whole_lesson(session: Document[Session], sheets: _Sheets) -> SheetData:
    """All that a session is taught with."""
    says = "The plan and every sheet of this lesson in one file, with a list of what to print how often."
    return _whole_set(WHOLE_LESSON, f"The whole lesson: {session.fields.title}", says, sheets)


def _whole_set(what: str, title: str, says: str, sheets: _Sheets) -> SheetData:
    rows, at = [], 2
    for sheet, pages in sheets:
        place = f"{at}" if pages == 1 else f"{at} to {at + pages - 1}"
        rows.append({"title": sheet.title, "pages": place, "copies": sheet.use.says(pages)})
        at += pages
    contents = Part("contents", {"heading": title, "rows": rows})
    parts = (contents, *(part for sheet, _ in sheets for part in sheet.told_how_often()))
    pictures = {name: svg for sheet, _ in sheets for name, svg in sheet.pictures.items()}
    return SheetData(what, title, says, parts, PaperUse(each="a copy of everything"), pictures)
