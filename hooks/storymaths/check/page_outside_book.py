"""Page numbers a book does not have."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

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
        record = collection.book_of(page)
        if record is None:
            continue
        book = record.fields
        for loc, pages in page.fields.pages_named():
            if pages.last > book.pages:
                yield RULE.problem(
                    page.place(*loc),
                    f"{str(pages).capitalize()}: the book has {book.pages} pages.",
                    f"use pages from 1 to {book.pages}, or correct the book's own pages.",
                )
