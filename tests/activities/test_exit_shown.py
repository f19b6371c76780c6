"""A question to end on whose answer the children have worked out before is told to the author."""

from __future__ import annotations

import pytest
from project import activities_on, collection_with, text_of
from storymaths.activities.exit_shown import check_exits

PAGE = "books/ferry-fare/session-3.md"
ANSWER = "6 pence is 5 + 1."


@pytest.mark.parametrize(
    ("answer", "told"),
    [
        ("12 = 10 + 2.", ["10 + 2 = 12"]),
        ("10 + 2 = 12, and so two are missing.", ["10 + 2 = 12"]),
        ("10 + 3 = 13. A child who writes 10 + 2 = 12 has counted the first coin.", []),
        ("13, for ten and three.", []),
    ],
)
def test_a_sum_of_the_sheet_is_no_answer_to_the_last_question(answer: str, told: list[str]) -> None:
    text = text_of(PAGE)
    assert ANSWER in text
    whole = collection_with({PAGE: text.replace(ANSWER, answer)})
    pages = {page.path: activities_on(page) for page in whole.documents}
    problems = [one for one in check_exits(whole, pages) if one.place.path.endswith(PAGE)]
    assert [one.message.split(" is ")[1].split(",")[0] for one in problems] == told
    assert all(one.rule == "exit-answer-shown" for one in problems)
