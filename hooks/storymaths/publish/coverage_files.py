"""What is covered as CSV files: one for each series and each book, and one for the whole collection."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from ..covers.path import path_of
from ..covers.table import Row, YearTable, other_tables, year_tables
from ..covers.taught import Coverage, SessionPage, coverage_of
from ..model.address import COLLECTION_CSV, coverage_csv
from ..model.fields import year_name
from ..model.series import Series
from ..render.site import Site
from .open_data.spreadsheet import as_csv

HEADER = (
    "Framework", "Year", "Strand", "Code", "Objective, in our words", "Book", "Covered", "Taught in sessions",
    "Taken up again in sessions", "Touched when taught to another year, sessions", "Parts taught", "Parts missing",
)  # fmt: skip
_COVERED = {
    "taught": "taught",
    "part": "taught in part",
    "again": "taken up again",
    "bend": "touched when taught to another year",
    None: "not covered",
}


def coverage_files(site: Site) -> Mapping[str, str]:
    """Each file's address from the site's root, and what is in it."""
    collection, reference = site.collection, site.collection.reference
    by_book = {book: coverage_of(collection.sessions_of(book), reference) for book in collection.books}
    files = {COLLECTION_CSV: _csv(site, by_book, year_tables(site.coverage, reference, reference.years))}
    for series in collection.of_kind(Series):
        found, asked = coverage_of(path_of(series.fields, collection).sessions, reference), series.fields.years
        tables = [*year_tables(found, reference, asked), *other_tables(found, reference, asked)]
        files[coverage_csv(series.source)] = _csv(site, by_book, tables)
    for book, page in collection.books.items():
        years = page.fields.years
        tables = other_tables(by_book[book], reference, ()) if by_book[book].sessions else []
        own = {years.best, *years.also}
        files[coverage_csv(page.source)] = _csv(site, by_book, sorted(tables, key=lambda table: table.year not in own))
    return files


def _csv(site: Site, by_book: Mapping[str, Coverage], tables: Iterable[YearTable]) -> str:
    titles = {book: page.fields.title for book, page in site.collection.books.items()}
    lines = (line for table in tables for row in table.rows for line in _lines(table, row, titles, by_book))
    return as_csv([HEADER, *lines])


def _lines(
    table: YearTable, row: Row, titles: Mapping[str, str], by_book: Mapping[str, Coverage]
) -> Iterator[tuple[str, ...]]:
    """A line for each book that covers an objective, as far as that book does; one with no book where none does."""
    objective, framework = row.objective, table.framework
    opening = (
        framework.short_name, year_name(table.year), framework.strands[objective.strand], objective.code, objective.says,
    )  # fmt: skip
    books = dict.fromkeys(page.fields.book for page in (*row.taught, *row.again, *row.bend))
    if not books:
        yield (*opening, "", _COVERED[None], "", "", "", "", "")
    for book in books:
        found = by_book[book]
        ways = [_numbers(pages, book) for pages in (row.taught, row.again, row.bend)]
        taught = objective.parts_named(tuple(found.parts.get(row.key, ()))) if objective.has_parts else ()
        names = [", ".join(part.name for part in parts) for parts in (taught, found.missing.get(row.key, ()))]
        yield (*opening, titles[book], _COVERED[found.how(row.key)], *ways, *names)


def _numbers(pages: Iterable[SessionPage], book: str) -> str:
    return ", ".join(str(page.fields.number) for page in pages if page.fields.book == book)
