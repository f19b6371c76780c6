"""Untrue sums wherever an author may write one: each is found, in its place, and quoted as it stands."""

from __future__ import annotations

from dataclasses import replace

import pytest
from project import collection, problems_with, text_of
from storymaths.activities.on_pages import activities_of, check_activities
from storymaths.model.document import Document
from storymaths.model.problem import Problem
from storymaths.parse.collection import read_page

S2 = "books/cliff-house-lift/session-2.md"
S4 = "books/cliff-house-lift/session-4.md"
ASKED = "Ask for all six."


def place_of(text: str, words: str) -> tuple[int, int]:
    before = text[: text.index(words)]
    return before.count("\n") + 1, len(before) - before.rfind("\n")


def untrue(path: str, old: str, new: str) -> tuple[str, Problem]:
    text = text_of(path)
    assert old in text
    changed = text.replace(old, new, 1)
    (problem,) = [problem for problem in problems_with({path: changed}) if problem.rule == "number-sentence-untrue"]
    return changed, problem


@pytest.mark.parametrize(
    ("words", "quoted"),
    [
        ("What is left? 9 − 4 = 6.", "9 − 4 = 6"),
        ("We write 6 + 3 = **8**.", "6 + 3 = 8"),
        ("Then *6* + 3 = 8.", "6 + 3 = 8"),
        ("Then 6&nbsp;+ 3 = 8.", "6 + 3 = 8"),
        ("Then [6 + 3](story.md) = 8.", "6 + 3 = 8"),
        ("Then <b>6</b> + 3 = 8.", "6 + 3 = 8"),
        ("So 6 + 3 =\n5 + 3.", "6 + 3 = 5 + 3"),
        ("Moose, 6 + 2 = 8, and so 6 + 3 = 8.", "6 + 3 = 8"),
        ("So Moose = 6 + 1 = 8 bricks.", "6 + 1 = 8"),
        ("3 bricks + 4 bricks = 8 bricks.", "3 bricks + 4 bricks = 8"),
        ("Six and one make eight.", "Six and one make eight"),
        ("\n\n| a | b | c |\n|---|---|---|\n| 6 + 3 | = | 8 |\n", "6 + 3 | = | 8"),
        ("\n\n| a | b |\n|---|---|\n| 6 + 2 = 8 | 6 + 3 = 8 |\n", "6 + 3 = 8"),
    ],
)
def test_in_the_body(words: str, quoted: str) -> None:
    text, problem = untrue(S2, ASKED, f"{ASKED} {words}")
    first = quoted.split(maxsplit=1)[0]
    assert problem.message == f"{quoted} is not true."
    start = words.rindex("6 + 3") if words.count("6 +") > 1 and "6 + 3" in words else words.index(first)
    assert (problem.place.line, problem.place.column) == place_of(text, words[start:])


def test_below_a_block_that_holds_the_same_figures() -> None:
    text, problem = untrue(S2, "\n## ", "\nCamel is 9, and 9 = 5 + 5.\n\n## ")
    assert (problem.place.line, problem.place.column) == place_of(text, "9 = 5 + 5")
    after = text_of(S2).rstrip() + "\n\n9 = 5 + 5 is on the wall.\n"
    (below,) = [p for p in problems_with({S2: after}) if p.rule == "number-sentence-untrue"]
    assert (below.place.line, below.place.column) == (after.count("\n"), 1)


def test_in_front_matter_the_second_time_the_same_figures_stand_there() -> None:
    old = "or the story on the class screen"
    text, problem = untrue(S2, old, "6 + 3 of us or 6 + 3 = 8")
    assert (problem.place.line, problem.place.column) == place_of(text, "6 + 3 = 8")


def test_in_a_folded_text() -> None:
    old = "listen_for: The basket needs 9 altogether, and 5 is already there."
    text, problem = untrue(
        S2, old, "listen_for: >-\n          The basket needs 9 altogether, and 9 =\n          5 + 5."
    )
    assert problem.message == "9 = 5 + 5 is not true."
    assert (problem.place.line, problem.place.column) == place_of(text, "9 =\n")


def reported_in_activities(path: str, text: str) -> list[Problem]:
    page = read_page(f"content/{path}", text.encode(), collection().reference.limits.files)
    assert isinstance(page, Document)
    whole = replace(collection(), documents=tuple(page if p.path == page.path else p for p in collection().documents))
    return check_activities({page.path: activities_of(page, whole)})


@pytest.mark.parametrize(
    ("path", "old", "new"),
    [
        (S2, "ask: Which two friends", 'ask: "We know that 6 + 1 = 8. Which two friends'),
        (S4, "That is why five friends who come to 27 can", "That is why 2 + 2 = 5."),
    ],
)
def test_in_the_words_of_an_activity(path: str, old: str, new: str) -> None:
    text = text_of(path)
    assert old in text
    changed = text.replace(old, new, 1)
    if "ask:" in new:
        changed = changed.replace("Find every way.", 'Find every way."', 1)
    (problem,) = [p for p in reported_in_activities(path, changed) if p.rule == "number-sentence-untrue"]
    quoted = problem.message.removesuffix(" is not true.")
    assert quoted in new
    assert (problem.place.line, problem.place.column) == place_of(changed, quoted)


@pytest.mark.parametrize(
    ("words", "signs"),
    [
        ("10 - 3 = 8", ["type −"]),
        ("3 x 4 = 13", ["type ×"]),
        ("12 / 3 = 5", ["type ÷"]),
        ("5 x 2 - 1 = 10", ["type ×", "type −"]),
        ("6 + 1 = 8", []),
    ],
)
def test_where_the_typing_is_unlucky_the_sign_to_type_is_told(words: str, signs: list[str]) -> None:
    _, problem = untrue(S2, ASKED, f"{ASKED} {words}.")
    assert [sign in problem.fix for sign in signs] == [True] * len(signs)
    assert ("type" in problem.fix) == bool(signs)


@pytest.mark.parametrize(
    ("words", "why"),
    [("5 ÷ 0 = 0", "nothing can be divided by 0"), ("3 kg = 3 cm", "one is a mass and the other a length")],
)
def test_why_it_cannot_be_is_told(words: str, why: str) -> None:
    _, problem = untrue(S2, ASKED, f"{ASKED} {words}.")
    assert problem.message == f"{words} is not true: {why}."
