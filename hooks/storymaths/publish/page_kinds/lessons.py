"""What sessions, home activities and ideas for any book have in common to say."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.any_book import AnyBook
from ...model.book import Book
from ...model.collection import Collection
from ...model.document import Document
from ...model.fields import year_name
from ...model.home import Home
from ...model.session import Session
from ...parse.body import words_of
from ...render.site import Site
from ..linked_data.node import At, Node, dated, licensed, minutes, work
from ..linked_data.teaching import RESOURCE
from ..linked_data.terms import concept_term
from .kind import NOT_LISTED, FeedEntry, NotListed, Record
from .records import dates_in_catalogue, url_in_catalogue

Lesson = Document[Session] | Document[Home] | Document[AnyBook]


def in_feed(site: Site, page: Lesson) -> FeedEntry | NotListed:
    """A lesson by its title and its book's, if it has one; what changed, where something did, else what it is."""
    fields, collection = page.fields, site.collection
    book = collection.book_of(page)
    if fields.updated is None:
        return NOT_LISTED
    summary = words_of(fields.summary)
    if fields.changed:
        summary = f"Changed: {words_of(fields.changed[-1].what)} {summary}"
    return FeedEntry(
        title=f"{words_of(fields.title)} ({words_of(book.fields.title) if book else 'with any book'})",
        summary=summary,
        published=fields.published,
        updated=fields.updated,
        categories=[year_name(fields.year), *concept_names(page, collection)],
    )


def concept_names(page: Lesson, collection: Collection) -> list[str]:
    """The names of the concepts a lesson teaches."""
    return [collection.reference.concepts[idea].name for idea in page.fields.concepts]


def record(site: Site, page: Lesson, also: Sequence[int]) -> Record:
    """What the catalogue holds of any lesson; ``also`` are the other years it serves."""
    fields = page.fields
    return {
        "title": words_of(fields.title),
        "url": url_in_catalogue(site, page.source),
        "summary": words_of(fields.summary),
        "year": year_name(fields.year),
        "also": [year_name(year) for year in also],
        "minutes": fields.minutes,
        "concepts": list(fields.concepts),
        "themes": list(fields.themes),
        **dates_in_catalogue(fields),
    }


def describe(page: Lesson, site: Site, at: At) -> Node:
    """What linked data says of any lesson."""
    fields = page.fields
    book = site.collection.book_of(page)
    return {
        **work(RESOURCE, page.source, fields.title, fields.summary, at),
        "timeRequired": minutes(fields.minutes),
        **({"position": fields.place, **_of_book(book, at)} if book else {}),
        **licensed(site, page.source, at),
        **dated(fields.published, fields.updated),
    }


def _of_book(book: Document[Book], at: At) -> Node:
    whole, name = at(book.source), words_of(book.fields.title)
    return {
        "isPartOf": {"@type": "CollectionPage", "@id": whole, "name": name},
        "isBasedOn": {"@type": "Book", "@id": f"{whole}#book", "name": name},
    }


def ideas(page: Lesson, site: Site, at: At) -> list[Node]:
    """The concepts a lesson teaches, as terms."""
    return [concept_term(site.collection.reference.concepts[idea], at) for idea in page.fields.concepts]
