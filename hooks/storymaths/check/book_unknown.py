"""Sessions, stories, home activities and series that name a book we do not have, or sit in another's folder."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.address import book_id
from ..model.book import Book
from ..model.collection import Collection
from ..model.page_fields import OfBook
from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.series import Series
from ..parse.suggestion import did_you_mean

RULE = Rule(
    name="book-unknown",
    says="A book that is named exists, and a page stands in the folder of its own book.",
    why="Sessions are found by their book; one that names no book is found by nobody.",
    source=HOUSE_RULE,
    wrong="book: lamp-loft-lif",
    right="book: lamp-loft-lift",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each name of a book that leads nowhere, or to another folder."""
    known = collection.book_ids
    for page in collection.documents:
        if isinstance(page.fields, OfBook):
            named = page.fields.book
            if named not in known:
                yield _unknown(page.place("book"), named, known)
            elif named != book_id(page.path):
                yield RULE.problem(
                    page.place("book"),
                    f'This file stands in the folder "{book_id(page.path)}" but names the book "{named}".',
                    "name the book of the folder, or move the file.",
                )
    for book in collection.of_kind(Book):
        for index, named in enumerate(book.fields.after):
            if named not in known:
                yield _unknown(book.place("after", index), named, known)
    for series in collection.of_kind(Series):
        for index, named in enumerate(series.fields.books):
            if named not in known:
                yield _unknown(series.place("books", index), named, known)


def _unknown(place: Place, named: str, known: frozenset[str]) -> Problem:
    return RULE.problem(
        place,
        f'There is no book "{named}".' + did_you_mean(named, known),
        "use the name of a folder in content/books, or make the book with `storymaths new book`.",
    )
