"""The shortest shelf: the fewest books, then the fewest minutes, that teach all a collection can teach of a year.

It is searched by ``hooks/scripts/shelf/``, as the page does on the reader's device for the books a reader owns.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from pydantic import BaseModel

from ..model.reference import ShelfCaps
from ..scripts.run import run


@dataclass(frozen=True, slots=True)
class ShelfBook:
    """A book as a shelf sees it: what of the year it teaches, and how long that takes."""

    id: str
    teaches: frozenset[str]
    minutes: int


@dataclass(frozen=True, slots=True)
class Shelf:
    """The fewest books to buy, the minutes they take, and every way to choose them."""

    books: int
    minutes: int
    ways: tuple[tuple[str, ...], ...]
    """Each way as ids, in the order the books were given; one empty way when nothing needs buying."""
    more: bool
    """Whether there are more ways than these: no more than ``caps.ways`` are kept."""
    proved: bool
    """False when the search was given up: there may then be a shorter shelf."""

    @property
    def always(self) -> tuple[str, ...]:
        """Books that stand on the shelf whichever way is chosen."""
        return tuple(book for book in self.ways[0] if all(book in way for way in self.ways))


class _Found(BaseModel):
    """What ``shortest`` in ``hooks/scripts/shelf/sums.js`` gives; a way names books by their places."""

    books: int
    minutes: int
    ways: tuple[tuple[int, ...], ...]
    more: bool
    proved: bool


def shortest_shelf(books: Sequence[ShelfBook], caps: ShelfCaps, owned: Collection[str] = ()) -> Shelf:
    """The fewest books to add to those ``owned`` so that all that ``books`` can teach is taught.

    Exact, with every tie, unless the search needs more than ``caps.tries`` steps. Fewest books come first and
    fewest minutes second; of books owned the minutes are not counted.
    """
    asked = (as_question(books), sorted(owned), {"tries": caps.tries, "ways": caps.ways})
    found = _Found.model_validate_json(run("shelf/sums.js", "shortest", *asked))
    ways = tuple(tuple(books[place].id for place in way) for way in found.ways)
    return Shelf(found.books, found.minutes, ways, found.more, found.proved)


def as_question(books: Sequence[ShelfBook]) -> dict[str, object]:
    """Books as the scripts take them: ``Question`` in ``hooks/scripts/shelf/sums.js``."""
    codes = sorted(frozenset().union(*(book.teaches for book in books)))
    place = {code: n for n, code in enumerate(codes)}
    taught = [[book.id, book.minutes, sorted(place[code] for code in book.teaches)] for book in books]
    return {"objectives": codes, "books": taught}
