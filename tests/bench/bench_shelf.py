"""How long the shortest shelf takes for sixty books and eighty objectives: at most two seconds each, of processor time.

From ``tests/``: ``python -m bench.bench_shelf``. First the collections of the tests, then books that teach more each.
"""

from __future__ import annotations

import time
from collections.abc import Iterator
from random import Random

from covers.made_up_shelves import CAPS, a_large_collection, books_by_chance
from storymaths.covers.shelf import ShelfBook, shortest_shelf

MOST_SECONDS = 2.0
COLLECTIONS = 20
RICHER = ((6, 12), (8, 16), (10, 24), (20, 30))
"""The least and the most of the eighty objectives that a book teaches."""


def collections() -> Iterator[tuple[str, list[ShelfBook]]]:
    """Each collection by a name."""
    for number in range(COLLECTIONS):
        yield f"3 to 9 objectives a book, {number:2}", a_large_collection(number)
    for least, most in RICHER:
        for number in range(4):
            yield f"{least} to {most} objectives a book, {number}", books_by_chance(Random(number), 60, 80, least, most)


def main() -> None:
    """Prints each time, and the longest."""
    longest = 0.0
    for name, books in collections():
        started = time.process_time()
        shelf = shortest_shelf(books, CAPS)
        took = time.process_time() - started
        longest = max(longest, took)
        found = f"{shelf.books} books, {shelf.minutes} minutes, {len(shelf.ways)} way(s)"
        print(f"{name}: {took:.2f} s: {found}{'' if shelf.proved else ', not proved'}")
    print(f"longest {longest:.2f} s (at most {MOST_SECONDS:g} s)")


if __name__ == "__main__":
    main()
