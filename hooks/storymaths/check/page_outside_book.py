"""Page numbers a book does not have."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document, Fields, Loc
from ..model.fields import Pages
from ..model.home import Home
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="page-outside-book",
    says="Pages that are named are in the book.",
    why="A teacher turning to page 16 of a 14-page book loses the class.",
    source=HOUSE_RULE,
    wrong="pages: 12-16 (of a book with pages: 14)",
    right="pages: 12-14",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each stretch of pages that goes past the end of its book."""
    for page in collection.documents:
        book = _book_of(page, collection)
        if book is None:
            continue
        for loc, pages in _pages_named(page.fields):
            if pages.last > book.pages:
                yield RULE.problem(
                    page.place(*loc),
                    f"{str(pages).capitalize()}: the book has {book.pages} pages.",
                    f"use pages from 1 to {book.pages}, or correct the book's own pages.",
                )


def _book_of(page: Document[Fields], collection: Collection) -> Book | None:
    if isinstance(page.fields, Book):
        return page.fields
    if isinstance(page.fields, Session | Home):
        book = collection.books.get(page.fields.book)
        return book.fields if book else None
    return None


def _pages_named(fields: Fields) -> Iterator[tuple[Loc, Pages]]:
    if isinstance(fields, Session):
        for index, reading in enumerate(fields.reads):
            yield ("reads", index, "pages"), reading.pages
    elif isinstance(fields, Home):
        yield ("pages",), fields.pages
    elif isinstance(fields, Book):
        for index, seen in enumerate(fields.maths_on_pages):
            yield ("maths_on_pages", index, "pages"), seen.pages
