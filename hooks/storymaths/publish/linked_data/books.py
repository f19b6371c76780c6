"""Books, their stories, and series: pages that gather lessons, and the books the lessons are taught from."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from ...model.address import book_id
from ...model.book import Book
from ...model.document import Document
from ...model.fields import Codes
from ...model.home import Home
from ...model.series import Series
from ...model.session import Session
from ...model.story import Story
from ...render.inline import plain
from ...render.site import Site
from .lessons import RESOURCE, for_years, teaches
from .node import At, Node, dated, licensed, minutes, work


def _all_codes(run: Iterable[Document[Session]]) -> Codes:
    codes: dict[str, tuple[str, ...]] = {}
    for session in run:
        for framework, listed in session.fields.objectives.items():
            codes[framework] = (*codes.get(framework, ()), *listed)
    return codes


def _taught(run: Iterable[Document[Session]], site: Site, at: At) -> Node:
    """What some sessions teach together and how long they take; nothing where there are none."""
    sessions = list(run)
    if not sessions:
        return {}
    taught = teaches(_all_codes(sessions), site, at)
    return {"timeRequired": minutes(sum(page.fields.minutes for page in sessions))} | (
        {"teaches": taught} if taught else {}
    )


def _part(page: Document[Book], at: At) -> Node:
    return {"@type": "CollectionPage", "@id": at(page.source), "name": plain(page.fields.title)}


def describe_book(page: Document[Book], site: Site, at: At) -> Node:
    """A book's page: the lessons taught from it, and the book itself, whose rights may be another's."""
    book, name = page.fields, book_id(page.path)
    run = site.collection.sessions_of(name)
    lessons: tuple[Document[Session] | Document[Home], ...] = (*run, *site.collection.homes_of(name))
    node = {
        **work(["CollectionPage", RESOURCE], page.source, book.title, book.summary, at),
        "mainEntity": _book_itself(page, site, at),
        **for_years(book.years.best, book.years.also, site, at),
        **_taught(run, site, at),
        "hasPart": [
            {"@type": RESOURCE, "@id": at(lesson.source), "name": plain(lesson.fields.title)} for lesson in lessons
        ],
        **licensed(site.collection.reference.imprint),
        **dated(book.published, book.updated),
    }
    series = [
        {"@type": "CreativeWorkSeries", "@id": at(other.source), "name": plain(other.fields.title)}
        for other in site.collection.series_with(name)
    ]
    return node | ({"isPartOf": series} if series else {})


def _book_itself(page: Document[Book], site: Site, at: At) -> Node:
    book = page.fields
    node: Node = {
        "@type": "Book",
        "@id": f"{at(page.source)}#book",
        "name": plain(book.title),
        "numberOfPages": book.pages,
        # The words on the cover: they may name people, or a group, or nobody.
        "creditText": f"Story: {book.story_by}. Pictures: {book.pictures_by}.",
    }
    if book.isbn:
        node["isbn"] = book.isbn
    if book.publisher:
        node["publisher"] = {"@type": "Organization", "name": book.publisher}
    if book.rights == "own":
        node["license"] = site.collection.reference.imprint.licence.url
    return node


def describe_story(page: Document[Story], site: Site, at: At) -> Node:
    """A story that stands on the site; the licence is named only where the story is the collection's own."""
    book = site.collection.books[page.fields.book]
    node = work("ShortStory", page.source, page.fields.title, page.fields.summary or "", at)
    node |= {"isPartOf": _part(book, at), "isAccessibleForFree": True}
    if book.fields.rights == "own":
        node |= licensed(site.collection.reference.imprint)
    return node | dated(page.fields.published, page.fields.updated)


def describe_series(page: Document[Series], site: Site, at: At) -> Node:
    """A series: its books in order, its version, and its licence in its publisher's own words."""
    series, imprint = page.fields, site.collection.reference.imprint
    books: Mapping[str, Document[Book]] = site.collection.books
    listed = [book for book in series.books if book in books]
    licence: Node = {"@type": "CreativeWork", "text": plain(series.licence)}
    if imprint.licence.name in series.licence:
        licence["url"] = imprint.licence.url
    return {
        **work(["CreativeWorkSeries", RESOURCE], page.source, series.title, series.summary, at),
        "version": series.version,
        **for_years(series.year, (), site, at),
        **_taught((session for book in listed for session in site.collection.sessions_of(book)), site, at),
        "hasPart": [_part(books[book], at) for book in listed],
        **licensed(imprint),
        "license": licence,
        **dated(series.published, series.updated),
    }
