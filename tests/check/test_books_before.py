"""Books that come after others: what is known in them, and the order of a series. Common practice, no source."""

from __future__ import annotations

import pytest
from project import problems_with, text_of

LIFT, LAMPS = "books/cliff-house-lift/index.md", "books/twenty-lamps/index.md"
FIRST = "books/twenty-lamps/session-1.md"
NO_SIGN = (FIRST, 'symbols:\n  new: ["≠"]', "symbols:\n  new: []")


def after(path: str, book: str) -> dict[str, str]:
    return {path: text_of(path).replace("themes: [", f"after: [{book}]\nthemes: [", 1)}


def without_the_sign() -> dict[str, str]:
    path, old, new = NO_SIGN
    assert old in text_of(path)
    return {path: text_of(path).replace(old, new, 1)}


def told(changed: dict[str, str]) -> list[tuple[str, str]]:
    return [(problem.rule, problem.place.path) for problem in problems_with(changed)]


def test_what_an_earlier_book_brings_in_is_known() -> None:
    assert told(without_the_sign()) == [("symbol-not-introduced", f"content/{FIRST}")]
    assert told(without_the_sign() | after(LAMPS, "cliff-house-lift")) == []


def test_a_word_of_an_earlier_book_is_known() -> None:
    text = {FIRST: text_of(FIRST).replace("again: [share,", "again: [unit, share,", 1)}
    assert told(text) == [("word-not-taught", f"content/{FIRST}")]
    assert told(text | after(LAMPS, "cliff-house-lift")) == []


@pytest.mark.parametrize("book", ["twenty-lamps", "cliff-house-lift"])
def test_a_book_does_not_come_after_itself(book: str) -> None:
    changed = after(LAMPS, book) | (after(LIFT, "twenty-lamps") if book != "twenty-lamps" else {})
    assert {rule for rule, _ in told(changed)} == {"books-out-of-order"}


def test_a_series_keeps_the_order() -> None:
    told_of = told(after(LIFT, "twenty-lamps"))
    assert told_of == [("books-out-of-order", "content/series/a-term-on-plover-quay.md")]


def test_a_book_that_is_not_there_is_told() -> None:
    assert told(after(LAMPS, "cliff-house-lif")) == [("book-unknown", f"content/{LAMPS}")]
