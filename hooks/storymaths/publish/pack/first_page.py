"""The first page of a pack, which says what to open, and its licence."""

from __future__ import annotations

import re
from collections.abc import Iterable
from pathlib import Path

from ...model.address import html_of
from ...model.document import Document
from ...model.imprint import Terms
from ...model.series import Series
from ...model.session import Session
from ...render.inline import inline
from ...render.site import Site
from .contents import PAGES

FIRST, LICENCE = "START-HERE.html", "LICENCE.txt"
_COVERAGE = re.compile(r".*coverage.*\.csv")
_SCREEN = re.compile(r"-.*screen\.html")
"""How the address of a class screen goes on from that of its session."""
_EVERY_SHEET = "all-sheets.pdf"
_PROGRAM = "The scripts and styles of the pages come with the program that made them, storymaths:"
_PROGRAM_LICENCE = Path(__file__).parent / "program_licence.txt"


def draw_first_page(site: Site, page: Document[Series], packed: Iterable[str]) -> bytes:
    """What to open for what, from the addresses of the pages in the pack."""
    there = sorted(packed)
    books = []
    for book in dict.fromkeys(page.fields.books):
        if book in site.collection.books:
            record = site.collection.books[book]
            folder = record.beside("")
            own = [name for name in there if name.startswith(folder)]
            books.append({
                "title": record.fields.title,
                "page": f"{folder}index.html",
                "sessions": [_session(one, own) for one in site.collection.sessions_of(book)],
                "sheets": next((name for name in own if name == folder + _EVERY_SHEET), ""),
            })  # fmt: skip
    html = site.draw(
        "pack_first_page.html",
        FIRST.replace(".html", ".md"),
        series=page.fields,
        own=html_of(page.source),
        books=books,
        coverage=[name for name in there if _COVERAGE.fullmatch(name)],
        pages=PAGES,
    )
    return html.encode("utf-8")


def _session(page: Document[Session], own: Iterable[str]) -> tuple[str, Session, str]:
    """A session's address, what it is, and the address of its class screen; empty where it has none."""
    address = html_of(page.source)
    stem = address.removesuffix(".html")
    screen = next((name for name in own if name.startswith(stem) and _SCREEN.fullmatch(name[len(stem) :])), "")
    return address, page.fields, screen


def licence(site: Site, page: Document[Series]) -> bytes:
    """What may be done with the pack: the series' own words, the collection's and its books', and the program's."""
    series, imprint = page.fields, site.collection.reference.imprint
    said = [f"{series.title}, version {series.version}", _plain(series.licence), _plain(series.contact)]
    said += [f"Published by {imprint.publisher}. {_terms(site.terms(page.source))}"]
    own = [book for book in site.collection.books.values() if book.fields.licence]
    said += [f"{_plain(book.fields.title)}: {_terms(site.terms(book.source))}" for book in own]
    said.append(f"{_PROGRAM}\n\n{_PROGRAM_LICENCE.read_text(encoding='utf-8').strip()}")
    return ("\n\n".join(said) + "\n").encode("utf-8")


def _terms(terms: Terms) -> str:
    return _plain(f"{terms.line}. {terms.says}")


def _plain(words: str) -> str:
    return " ".join(inline(words).striptags().split())
