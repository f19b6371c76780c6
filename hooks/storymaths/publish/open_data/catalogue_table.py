"""The public catalogue as a table: a row for each book and each page of it that is listed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from ...render.site import Site
from ..page_kinds.book import BOOK
from ..page_kinds.words import listed
from .catalogue import catalogue, kinds_of_books
from .spreadsheet import as_csv

ADDRESS = "open-data/catalogue.csv"
HEADINGS = (
    "kind", "book", "number", "title", "summary", "year", "also", "minutes", "concepts", "themes", "objectives",
    "parts", "revisits", "published", "changed", "address", "licence",
)  # fmt: skip
"""Values of one sort in a cell are parted by "; "; an objective is its framework's id, a colon and its code,
and a part of one has a colon and its own id after that."""
Record = Mapping[str, Any]


def catalogue_table(site: Site) -> str:
    """The table as CSV."""
    return as_csv([HEADINGS, *rows(catalogue(site))])


def rows(data: Record) -> Iterator[Sequence[str | int]]:
    """The rows of a catalogue, book by book."""
    licence = data["licence"]["url"]
    for book in data["books"]:
        yield _row(BOOK.names.one, book["id"], book, licence)
        for kind, part in kinds_of_books():
            yield from (_row(kind.names.one, book["id"], item, licence) for item in book[part.list])


def _row(kind: str, book: str, item: Record, licence: str) -> Sequence[str | int]:
    changed = item.get("changed", [])
    return (
        kind,
        book,
        item.get("number", ""),
        item["title"],
        item["summary"],
        item.get("year", ""),
        "; ".join(item.get("also", [])),
        item.get("minutes", ""),
        "; ".join(item.get("concepts", [])),
        "; ".join(item.get("themes", [])),
        _codes(item.get("objectives", {})),
        _parts(item.get("parts", {})),
        _codes(item.get("revisits", {})),
        item.get("published", ""),
        changed[-1]["date"] if changed else "",
        item["url"],
        # A book may be another's; the licence is of what is written here.
        "" if item.get("rights", "own") != "own" else licence,
    )


def told_of() -> str:
    """What there is a row for, in words."""
    return listed([BOOK.names.one, *(kind.names.one for kind, _ in kinds_of_books())])


def _codes(codes: Mapping[str, Sequence[str]]) -> str:
    return "; ".join(f"{framework}:{code}" for framework, listed in codes.items() for code in listed)


def _parts(parts: Mapping[str, Mapping[str, Sequence[str]]]) -> str:
    return "; ".join(
        f"{framework}:{code}:{part}"
        for framework, by_code in parts.items()
        for code, listed in by_code.items()
        for part in listed
    )
