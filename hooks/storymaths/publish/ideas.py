"""What the finder finds: each book, its sessions and its home activities, in one order that every data file keeps."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ..model.address import html_of
from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document
from ..model.home import Home
from ..model.session import Session


@dataclass(frozen=True, slots=True)
class Idea:
    """A page the finder leads to."""

    page: Document[Book] | Document[Session] | Document[Home]
    book: str
    """The id of the book it is, or belongs to."""

    @property
    def fields(self) -> Book | Session | Home:
        """What its author wrote."""
        return self.page.fields

    @property
    def address(self) -> str:
        """Where it is, from the site's root."""
        return html_of(self.page.source)


def ideas(collection: Collection) -> Iterator[Idea]:
    """Every idea: book by book, first the book itself, then its sessions by number, then what to do at home."""
    for book, record in collection.books.items():
        yield Idea(record, book)
        yield from (Idea(page, book) for page in collection.sessions_of(book))
        yield from (Idea(page, book) for page in collection.homes_of(book))


def things_of(fields: Book | Session | Home) -> list[str]:
    """The materials an idea needs, by id; a book by itself needs none."""
    if isinstance(fields, Session):
        return [needed.item for needed in fields.materials]
    return [thing.item for thing in fields.things] if isinstance(fields, Home) else []
