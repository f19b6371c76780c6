"""More of a book's own words than may be quoted."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.body import Body, Quotation, Run
from ..model.collection import Collection
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.problem import Problem
from ..model.rule import Rule

RULE = Rule(
    name="quotes-too-long",
    says="The words quoted from a book in copyright, over all its pages here, stay within the limit.",
    why="Quotation is for pointing at a book, not for standing in its place.",
    source="Copyright, Designs and Patents Act 1988, section 30(1ZA): no more than needed, acknowledged. The figure "
    "is the program's own.",
    wrong="> forty words copied from the book",
    right="> four words copied from the book",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem where the count of quoted words passes the limit. Block quotes and ``quotes`` are counted."""
    limit = collection.reference.limits.quoted_words
    for book, record in collection.books.items():
        if record.fields.rights != "in-copyright":
            continue
        count = sum(len(quote.split()) for quote in record.fields.quotes)
        if count > limit:
            yield RULE.problem(
                record.place("quotes"),
                f"The book's quotes come to {count} words; the limit is {limit}.",
                "quote less, or say it in your own words.",
            )
        pages: tuple[Document[PageFields], ...] = (record, *collection.sessions_of(book), *collection.homes_of(book))
        for page in pages:
            for run in _quoted(page):
                before, count = count, count + len(run.text.split())
                if before <= limit < count:
                    yield RULE.problem(
                        page.place_on_line(run.line),
                        f"With this, {count} words of the book are quoted; the limit is {limit}.",
                        "quote less, or say it in your own words.",
                    )


def _quoted(page: Document[PageFields]) -> Iterator[Run]:
    for block in page.content.blocks:
        if isinstance(block, Quotation):
            yield from Body((block,)).runs
