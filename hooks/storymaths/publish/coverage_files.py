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
    "Taken up again in sessions", "Touched in a bend of sessions",
)  # fmt: skip
_COVERED = {"taught": "taught", "again": "taken up again", "bend": "touched in a bend", None: "not covered"}


def coverage_files(site: Site) -> Mapping[str, str]:
    """Each file's address from the site's root, and what is in it."""
    collection, reference = site.collection, site.collection.reference
    files = {COLLECTION_CSV: _csv(site, year_tables(site.coverage, reference, reference.years))}
    for series in collection.of_kind(Series):
        found = coverage_of(path_of(series.fields, collection).sessions)
        files[coverage_csv(series.source)] = _csv(site, _own_and_other(site, found, series.fields.years))
    for book, page in collection.books.items():
        found, years = coverage_of(collection.sessions_of(book)), page.fields.years
        tables = other_tables(found, reference, ()) if found.sessions else []
        own = {years.best, *years.also}
        files[coverage_csv(page.source)] = _csv(site, sorted(tables, key=lambda table: table.year not in own))
    return files


def _own_and_other(site: Site, coverage: Coverage, years: Iterable[int]) -> list[YearTable]:
    """The whole of its years, gaps and all, and of other years what it covers."""
    reference = site.collection.reference
    return [*year_tables(coverage, reference, years), *other_tables(coverage, reference, years)]


def _csv(site: Site, tables: Iterable[YearTable]) -> str:
    titles = {book: page.fields.title for book, page in site.collection.books.items()}
    return as_csv([HEADER, *(line for table in tables for row in table.rows for line in _lines(table, row, titles))])


def _lines(table: YearTable, row: Row, titles: Mapping[str, str]) -> Iterator[tuple[str, ...]]:
    """A line for each book that covers an objective; one with no book where none does."""
    objective, framework = row.objective, table.framework
    opening = (
        framework.short_name, year_name(table.year), framework.strands[objective.strand], objective.code, objective.says,
    )  # fmt: skip
    books = dict.fromkeys(page.fields.book for page in (*row.taught, *row.again, *row.bend))
    if not books:
        yield (*opening, "", _COVERED[None], "", "", "")
    for book in books:
        ways = [_numbers(pages, book) for pages in (row.taught, row.again, row.bend)]
        how = "taught" if ways[0] else "again" if ways[1] else "bend"
        yield (*opening, titles.get(book, book), _COVERED[how], *ways)


def _numbers(pages: Iterable[SessionPage], book: str) -> str:
    return ", ".join(str(page.fields.number) for page in pages if page.fields.book == book)
