"""The finder asked as teachers and parents ask: what comes first, what becomes a filter, and what it says it has not."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import Any

import pytest
from finder_queries import FIRST, QUERIES, Finder
from project import collection
from storymaths.model.book import Book


@lru_cache(maxsize=1)
def finder() -> Finder:
    return Finder(collection())


@pytest.mark.parametrize("query", QUERIES, ids=lambda query: str(query["asks"]))
def test_what_was_asked_for_comes_first_and_nothing_else(query: Mapping[str, Any]) -> None:
    judged = finder().judge(query)
    assert judged.has_the_right, finder().titles(judged.found["rows"][:FIRST])
    assert judged.has_no_other, finder().titles(judged.found["rows"][:FIRST])


@pytest.mark.parametrize(
    ("asked", "chosen"),
    [
        ("year 1 number bonds", ["year:1", "year:b1"]),
        ("Y2", ["year:2", "year:b2"]),
        ("reception sharing", ["year:0", "year:b0"]),
        ("10 minutes at home", ["minutes:15", "kind:home"]),
        ("a 50-minute lesson on time", ["minutes:60", "kind:session"]),
        ("sharing", []),
        ("year 12", []),
    ],
)
def test_words_for_a_year_a_kind_or_minutes_become_filters(asked: str, chosen: list[str]) -> None:
    assert finder().find(asked)["chosen"] == chosen


@pytest.mark.parametrize("asked", ["printable", "dinosaurs", "phonics", "g", "camel and dinosaurs"])
def test_never_less_than_a_whole_word_is_found(asked: str) -> None:
    assert finder().find(asked)["rows"] == []


@pytest.mark.parametrize(
    ("asked", "shown"),
    [("qeuality", "equality"), ("multiplcation year 2", "multiplication year 2"), ("shering", "sharing"), ("mutiply", "multiply")],
)  # fmt: skip
def test_a_guess_at_a_spelling_is_told(asked: str, shown: str) -> None:
    found = finder().find(asked)
    assert found["shownFor"] == shown
    assert found["rows"] == finder().find(shown)["rows"] != []


def test_a_word_that_is_still_being_typed_finds_what_begins_with_it() -> None:
    assert finder().find("skerr")["rows"] == finder().find("skerry")["rows"] != []


def test_where_nothing_is_of_an_idea_it_says_so_and_gives_the_nearest() -> None:
    found = finder().find("fractions")
    assert (found["rows"], found["untaught"]) == ([], ["fractions"])
    nearest = {name for row in found["nearest"][:FIRST] for name in finder().ideas[row].page.concepts}
    assert {"sharing", "doubles-and-halves"} <= nearest


@pytest.mark.parametrize("asked", ["sharing", "equal groups", "money", "KS1", "lamps"])
def test_books_come_after_what_can_be_taught(asked: str) -> None:
    books = [isinstance(finder().ideas[row].fields, Book) for row in finder().find(asked)["rows"]]
    assert books == sorted(books)
    assert len(set(books)) == 2


def test_a_book_asked_for_by_its_name_comes_first() -> None:
    assert finder().titles(finder().find("the ferry fare")["rows"][:1]) == ["The Ferry Fare"]
