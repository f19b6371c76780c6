"""Lists of numbers that a book says twice, or has in its data: one number off is found, all else is left."""

from __future__ import annotations

import pytest
from project import problems_with, text_of

S3 = "books/ferry-fare/session-3.md"
"""The book says five times that its coins are 10, 5, 2, 2 and 1, and an activity has them as its purse."""


def unlike(words: str) -> list[str]:
    text = text_of(S3).rstrip() + f"\n\n{words}\n"
    return [problem.message for problem in problems_with({S3: text}) if problem.rule == "list-unlike"]


@pytest.mark.parametrize(
    "words", ["Lay out 10, 5, 2, 2 and 2.", "Lay out 10, 5, 5, 2, 1 in a row.", "Say 9, 5, 2, 2, 1."]
)
def test_one_number_off_is_found(words: str) -> None:
    (message,) = unlike(words)
    assert "is 10, 5, 2, 2, 1 but for one number" in message


@pytest.mark.parametrize(
    "words",
    [
        "Lay out 10, 5, 2, 2 and 1.", "Lay out 10, 5, 2 and 1.", "Lay out 10, 5, 2, 1 and 2.", "Lay out 5, 2, 2.",
        "If it were 10, 5, 2, 2 and 2?",
        "A child says, \"10, 5, 2, 2 and 2.\"", "[10, 5, 2, 2 and 2]{wrong} is not the tin.", "Count 2, 4, 6, 8, 10.", "10, 5, 2, 2 + 1",
    ],
)  # fmt: skip
def test_the_same_and_all_others_are_left(words: str) -> None:
    assert unlike(words) == []


@pytest.mark.parametrize(
    ("words", "so"),
    [
        ("The numbers are 19, 28, 38, 46, 55 and 64.", "38, which would be 37"), ("Say 30, 25, 19, 15, 10.", "19, which would be 20"),
        ("They are 2, 4, 7, 8 and 10.", "7, which would be 6"),
    ],
)  # fmt: skip
def test_one_number_off_the_step_of_a_count_is_found(words: str, so: str) -> None:
    (message,) = unlike(words)
    assert so in message


@pytest.mark.parametrize(
    "words",
    [
        "They are 1, 2, 3, 4, 6 and 12.", "They are 19, 28, 37, 46, 55.", "The steps are 1, 2, 4, 8 and 16.", "They are 2, 4, 7, 8.",

        "Which is wrong, 2, 4, 7, 8, 10?", "They are 5, 5, 6, 5, 5.", "They are 1, 2, 2, 3 and 4.",
        "The steps 111, 112, 113, 114, 115 and 117.",
        "If they were 2, 4, 7, 8 and 10.", "They are 7, 2, 9, 4 and 11.",
    ],
)  # fmt: skip
def test_lists_that_are_no_counts_are_left(words: str) -> None:
    assert unlike(words) == []
