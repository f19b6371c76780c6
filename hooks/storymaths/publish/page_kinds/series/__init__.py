"""Series: books put in order for a purpose."""

from __future__ import annotations

from pathlib import Path

from ....model.document import Document
from ....model.fields import year_name
from ....model.series import Series
from ....parse.body import words_of
from ....render.series_page import draw_series
from ....render.site import Site
from ...linked_data.node import At, Node, dated, licensed, work
from ...linked_data.teaching import RESOURCE, for_years, taught_in
from ..kind import NOT_LISTED, InCatalogue, InLinkedData, Names, Packed, PageKind, Record, Starter
from ..records import url_in_catalogue

_FOLDER = Path(__file__).parent


def _record(site: Site, page: Document[Series]) -> Record:
    series = page.fields
    return {
        "title": words_of(series.title),
        "url": url_in_catalogue(site, page.source),
        "summary": words_of(series.summary),
        "for_whom": words_of(series.for_whom),
        "year": year_name(series.year),
        "books": [book for book in series.books if book in site.collection.books],
        "licence": words_of(series.licence),
        "version": series.version,
        "changes": [
            {
                "version": change.version,
                "date": change.date.isoformat(),
                "what": [words_of(line) for line in change.what],
            }
            for change in sorted(series.changes, key=lambda change: change.date)
        ],
    }


def _describe(page: Document[Series], site: Site, at: At) -> Node:
    """Its books in order, its version, and its licence in its publisher's own words."""
    series, terms = page.fields, site.terms(page.source)
    books = [site.collection.books[book] for book in series.books if book in site.collection.books]
    sessions = (session for book in books for session in site.collection.sessions_of(book.fields.book_at(book.path)))
    licence: Node = {"@type": "CreativeWork", "text": words_of(series.licence)}
    if terms.url and terms.name in series.licence:
        licence["url"] = terms.url
    return {
        **work(["CreativeWorkSeries", RESOURCE], page.source, series.title, series.summary, at),
        "version": series.version,
        **for_years(series.year, (), site, at),
        **taught_in(sessions, site, at),
        "hasPart": [
            {"@type": "CollectionPage", "@id": at(book.source), "name": words_of(book.fields.title)} for book in books
        ],
        **licensed(site, page.source, at),
        "license": licence,
        **dated(series.published, series.updated),
    }


SERIES = PageKind(
    schema=Series,
    names=Names("series", "series"),
    draw=draw_series,
    finder=NOT_LISTED,
    plan=NOT_LISTED,
    feed=NOT_LISTED,
    catalogue=InCatalogue(
        list="series",
        says="Every series.",
        definition=_FOLDER / "catalogue.json",
        record=_record,
        printed=NOT_LISTED,
        counted="series",
    ),
    idea_pages=NOT_LISTED,
    front=NOT_LISTED,
    linked_data=InLinkedData(type="CreativeWorkSeries", lists=("series",), describe=_describe),
    pack=Packed.AS_THE_SERIES,
    example=_FOLDER / "example.md",
    starter=Starter(text=_FOLDER / "starter.md", path="series/$slug.md", for_book=False),
)
