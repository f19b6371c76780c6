"""How far children count on aloud, which is further than they read and compare.

Early learning goals (Department for Education, 2021): beyond 20. Year 1 programme of study (2013): to and across 100.
"""

from __future__ import annotations

import pytest
from project import problems_with, reference, text_of
from storymaths.activities.work_out import work_out

PAGE = "books/ferry-fare/session-1.md"


def rules_broken(concepts: str, said: str) -> set[str]:
    text = text_of(PAGE).replace("concepts: [time]", f"concepts: [{concepts}]", 1) + f"\nCount together: {said}.\n"
    return {problem.rule for problem in problems_with({PAGE: text})}


@pytest.mark.parametrize("said", ["98, 99, 100, 101, 102", "a hundred and nineteen, a hundred and twenty"])
def test_a_lesson_on_counting_goes_past_a_hundred_in_year_1(said: str) -> None:
    assert rules_broken("time, counting", said) == set()


def test_other_lessons_do_not_and_no_lesson_goes_further() -> None:
    assert rules_broken("time", "99, 100, 101") == {"number-beyond-year"}
    assert rules_broken("time, counting", "120, 121, 122") == {"number-beyond-year"}


def of_a_row(terms: str) -> list[str]:
    text = f"kind: sequence\ntitle: Count on\nterms: [{terms}]\n"
    return [problem.rule for problem in work_out(text, "page.md", 1, None, 1, reference()).problems]


@pytest.mark.parametrize("terms", ["98, 99, ___, 101", "103, ___, 101, 100", "90, 95, 100, ___, 110"])
def test_a_row_that_is_counted_may_cross_a_hundred_in_year_1(terms: str) -> None:
    assert of_a_row(terms) == []


@pytest.mark.parametrize("terms", ["93, 97, ___, 105", "119, 120, ___, 122"])
def test_a_row_in_other_steps_or_too_far_may_not(terms: str) -> None:
    assert of_a_row(terms) == ["activity-beyond-year"]
