"""For each framework and year, what each book teaches, the shortest shelf of all, and what no book teaches."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..model.collection import Collection
from ..model.objective import Framework, Objective
from ..model.session import Session
from .shelf import Shelf, ShelfBook, shortest_shelf

Question = tuple[str, int]
"""A framework's id and a year."""


@dataclass(frozen=True, slots=True)
class YearShelf:
    """The shelf for one framework and year."""

    framework: Framework
    year: int
    books: tuple[ShelfBook, ...]
    """Every book that teaches something of it, in the collection's order; minutes are those of its sessions of the year."""
    objectives: tuple[Objective, ...]
    """Those some book teaches."""
    beyond: tuple[Objective, ...]
    """Those no book teaches."""
    shelf: Shelf


def year_shelves(collection: Collection) -> Mapping[Question, YearShelf]:
    """A shelf for each framework and year that has objectives; an objective counts where a session teaches it.

    Taking up again and touching in a bend are not enough: a shelf is to teach the year by itself.
    """
    books = _books(collection)
    caps, shelves = collection.reference.limits.shelf, dict[Question, YearShelf]()
    for framework in collection.reference.frameworks.values():
        for year in collection.reference.years:
            asked = collection.reference.objectives_of.get((framework.id, year), ())
            teaching = books.get((framework.id, year), ())
            taught = frozenset().union(*(book.teaches for book in teaching))
            if asked:
                shelves[framework.id, year] = YearShelf(
                    framework,
                    year,
                    teaching,
                    tuple(objective for objective in asked if objective.code in taught),
                    tuple(objective for objective in asked if objective.code not in taught),
                    shortest_shelf(teaching, caps),
                )
    return shelves


def _books(collection: Collection) -> Mapping[Question, tuple[ShelfBook, ...]]:
    """For each framework and year, the books with what they teach of it; one pass over all sessions."""
    teaches: dict[Question, dict[str, set[str]]] = {}
    minutes: dict[tuple[str, int], int] = {}
    for book in collection.books:
        for page in collection.sessions_of(book):
            session = page.fields
            minutes[book, session.year] = minutes.get((book, session.year), 0) + session.minutes
            for (framework, year), code in _dated(session, collection):
                teaches.setdefault((framework, year), {}).setdefault(book, set()).add(code)
    return {
        (framework, year): tuple(
            ShelfBook(book, frozenset(codes), minutes.get((book, year), 0)) for book, codes in by_book.items()
        )
        for (framework, year), by_book in teaches.items()
    }


def _dated(session: Session, collection: Collection) -> list[tuple[Question, str]]:
    """The objectives a session teaches, each with its framework and year."""
    known = collection.reference.objectives
    return [
        ((framework, known[framework, code].year), code)
        for framework, codes in session.objectives.items()
        for code in codes
        if (framework, code) in known
    ]
