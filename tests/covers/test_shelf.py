"""The shortest shelf against going through every set of books there is, and what it says when it gives up."""

from __future__ import annotations

import json
from collections.abc import Collection, Sequence
from itertools import combinations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.covers.shelf import ShelfBook, as_question, shortest_shelf
from storymaths.scripts.run import run

from .made_up_shelves import CAPS, a_large_collection, a_small_collection

SMALL_COLLECTIONS = 500
Way = tuple[str, ...]


def taught_by(books: Sequence[ShelfBook], chosen: Collection[str]) -> frozenset[str]:
    """What the books with the ids ``chosen`` teach between them."""
    return frozenset().union(*(book.teaches for book in books if book.id in chosen))


def best_next(books: Sequence[ShelfBook], owned: Collection[str]) -> list[tuple[str, str]]:
    """The books that would add most, and what, as the page tells."""
    question = as_question(books)
    codes = sorted(frozenset().union(*(book.teaches for book in books)))
    found = json.loads(run("shelf/sums.js", "bestNext", question, sorted(owned)))
    return [(books[place].id, "".join(codes[code] for code in sorted(adds))) for place, adds in found]


def by_brute_force(books: Sequence[ShelfBook], owned: Collection[str]) -> tuple[int, int, set[Way]]:
    """Number, minutes and every way, by trying all sets of one book, then of two, and so on."""
    wanted = frozenset().union(*(book.teaches for book in books)) - taught_by(books, owned)
    others = [book for book in books if book.id not in owned]
    for number in range(len(others) + 1):
        covers = {
            tuple(book.id for book in chosen): sum(book.minutes for book in chosen)
            for chosen in combinations(others, number)
            if wanted <= frozenset().union(*(book.teaches for book in chosen))
        }
        if covers:
            fewest = min(covers.values())
            return number, fewest, {way for way, minutes in covers.items() if minutes == fewest}
    raise AssertionError("all books together teach what all books teach")


@pytest.mark.parametrize("first", range(0, SMALL_COLLECTIONS, 50))
def test_it_is_what_going_through_every_set_of_books_finds(first: int) -> None:
    for number in range(first, first + 50):
        books, owned = a_small_collection(number)
        shelf = shortest_shelf(books, CAPS, owned)
        assert shelf.proved
        assert not shelf.more
        assert len(set(shelf.ways)) == len(shelf.ways)
        assert (shelf.books, shelf.minutes, set(shelf.ways)) == by_brute_force(books, owned), number


@given(
    st.lists(st.tuples(st.frozensets(st.sampled_from("abcdefgh")), st.integers(1, 3)), max_size=9),
    st.frozensets(st.integers(0, 8), max_size=3),
)
@settings(max_examples=150, deadline=None)
def test_nobody_has_thought_of_a_collection_it_fails_on(
    told: list[tuple[frozenset[str], int]], own: frozenset[int]
) -> None:
    books = [ShelfBook(str(n), teaches, minutes) for n, (teaches, minutes) in enumerate(told)]
    owned = {str(n) for n in own if n < len(books)}
    shelf = shortest_shelf(books, CAPS, owned)
    assert (shelf.books, shelf.minutes, set(shelf.ways)) == by_brute_force(books, owned)


def test_by_hand() -> None:
    # Three objectives of A are nowhere else, so A stands on every shelf. What is left, d and e, is in B, or in C and D;
    # E is as good as B in as many minutes, F takes a minute more.
    books = [
        ShelfBook("A", frozenset("abc"), 200),
        ShelfBook("B", frozenset("de"), 150),
        ShelfBook("C", frozenset("d"), 20),
        ShelfBook("D", frozenset("e"), 20),
        ShelfBook("E", frozenset("cde"), 150),
        ShelfBook("F", frozenset("de"), 151),
    ]
    shelf = shortest_shelf(books, CAPS)
    assert (shelf.books, shelf.minutes, shelf.ways) == (2, 350, (("A", "B"), ("A", "E")))
    assert shelf.always == ("A",)
    owned = shortest_shelf(books, CAPS, {"A", "C"})
    assert (owned.books, owned.minutes, owned.ways) == (1, 20, (("D",),))
    assert best_next(books, {"A"}) == [("B", "de"), ("E", "de"), ("F", "de")]


def test_nothing_to_buy() -> None:
    books = [ShelfBook("A", frozenset("ab"), 200), ShelfBook("B", frozenset("a"), 100)]
    shelf = shortest_shelf(books, CAPS, {"A"})
    assert (shelf.books, shelf.minutes, shelf.ways) == (0, 0, ((),))
    assert best_next(books, {"A"}) == []
    assert shortest_shelf([], CAPS).ways == ((),)


def test_more_ways_than_can_be_kept_are_told_of() -> None:
    # Ten objectives, each taught by ten like books: 10 to the power of 10 ways.
    books = [ShelfBook(f"{code}{n}", frozenset({code}), 100) for code in "abcdefghij" for n in range(10)]
    shelf = shortest_shelf(books, CAPS)
    assert (shelf.books, shelf.minutes, shelf.more, shelf.proved) == (10, 1000, True, True)
    assert len(shelf.ways) == CAPS.ways
    # Unlike books, none alike to the search: the ring of pairs ab, bc, cd … has two covers, three in a row of rings have 8.
    rings = [
        ShelfBook(f"{ring}{n}", frozenset({f"{ring}{n}", f"{ring}{(n + 1) % 6}"}), 100)
        for ring in "xyz"
        for n in range(6)
    ]
    assert len(shortest_shelf(rings, CAPS).ways) == 8
    few = shortest_shelf(rings, CAPS.model_copy(update={"ways": 5}))
    assert (len(few.ways), few.more) == (5, True)


def test_a_search_that_is_given_up_says_so_and_still_covers_all() -> None:
    books = a_large_collection(1)
    hasty = shortest_shelf(books, CAPS.model_copy(update={"tries": 3}))
    assert not hasty.proved
    assert taught_by(books, hasty.ways[0]) == taught_by(books, [book.id for book in books])
    assert hasty.books >= shortest_shelf(books, CAPS).books
