"""The days a page gives of its own history."""

from __future__ import annotations

import datetime
from typing import Any

import pytest
from project import problems_with, text_of
from pydantic import ValidationError
from storymaths.model.dates import Dated

PAGE = "books/cliff-house-lift/session-1.md"


@pytest.mark.parametrize("written", ["2027-01-11", datetime.date(2027, 1, 11)])
def test_a_day_is_year_month_day(written: Any) -> None:
    assert Dated.model_validate({"published": written}).published == datetime.date(2027, 1, 11)


@pytest.mark.parametrize(
    "written",
    [
        0,
        20270111,
        True,
        "11/01/2027",
        "2027-02-30",
        "2027-1-11",
        "٢٠٢٧-01-11",
        datetime.datetime(2027, 1, 11, 9),
        None,
        [],
    ],
)
def test_nothing_else_is_a_day(written: Any) -> None:
    if written is None:
        assert Dated.model_validate({"published": None}).updated is None
        return
    with pytest.raises(ValidationError, match="a date is written year-month-day"):
        Dated.model_validate({"published": written})


def test_the_newest_change_is_when_it_was_updated() -> None:
    page = Dated.model_validate({"published": "2026-09-07"})
    assert page.updated == datetime.date(2026, 9, 7)
    changes = [{"date": "2026-11-09", "what": "One."}, {"date": "2026-12-01", "what": "Two."}]
    assert Dated.model_validate({"published": "2026-09-07", "changed": changes}).updated == datetime.date(2026, 12, 1)


@pytest.mark.parametrize(
    ("front", "says"),
    [
        ("changed: [{date: 2026-12-01, what: One more question.}]", "not when it was published"),
        ("published: 2026-09-07\nchanged: [{date: 2026-12-01, what: A.}, {date: 2026-11-01, what: B.}]", "the change above it"),
        ("published: 7 September", "a date is written year-month-day, such as 2027-01-11"),
    ],
)  # fmt: skip
def test_a_history_that_cannot_be_is_told(front: str, says: str) -> None:
    problems = problems_with({PAGE: text_of(PAGE).replace("published: 2026-09-07", front, 1)})
    assert any(says in problem.message for problem in problems)


def test_a_change_may_name_the_mistake_it_put_right() -> None:
    front = 'published: 2026-09-07\nchanged: [{date: 2026-12-01, what: "It said 9 = 5 + 3, and now says 9 = 5 + 4."}]'
    assert problems_with({PAGE: text_of(PAGE).replace("published: 2026-09-07", front, 1)}) == []
