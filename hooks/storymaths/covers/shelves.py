"""For each framework and year, what each book teaches, the shortest shelf of all, and what no book teaches."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from ..model.collection import Collection
from ..model.objective import Framework, Objective, Part
from ..model.reference import Reference
from .shelf import Shelf, ShelfBook, shortest_shelf
from .taught import SessionPage, parts_taught

Question = tuple[str, int]
"""A framework's id and a year."""


@dataclass(frozen=True, slots=True)
class Item:
    """What a shelf has to teach: an objective, or one part of an objective that has parts."""

    objective: Objective
    part: Part | None

    @property
    def id(self) -> str:
        """A name for it within its framework."""
        return f"{self.objective.code} {self.part.id}" if self.part else self.objective.code

    @property
    def asked(self) -> bool:
        """Whether its objective counts as taught only with it."""
        return self.part is None or self.part.asked

    @property
    def says(self) -> str:
        """It in our words."""
        return self.part.says if self.part else self.objective.says


@dataclass(frozen=True, slots=True)
class YearShelf:
    """The shelf for one framework and year."""

    framework: Framework
    year: int
    books: tuple[ShelfBook, ...]
    """Every book that teaches something of it, in the collection's order; minutes are those of its sessions of the year."""
    items: tuple[Item, ...]
    """The objectives, and parts of objectives, that some book teaches: what the shelf is to cover."""
    in_part: tuple[Objective, ...]
    """Objectives of which all books together teach only some parts."""
    beyond: tuple[Objective, ...]
    """Those of which no book teaches anything."""
    shelf: Shelf


def year_shelves(collection: Collection) -> Mapping[Question, YearShelf]:
    """A shelf for each framework and year that has objectives; every part counts that a session teaches.

    Taking up again and touching in a bend are not enough: a shelf is to teach the year by itself.
    """
    books = _books(collection)
    caps, shelves = collection.reference.limits.shelf, dict[Question, YearShelf]()
    for framework in collection.reference.frameworks.values():
        for year in collection.reference.years:
            asked = collection.reference.objectives_of.get((framework.id, year), ())
            teaching = books.get((framework.id, year), ())
            taught = frozenset().union(*(book.teaches for book in teaching))
            items = [item for objective in asked for item in _items(objective)]
            if asked:
                found = tuple(item for item in items if item.id in taught)
                left = {item.objective.code for item in items if item.id not in taught and item.asked}
                begun = {item.objective.code for item in found}
                shelves[framework.id, year] = YearShelf(
                    framework,
                    year,
                    teaching,
                    found,
                    tuple(objective for objective in asked if objective.code in left and objective.code in begun),
                    tuple(objective for objective in asked if objective.code not in begun),
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
            for question, item in _dated(page, collection.reference):
                teaches.setdefault(question, {}).setdefault(book, set()).add(item.id)
    return {
        (framework, year): tuple(
            ShelfBook(book, frozenset(codes), minutes.get((book, year), 0)) for book, codes in by_book.items()
        )
        for (framework, year), by_book in teaches.items()
    }


def _dated(page: SessionPage, reference: Reference) -> Iterator[tuple[Question, Item]]:
    """What a session teaches, each with its framework and year."""
    for framework, claims in page.fields.objectives.items():
        for code in dict.fromkeys(claim.code for claim in claims):
            objective = reference.objectives.get((framework, code))
            if objective is None:
                continue
            parts = parts_taught(page, (framework, code), reference) if objective.has_parts else ()
            for item in _items(objective):
                if item.part is None or item.part in parts:
                    yield (framework, objective.year), item


def _items(objective: Objective) -> list[Item]:
    return [Item(objective, part) for part in objective.parts] if objective.has_parts else [Item(objective, None)]
