"""Collections of made-up books for the shelf: by chance, but always the same for the same number."""

from __future__ import annotations

from random import Random

from storymaths.covers.shelf import ShelfBook
from storymaths.model.reference import ShelfCaps

CAPS = ShelfCaps(tries=60000, ways=500, shown=12)
MINUTES = (180, 180, 195, 200, 205, 210, 220)
"""Few, so that there are ties."""


def books_by_chance(chance: Random, books: int, objectives: int, least: int, most: int) -> list[ShelfBook]:
    """Books that each teach from ``least`` to ``most`` of the objectives ``00``, ``01`` …"""
    codes = [f"{n:02}" for n in range(objectives)]
    return [
        ShelfBook(f"book-{n:02}", frozenset(chance.sample(codes, chance.randint(least, most))), chance.choice(MINUTES))
        for n in range(books)
    ]


def a_small_collection(number: int) -> tuple[list[ShelfBook], frozenset[str]]:
    """At most eleven books and twelve objectives, and the ids of those a reader owns."""
    chance = Random(number)
    objectives = chance.randint(1, 12)
    books = books_by_chance(chance, chance.randint(1, 11), objectives, 0, min(objectives, chance.randint(1, 5)))
    owned = chance.sample([book.id for book in books], chance.randint(0, len(books) // 3))
    return books, frozenset(owned)


def a_large_collection(number: int) -> list[ShelfBook]:
    """Sixty books and eighty objectives; a book teaches from three to nine of them."""
    return books_by_chance(Random(number), 60, 80, 3, 9)
