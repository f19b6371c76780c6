"""What maths is in a book: every kind of activity tried with what the book has, and the best put first."""

from __future__ import annotations

from ..covers.taught import Key
from ..model.collection import Collection
from .idea import Ideas


def find_ideas(
    collection: Collection, book: str, year: int, objective: Key | None = None, series: str | None = None
) -> Ideas:
    """Ideas for a book, by its id, and a year, best first; with ``objective`` only those that practise it.

    What ``series`` still misses ranks higher; without it, what any series that has the book misses.
    """
    title = collection.books[book].fields.title
    return Ideas(book, title, year, objective, (series,) if series else (), (), (), ())
