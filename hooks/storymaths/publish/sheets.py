"""The print sheets of the site: which there are for which page, where they are, and their files.

A sheet's file is made by its content and kept in a cache folder, so that a build makes only what has changed.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TypeVar

from ..check.program_fault import as_problem
from ..model.address import CONTENT, source_of
from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.problem import ProblemsFound
from ..model.series import Series
from ..model.site_settings import Face
from ..render.in_type.drawings import drawings_in_type
from ..render.sheets.of_page import book_sheets, home_sheets, session_sheets
from ..render.sheets.other_numbers import OTHER_NUMBERS
from ..render.sheets.pictures import LARGEST, photograph
from ..render.sheets.series_sheets import series_sheets
from ..render.sheets.sheet import House, SheetData
from ..render.sheets.sheet_context import Drawings, SheetContext
from ..render.sheets.typesetting import content_key, copy_of
from ..render.sheets.whole_set import WHOLE_LESSON, whole_book, whole_lesson
from ..render.site import Print, Site
from .sheet_cache import fill, forget_all_but, holds, pages_of, pdf_path, png_path
from .undrawn import telling_where


@dataclass(frozen=True, slots=True)
class Sheet:
    """A print sheet as a page links to it."""

    source: str
    """Of the page it belongs to, inside ``content/``."""
    what: str
    """Its name on that page: ``plan``, ``cast-cards``, ``answers``."""
    title: str
    says: str
    """What it is, in a sentence."""
    address: str
    """Of the PDF, from the site's root; the picture of its first page has the same but for its ending."""
    pages: int
    paper: int
    """Sheets of A4 for the whole class."""
    copies: str
    """The same in a sentence: how many sets, who has how much."""
    key: str
    data: SheetData
    house: House
    """Whose it is."""

    def files(self, cache: Path) -> Mapping[str, Path]:
        """Where its files are kept, by their addresses: the PDF, and the picture of its first page."""
        return {self.address: pdf_path(cache, self.key), _preview(self.address): png_path(cache, self.key)}


P = TypeVar("P", bound=PageFields)
_Planned = tuple[str, str, SheetData]
"""The source a sheet belongs to, its address without an ending, and what is on it."""


def sheets_of(site: Site, root: Path, cache: Path, only: Iterable[str] | None = None) -> list[Sheet]:
    """Every sheet of the site, page by page; those that are new or changed are made. ``root`` is the project's folder.

    ``only`` names the books whose sheets are wanted, if not all are.
    """
    collection = site.collection
    books = collection.books if only is None else {name: collection.books[name] for name in only}
    drawings = _drawings(root, drawings_in_type(collection))
    planned = [one for name in books for one in _planned(site, drawings, name)]
    if only is None:
        for series in collection.of_kind(Series):
            planned += _of_page(site, drawings, series, f"{series.source[:-3]}-", series_sheets)
    sheets = _made(planned, site, cache)
    return sheets + _made(list(_whole_sets(collection, books, sheets)), site, cache)


def prints(sheets: Sequence[Sheet]) -> Mapping[str, list[Print]]:
    """The sheets as pages offer them, by the source of their page; the whole of a lesson first."""
    offered: dict[str, list[Print]] = {}
    for one in sorted(sheets, key=lambda sheet: sheet.what != WHOLE_LESSON):
        offered.setdefault(one.source, []).append(
            Print(one.title, one.says, one.copies, one.pages, one.address, _preview(one.address))
        )
    return offered


def write_sheets(sheets: Sequence[Sheet], folder: Path, cache: Path, forget: bool = True) -> None:
    """Puts every sheet into the site's folder, and unless told not to, forgets those no longer used."""
    for parent in {(folder / sheet.address).parent for sheet in sheets}:
        parent.mkdir(parents=True, exist_ok=True)
    for sheet in sheets:
        for address, file in sheet.files(cache).items():
            shutil.copyfile(file, folder / address)
    if forget:
        forget_all_but(cache, (sheet.key for sheet in sheets))


def _preview(address: str) -> str:
    return f"{address.removesuffix('.pdf')}.png"


