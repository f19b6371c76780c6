"""The shortest shelf against an integer programme solver that is not ours.

The solver is CBC (COIN-OR), as Google's OR-Tools brings it along. It is asked for the fewest books, then for the fewest
minutes of so many, then again and again for one more way, each found way forbidden, until there is none.
"""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from covers.made_up_shelves import CAPS, a_large_collection
from ortools.linear_solver import pywraplp
from storymaths.covers.shelf import ShelfBook, shortest_shelf

LARGE_COLLECTIONS = 20


def by_integer_programme(books: Sequence[ShelfBook]) -> tuple[int, int, set[tuple[str, ...]]]:
    """Number, minutes and every way."""
    solver = pywraplp.Solver.CreateSolver("CBC")
    on_shelf = {book.id: solver.BoolVar(book.id) for book in books}
    for code in frozenset().union(*(book.teaches for book in books)):
        solver.Add(sum(on_shelf[book.id] for book in books if code in book.teaches) >= 1)
    number, minutes = sum(on_shelf.values()), sum(book.minutes * on_shelf[book.id] for book in books)
    solver.Minimize(number)
    assert solver.Solve() == solver.OPTIMAL
    fewest = round(solver.Objective().Value())
    solver.Add(number == fewest)
    solver.Minimize(minutes)
    ways: set[tuple[str, ...]] = set()
    least = None
    while solver.Solve() == solver.OPTIMAL:
        taken = round(solver.Objective().Value())
        least = taken if least is None else least
        if taken > least:
            break
        way = tuple(book.id for book in books if on_shelf[book.id].solution_value() > 0.5)
        ways.add(way)
        solver.Add(sum(on_shelf[book] for book in way) <= len(way) - 1)
    assert least is not None
    return fewest, least, ways


@pytest.mark.parametrize("number", range(LARGE_COLLECTIONS))
def test_sixty_books_and_eighty_objectives(number: int) -> None:
    books = a_large_collection(number)
    shelf = shortest_shelf(books, CAPS)
    assert shelf.proved
    assert (shelf.books, shelf.minutes, set(shelf.ways)) == by_integer_programme(books)
