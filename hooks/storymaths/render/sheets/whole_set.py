"""All the sheets of a book in one file, after a page that says what there is and how often to print it."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.book import Book
from ...model.document import Document
from .paper import PaperUse
from .sheet import Part, SheetData


def whole_set(book: Document[Book], sheets: Sequence[tuple[SheetData, int]]) -> SheetData:
    """The set; each sheet comes with the number of its pages."""
    rows, at = [], 2
    for sheet, pages in sheets:
        place = f"{at}" if pages == 1 else f"{at} to {at + pages - 1}"
        rows.append({"title": sheet.title, "pages": place, "copies": sheet.use.says(pages)})
        at += pages
    contents = Part("contents", {"heading": f"Print sheets: {book.fields.title}", "rows": rows})
    return SheetData(
        "all-sheets",
        f"Print sheets: {book.fields.title}",
        "Every sheet of the book in one file, with a list of what to print how often.",
        (contents, *(part for sheet, _ in sheets for part in sheet.told_how_often())),
        PaperUse(each="a copy of everything"),
        {name: svg for sheet, _ in sheets for name, svg in sheet.pictures.items()},
    )
