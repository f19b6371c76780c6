"""What activities, and bends in their place, say in words: sums, claims, the cast, how many are put in order, both ways."""

from __future__ import annotations

import pytest
from project import collection, text_of
from storymaths.activities.on_pages import work_out_pages
from storymaths.activities.told_claims import check_words
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.problem import Problem
from storymaths.parse.collection import read_page

S1, S2 = "books/cliff-house-lift/session-1.md", "books/cliff-house-lift/session-2.md"
H1, GRAMS = "books/cliff-house-lift/home-1.md", "so the friends are 450 g, 300 g, 250 g, 200 g, 150 g and 50 g"
ORDER, ASK = (
    "ask: Put the six friends in order, the lightest first.",
    "ask: Which two friends ride level with the one? Find every way.",
)
FIVE = 'Which two friends make 5 together?", whole: 5'
BENT = 'lightest: {ask: "Put the three friends in order, the lightest first."}'


def told(path: str, text: str) -> list[Problem]:
    whole = collection()
    page = read_page(f"content/{path}", text.encode(), whole.reference.limits.files)
    assert isinstance(page, Document)
    pages = tuple(page if one.path == page.path else one for one in whole.documents if one.book == page.book)
    changed = Collection(pages, (), whole.files, whole.reference)
    return [problem for problem in check_words(changed, work_out_pages(changed)) if problem.place.path == page.path]


@pytest.mark.parametrize(
    ("path", "old", "new", "rule", "says"),
    [
        (S2, ASK, "ask: Camel is 8. Find every way.", "book-fact-untrue", "in the book Camel is 9"),
        (S2, ASK, "ask: 27 is even. Find every way.", "claim-untrue", "27 is odd"),
        (S2, ASK, "ask: Which two ride level? Find both ways.", "ways-miscounted", "the activity finds 5"),
        (S1, ORDER, "ask: Put the seven friends in order.", "activity-claim-wrong", "other numbers of things"),
        (S1, GRAMS, GRAMS.replace("450", "451"), "lesson-contradicted", "tells of 451, and what it pins has 450"),
        (
            H1,
            FIVE,
            FIVE.replace("make 5", "make 7").replace("whole: 5", "whole: 6"),
            "lesson-contradicted",
            "activity's data say 6",
        ),
        (S1, BENT, BENT.replace("three", "two"), "activity-claim-wrong", "other numbers of things"),
        (S1, BENT, BENT.replace("first.", "first. 27 is even."), "claim-untrue", "27 is odd"),
        (S1, BENT, BENT.replace("first.", "first. 3 + 4 = 8."), "number-sentence-untrue", "3 + 4 = 8"),
    ],
)
def test_what_does_not_hold_is_found_in_its_place(path: str, old: str, new: str, rule: str, says: str) -> None:
    text = text_of(path)
    assert old in text
    (problem,) = told(path, text.replace(old, new, 1))
    assert (problem.rule, problem.place.line) == (rule, text[: text.index(old)].count("\n") + 1)
    assert says in problem.message


@pytest.mark.parametrize(
    "words",
    [
        "Camel is 9. Find every way.",
        "Is 27 even? Find every way.",
        "Put the two that ride level in order. Find all five ways.",
    ],
)
def test_what_holds_is_left(words: str) -> None:
    assert told(S2, text_of(S2).replace(ASK, f"ask: {words}", 1)) == []
