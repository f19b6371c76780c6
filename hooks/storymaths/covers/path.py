"""The path through a series: its books in order, the sessions of each, and what has to come first."""

from __future__ import annotations

from dataclasses import dataclass

from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document
from ..model.series import Series
from .taught import SessionPage


@dataclass(frozen=True, slots=True)
class BookRun:
    """A book of a series with its sessions in order."""

    id: str
    book: Document[Book]
    sessions: tuple[SessionPage, ...]

    @property
    def minutes(self) -> int:
        """What all its sessions take."""
        return sum(page.fields.minutes for page in self.sessions)


@dataclass(frozen=True, slots=True)
class SeriesPath:
    """All the sessions of a series in the order they are taught."""

    runs: tuple[BookRun, ...]

    @property
    def sessions(self) -> tuple[SessionPage, ...]:
        """Every session, book by book; a session needs earlier ones of its own book only, so none comes too soon."""
        return tuple(page for run in self.runs for page in run.sessions)

    @property
    def minutes(self) -> int:
        """What the whole series takes."""
        return sum(run.minutes for run in self.runs)


def path_of(series: Series, collection: Collection) -> SeriesPath:
    """The path of a series through those of its books that are in the collection."""
    return SeriesPath(
        tuple(
            BookRun(book, collection.books[book], collection.sessions_of(book))
            for book in series.books
            if book in collection.books
        )
    )
