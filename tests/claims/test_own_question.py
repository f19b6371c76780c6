"""Questions that come to a number, and answers that have it or not. What each comes to is plain arithmetic."""

from __future__ import annotations

import pytest
from storymaths.claims.own_question import missed_answers


@pytest.mark.parametrize(
    ("ask", "answer", "right"),
    [
        ("The next bridge needs 52 planks, and there are 37. How many more?", "14 more, for 37 + 14 = 51.", "15"),
        ("Ten lanterns are shared equally between five boats. How many are on each boat?", "Three on each.", "2"),
        ("Plank 73. Which flags is it between? What is ten more?", "70 and 80. Ten more is 84.", "83"),
        ("What is ten less than 73?", "62", "63"),
        ("What is double 6?", "It is 13.", "12"),
        ("What is half of 9?", "It is 4.", "4.5"),
        ("What is 6 + 7?", "14", "13"),
        ("Write the sign that belongs between 6 and 4.", "5 ≠ 4.", "6"),
        ("The short hand is halfway from the 3 to the 4. What time is it?", "Half past 4.", "half past 3"),
    ],
)
def test_an_answer_without_what_the_question_comes_to(ask: str, answer: str, right: str) -> None:
    (missed,) = missed_answers(ask, answer)
    assert missed.right == right


@pytest.mark.parametrize(
    ("ask", "answer"),
    [
        (
            "The next bridge needs 52 planks, and there are 37. How many more?",
            "15 more. A child who says 25 has not got it.",
        ),
        ("There are 4 boats with 5 lanterns, and 3 sail. How many more are there?", "One."),
        ("How many more rectangles than triangles are there?", "3 more."),
        ("Ten lanterns are shared equally between four boats. What is left?", "2 are left."),
        ("What is ten more?", "It depends."),
        ("What is double 6?", "A dozen."),
        ("Look between 6 and 4 o'clock. Which sign do you see?", "5."),
        ("The short hand is halfway from the 3 to the 4.", "The long hand points at the 6."),
    ],
)
def test_what_answers_it_or_cannot_be_told_is_left(ask: str, answer: str) -> None:
    assert list(missed_answers(ask, answer)) == []
