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