def _planned(site: Site, drawings: Drawings, name: str) -> Iterator[_Planned]:
    collection = site.collection
    for session in collection.sessions_of(name):
        yield from _of_page(site, drawings, session, f"{session.source[:-3]}-", session_sheets)
    for home in collection.homes_of(name):
        yield from _of_page(site, drawings, home, f"{home.source[:-3]}-", home_sheets)
    book = collection.books[name]
    yield from _of_page(site, drawings, book, f"{source_of(book.folder)}/", partial(book_sheets, name=name))


def _of_page(
    site: Site,
    drawings: Drawings,
    page: Document[P],
    base: str,
    make: Callable[[SheetContext, Document[P]], list[SheetData]],
) -> Iterator[_Planned]:
    def made(of: Site) -> list[SheetData]:
        return make(SheetContext(of.collection, of.activities_of, drawings), page)

    with telling_where(site, page.path, made):
        sheets = made(site)
    yield from ((page.source, f"{base}{one.what}", one) for one in sheets)


def _whole_sets(
    collection: Collection, books: Mapping[str, Document[Book]], sheets: Sequence[Sheet]
) -> Iterator[_Planned]:
    """A file a session with all its sheets, and one a book, but for the booklet, whose pages are in another order."""
    for name, book in books.items():
        for session in collection.sessions_of(name):
            lesson = whole_lesson(session, _taught_with(sheets, session.source))
            yield session.source, f"{session.source[:-3]}-{lesson.what}", lesson
        source, folder = book.source, source_of(book.folder)
        apart = ("story-booklet", OTHER_NUMBERS)
        own = [one for one in sheets if one.source.startswith(f"{folder}/") and one.what not in apart]
        whole = whole_book(book, [(sheet.data, sheet.pages) for sheet in own])
        yield source, f"{folder}/{whole.what}", whole


def _taught_with(sheets: Sequence[Sheet], source: str) -> list[tuple[SheetData, int]]:
    return [(one.data, one.pages) for one in sheets if one.source == source and one.what != OTHER_NUMBERS]


_TYPEFACES: Mapping[Face, str] = {"lexend": "Lexend", "abeezee": "ABeeZee"}


def _house(site: Site, source: str) -> House:
    settings, publisher = site.settings, site.collection.reference.imprint.publisher
    faces = settings.letterforms
    region = settings.language.rpartition("-")[2]
    return House(publisher, site.terms(source).name, region, _TYPEFACES[faces.text], _TYPEFACES[faces.child])


def _made(planned: Sequence[_Planned], site: Site, cache: Path) -> list[Sheet]:
    houses = [_house(site, source) for source, _, _ in planned]
    copies = [copy_of(data, house) for (_, _, data), house in zip(planned, houses, strict=True)]
    keys = [content_key(copy) for copy in copies]
    try:
        fill(cache, dict(zip(keys, copies, strict=True)))
    except OSError:
        raise
    except Exception as error:
        source = next(source for (source, _, _), key in zip(planned, keys, strict=True) if not holds(cache, key))
        raise ProblemsFound([as_problem(error, f"{CONTENT}{source}")]) from error
    sheets = []
    for (source, base, data), key, house in zip(planned, keys, houses, strict=True):
        pages = pages_of(cache, key)
        use, paper = data.use.says(pages), data.use.sheets(pages)
        sheets.append(
            Sheet(source, data.what, data.title, data.says, f"{base}.pdf", pages, paper, use, key, data, house)
        )
    return sheets


def _drawings(root: Path, in_type: Mapping[str, str]) -> Drawings:
    """Reads drawings of the content; one outside it, missing, too large or not text is none."""
    content = (root / "content").resolve()
    read: dict[str, str | None] = dict(in_type)

    def text_of(source: str) -> str | None:
        if source not in read:
            file = (content / source).resolve()
            try:
                if not file.is_relative_to(content):
                    read[source] = None
                elif source.endswith(".svg"):
                    read[source] = file.read_text(encoding="utf-8") if file.stat().st_size <= LARGEST else None
                else:
                    read[source] = photograph(file.read_bytes())
            except (OSError, UnicodeDecodeError):
                read[source] = None
        return read[source]

    return text_of
