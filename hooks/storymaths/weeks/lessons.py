"""What is to be laid: the sessions of a series in the order they are taught."""

from __future__ import annotations

import datetime
from collections.abc import Sequence
from dataclasses import dataclass

from ..model.collection import Collection
from ..model.document import Document
from ..model.series import Series
from ..model.session import Session


@dataclass(frozen=True, slots=True)
class Step:
    """A step of a session and its minutes."""

    name: str
    minutes: int


@dataclass(frozen=True, slots=True)
class Lesson:
    """A session as a plan speaks of it."""

    book: str
    """The id of its book."""
    book_title: str
    number: int
    title: str
    reads: str
    """The pages of the book it reads, in words."""
    steps: tuple[Step, ...]
    source: str
    """Of its page, inside ``content/``."""

    @property
    def minutes(self) -> int:
        """How long it is."""
        return sum(step.minutes for step in self.steps)


@dataclass(frozen=True, slots=True)
class SeriesRun:
    """A series and all its lessons."""

    id: str
    """The name of its page, without an ending."""
    title: str
    version: str
    changed: datetime.date
    """The day of its last change; a plan takes no other date from anywhere but what it is asked."""
    lessons: tuple[Lesson, ...]

    @property
    def longest(self) -> int:
        """The minutes of its longest lesson: days of so many need no splitting."""
        return max((lesson.minutes for lesson in self.lessons), default=0)

    def as_data(self) -> dict[str, object]:
        """The series as the scripts take it: ``SeriesData`` in ``hooks/scripts/weeks/lessons.js``.

        A lesson is ``[book id, book title, number, title, what it reads, address, [step, minutes, step, minutes …]]``;
        ``changed`` is written as a calendar writes it.
        """
        return {
            "id": self.id,
            "title": self.title,
            "version": self.version,
            "changed": f"{self.changed:%Y%m%d}",
            "lessons": [
                [
                    lesson.book,
                    lesson.book_title,
                    lesson.number,
                    lesson.title,
                    lesson.reads,
                    f"{lesson.source.removesuffix('.md')}.html",
                    [value for step in lesson.steps for value in (step.name, step.minutes)],
                ]
                for lesson in self.lessons
            ],
        }


def sessions_of(collection: Collection, series: Document[Series]) -> list[Document[Session]]:
    """The sessions of a series: book by book in its order, each book's by number, so that what one needs comes first."""
    return [page for book in dict.fromkeys(series.fields.books) for page in collection.sessions_of(book)]


def run_of(collection: Collection, series: Document[Series]) -> SeriesRun:
    """A series with its sessions, ready to be laid."""
    return SeriesRun(
        id=series.path.rpartition("/")[2].removesuffix(".md"),
        title=_plain(series.fields.title),
        version=series.fields.version,
        changed=max(change.date for change in series.fields.changes),
        lessons=tuple(_lesson(collection, page) for page in sessions_of(collection, series)),
    )


def _lesson(collection: Collection, page: Document[Session]) -> Lesson:
    session = page.fields
    book = collection.run_of(page)
    titled = collection.books.get(book)
    return Lesson(
        book=book,
        book_title=_plain(titled.fields.title) if titled else book,
        number=session.number,
        title=_plain(session.title),
        reads=_listed(list(dict.fromkeys(str(reading.pages) for reading in session.reads))),
        steps=tuple(Step(_plain(step.name), step.minutes) for step in session.steps),
        source=page.source,
    )


def _listed(names: Sequence[str]) -> str:
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)


def _plain(words: str) -> str:
    return " ".join(words.split())
