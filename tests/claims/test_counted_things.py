"""What a book's record counts, held to its pages; the frozen collection's book, with counts of its own, is the fact."""

from __future__ import annotations

import pytest
from project import problems_with, text_of

INDEX, SESSION = "books/cliff-house-lift/index.md", "books/cliff-house-lift/session-2.md"
COUNTS = '\ncounts: ["96 stairs", "4 beds", "2 or 6 boats", "9 red posts", "12 melon seeds"]\n---\n'


def found_in(words: str, counts: str = COUNTS) -> list[str]:
    record = text_of(INDEX).replace("\n---\n", counts, 1)
    text = text_of(SESSION).rstrip() + f"\n\n{words}\n"
    return [problem.message for problem in problems_with({INDEX: record, SESSION: text}) if "counts" in problem.message]


@pytest.mark.parametrize(
    "words",
    [
        "There are ninety-seven stairs to the roof.", "They climb the 95 stairs.", "All five beds are dug.", "Three boats come home.",
        "Ten red posts stand in a row.", "On the roof are five long beds.", "Do all five beds get the sun?", "Draw the five beds.",
        "There are five beds, which will not be dug.",
        "The 13 melon seeds are in a tin.",
        "Count them: “There are three beds.”", "The stairs go up, all 97 stairs of them.", "Round five *beds* it goes.",
    ],
)  # fmt: skip
def test_another_number_than_the_record_has_is_found(words: str) -> None:
    (message,) = found_in(words)
    assert "the book counts" in message


@pytest.mark.parametrize(
    "words",
    [
        "There are ninety-six stairs to the roof.", "Four beds, and four long beds.", "Two boats sail, and then all six boats.",
        "One bed is dry, and 1 bed is wet.", "One of the four beds is dry.", "Three of the beds are dry.", "Nine red posts.",
        "Ten posts stand.",
        "Twelve seeds.", "Thirteen seeds.", "If there were five beds, what then?", "There are not five beds.", "Imagine seven beds.",
        "Draw a roof with five beds.", "Two more beds would be six.", "Two beds fewer, and three other beds.", "What would five beds need?",
        "[There are five beds]{wrong}", "The first three beds are dry.", "All but two beds are dry.", "Share them, three beds each.",
        "A child says, “There are five beds.”", "On page 5 beds are drawn.", "Step 3: beds are drawn.", "Use three beds at first.",
        "She walks 2,096 stairs.", "A bed has 4.5 beds' worth.", "3 × 4 beds", "Half of 8 beds.", "Two beds at a time.",
        "Put five beds in a row.",
        "Pairs make five beds from card.", "Another two beds are dry.", "Every three beds have a cane.", "Three beds in each row.",
    ],
)  # fmt: skip
def test_what_the_record_has_or_does_not_speak_of_is_left(words: str) -> None:
    assert found_in(words) == []


def test_nothing_is_held_to_a_record_that_counts_nothing() -> None:
    assert found_in("There are five beds.", "\n---\n") == []


def test_a_line_without_a_number_or_a_thing_is_told() -> None:
    for line in ("beds", "four beds", "4"):
        record = text_of(INDEX).replace("\n---\n", f'\ncounts: ["{line}"]\n---\n', 1)
        (problem,) = [one for one in problems_with({INDEX: record}) if one.rule == "field-mistyped"]
        assert "96 stairs" in problem.message + problem.fix
