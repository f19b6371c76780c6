"""A book's page in schema.org's words: the lessons taught from it, and the book itself, whose rights may be another's."""

from __future__ import annotations

from ....model.book import Book
from ....model.document import Document
from ....parse.body import words_of
from ....render.site import Site
from ...linked_data.node import At, Node, dated, licence_at, licensed, work
from ...linked_data.teaching import RESOURCE, for_years, taught_in


def describe_book(page: Document[Book], site: Site, at: At) -> Node:
    """A book's page."""
    book, name, collection = page.fields, page.fields.book_at(page.path), site.collection
    sessions, homes = collection.sessions_of(name), collection.homes_of(name)
    node = {
        **work(["CollectionPage", RESOURCE], page.source, book.title, book.summary, at),
        "mainEntity": _book_itself(page, site, at),
        **for_years(book.years.best, book.years.also, site, at),
        **taught_in(sessions, site, at),
        "hasPart": [
            {"@type": RESOURCE, "@id": at(lesson.source), "name": words_of(lesson.fields.title)}
            for lesson in (*sessions, *homes)
        ],
        **licensed(site, page.source, at),
        **dated(book.published, book.updated),
    }
    series = [
        {"@type": "CreativeWorkSeries", "@id": at(other.source), "name": words_of(other.fields.title)}
        for other in collection.series_with(name)
    ]
    return node | ({"isPartOf": series} if series else {})


def _book_itself(page: Document[Book], site: Site, at: At) -> Node:
    book = page.fields
    node: Node = {
        "@type": "Book",
        "@id": f"{at(page.source)}#book",
        "name": words_of(book.title),
        "numberOfPages": book.pages,
        # The words on the cover: they may name people, or a group, or nobody.
        "creditText": f"Story: {book.story_by}. Pictures: {book.pictures_by}.",
    }
    if book.isbn:
        node["isbn"] = book.isbn
    if book.publisher:
        node["publisher"] = {"@type": "Organization", "name": book.publisher}
    if book.rights == "own":
        node["license"] = licence_at(site, page.source, at)
    return node
