"""The shortest shelf: the fewest books, then the fewest minutes, that teach all a collection can teach of a year."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, product
from math import prod

from ..model.reference import ShelfCaps
from .shelf_reductions import Choice, reduced
from .shelf_search import search


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


def taught_by(books: Sequence[ShelfBook], chosen: Collection[str]) -> frozenset[str]:
    """What the books with the ids ``chosen`` teach between them."""
    return frozenset().union(*(book.teaches for book in books if book.id in chosen))


def shortest_shelf(books: Sequence[ShelfBook], caps: ShelfCaps, owned: Collection[str] = ()) -> Shelf:
    """The fewest books to add to those ``owned`` so that all that ``books`` can teach is taught.

    Exact, with every tie, unless the search needs more than ``caps.tries`` steps. Fewest books come first and
    fewest minutes second; of books owned the minutes are not counted.
    """
    wanted = sorted(frozenset().union(*(book.teaches for book in books)) - taught_by(books, owned))
    row = {code: 1 << n for n, code in enumerate(wanted)}
    choices = [
        Choice(sum(row[code] for code in book.teaches if code in row), book.minutes, (n,))
        for n, book in enumerate(books)
        if book.id not in owned
    ]
    if not wanted:
        return Shelf(0, 0, ((),), more=False, proved=True)
    needed, rows, left = reduced((1 << len(wanted)) - 1, choices)
    found = search(rows, left, caps)
    ways = [(*needed, *(left[n] for n in way)) for way in found.ways]
    number = sum(prod(len(choice.books) for choice in way) for way in ways)
    listed = sorted(islice((way for chosen in ways for way in _spelt_out(chosen)), caps.ways))
    return Shelf(
        books=len(ways[0]),
        minutes=sum(choice.minutes for choice in ways[0]),
        ways=tuple(tuple(books[n].id for n in way) for way in listed),
        more=found.more or number > len(listed),
        proved=found.proved,
    )


def _spelt_out(way: Sequence[Choice]) -> Iterator[tuple[int, ...]]:
    """A way with each choice among like books made in turn."""
    for chosen in product(*(choice.books for choice in way)):
        yield tuple(sorted(chosen))


@dataclass(frozen=True, slots=True)
class Gain:
    """What one more book would add."""

    id: str
    adds: frozenset[str]
    minutes: int


def best_next(books: Sequence[ShelfBook], owned: Collection[str] = ()) -> tuple[Gain, ...]:
    """The books that would add most to those ``owned``, all of them; the shortest first, then as given."""
    have = taught_by(books, owned)
    gains = [Gain(book.id, book.teaches - have, book.minutes) for book in books if book.id not in owned]
    most = max((len(gain.adds) for gain in gains), default=0)
    if not most:
        return ()
    return tuple(sorted((gain for gain in gains if len(gain.adds) == most), key=lambda gain: gain.minutes))
