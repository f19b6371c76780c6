"""Statements judged again by going through every case with plain loops."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product

import pytest
from activities.trials import first_version, fits, never_breaks, read, refused, solved, spoilt
from hypothesis import given
from hypothesis import strategies as st
from storymaths.activities.always_sometimes_never import KIND
from storymaths.activities.kind import Unsolvable

PIECES: dict[str, Callable[[int, int], bool]] = {
    "odd(a)": lambda a, b: a % 2 == 1,
    "even(b)": lambda a, b: b % 2 == 0,
    "a > b": lambda a, b: a > b,
    "a + b > 9": lambda a, b: a + b > 9,
    "odd(a + b)": lambda a, b: (a + b) % 2 == 1,
    "multiple(a × b, 4)": lambda a, b: a * b % 4 == 0,
    "factor(a, b)": lambda a, b: a != 0 and b % a == 0,
    "a + b = b + a": lambda a, b: True,
    "difference(a, b) < a": lambda a, b: max(a - b, b - a) < a,
    "prime(a + 2)": lambda a, b: a + 2 > 1 and all((a + 2) % f for f in range(2, a + 2)),
    "square(a)": lambda a, b: a in {n * n for n in range(20)},
    "not odd(b)": lambda a, b: b % 2 != 1,
    "digit_sum(b) = 5": lambda a, b: sum(int(d) for d in str(b)) == 5,
}
YEARS = range(0, 7)


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert solution.answers[0].data["verdict"] == "always"
    assert solution.answers[0].says.startswith("Always true, in all 25 cases")
    assert fits(solution, 2)


@given(
    st.none() | st.sampled_from(sorted(PIECES)), st.sampled_from(sorted(PIECES)),
    st.integers(0, 6), st.integers(0, 9), st.integers(0, 6), st.integers(0, 9), st.integers(1, 6),
)  # fmt: skip
def test_every_case_is_tried(
    say: str | None, then: str, low: int, more: int, low_b: int, more_b: int, year: int
) -> None:
    letters = {"a": (low, low + more), "b": (low_b, low_b + more_b)}
    over = {name: f"{first} to {last}" for name, (first, last) in letters.items()}
    cases = list(product(*(range(first, last + 1) for first, last in letters.values())))
    spoken = [case for case in cases if say is None or PIECES[say](*case)]
    text = f"{say or ''} {then}"
    data = {"then": then, "over": over, **({"say": say} if say else {})}
    if not spoken:
        refused(KIND, data, year)
        return
    (answer,) = solved(KIND, data, year).answers
    # A letter that a statement leaves out is not gone through.
    keep = [0] * ("a" in text_letters(text)) + [1] * ("b" in text_letters(text))
    true = {tuple(case[i] for i in keep) for case in spoken if PIECES[then](*case)}
    false = {tuple(case[i] for i in keep) for case in spoken if not PIECES[then](*case)}
    assert answer.data["verdict"] == ("always" if not false else "sometimes" if true else "never")
    assert (answer.data["true"], answer.data["false"]) == (len(true), len(false))
    shown = [tuple(case.values()) for case in answer.data["examples"]]
    against = [tuple(case.values()) for case in answer.data["counter_examples"]]
    assert shown == sorted(true)[:12]
    assert against == sorted(false)[:12]


def text_letters(text: str) -> set[str]:
    """The letters that stand alone in a text."""
    return {word for word in "".join(c if c.isalnum() or c == "_" else " " for c in text).split() if word in ("a", "b")}


def test_what_turning_it_round_would_give() -> None:
    data = {"say": "multiple(a, 10)", "then": "multiple(a, 5)", "over": "1 to 40"}
    solution = solved(KIND, data)
    assert solution.answers[0].data["verdict"] == "always"
    assert solution.likely_error is not None
    assert "a = 5" in solution.likely_error.gives
    assert "All 4 cases that fit the “if”" in solution.note


def test_cases_the_statement_does_not_speak_of_mislead() -> None:
    solution = solved(KIND, {"say": "odd(a)", "then": "even(a)", "over": "1 to 4"})
    assert solution.answers[0].data["verdict"] == "never"
    assert solution.likely_error is not None
    assert "Sometimes true" in solution.likely_error.gives
    assert "a = 2" in solution.likely_error.gives


@pytest.mark.parametrize(
    ("data", "at"),
    [
        ({"then": "a > 1", "over": "20 to 1"}, ("over",)),
        ({"then": "a > 1", "over": "1 to 99999999"}, ("over",)),
        ({"then": "a > 1", "over": "1 to 10000000"}, ("over",)),
        ({"then": "a > 1", "over": "lots"}, ("over",)),
        ({"then": "a + b + c > 1", "over": "1 to 200"}, ("over",)),
        ({"then": "a + b + c + d + e > 1", "over": "1 to 2"}, ("then",)),
        ({"then": "2 > 1"}, ("then",)),
        ({"then": "a > "}, ("then",)),
        ({"say": "odd(", "then": "a > 1"}, ("say",)),
        ({"say": "a > 50", "then": "a > 1"}, ("say",)),
        ({"then": "6 ÷ (a − 1) > 1", "over": "1 to 3"}, ("then",)),
        ({"then": "a × a × a × a > 1", "over": "1 to 100"}, ("then",)),
        ({"then": "b > 1", "over": {"a": "1 to 3"}}, ("then",)),
        ({"then": "a > 1", "over": {"a": "3 to 1"}}, ("over", "a")),
    ],
)
def test_what_cannot_be_is_told_where_it_stands(data: dict[str, object], at: tuple[str, ...]) -> None:
    with pytest.raises(Unsolvable) as caught:
        KIND.solve(*read(KIND, data))
    assert caught.value.loc == at
    refused(KIND, data)


def test_bad_values_anywhere() -> None:
    good = {
        "say": "odd(a)",
        "then": "even(a + b)",
        "over": {"a": "1 to 4", "b": [1, 2]},
        "statement": "So it is.",
        "because": "Why",
    }
    for data in spoilt(good, list(good)):
        never_breaks(KIND, data)


def test_as_many_cases_as_are_allowed_take_less_than_a_second() -> None:
    never_breaks(
        KIND, {"say": "odd(a) or even(b)", "then": "prime(a + b) or multiple(a × b, 7)", "over": "1 to 140"}, 5
    )
    never_breaks(KIND, {"then": "prime(a)", "over": "9980001 to 9999999"}, 5)


@pytest.mark.parametrize("year", YEARS)
def test_versions_keep_the_verdict_and_fit_their_year(year: int) -> None:
    for then, say in (("even(a + b)", "odd(a) and odd(b)"), ("a + b > 5", None), ("odd(a)", "odd(a + 1)")):
        data = {"then": then, "over": "1 to 12", **({"say": say} if say else {})}
        verdict = solved(KIND, data).answers[0].data["verdict"]
        found = first_version(KIND, data, year)
        if year:  # = and + are new in Year 1
            assert found is not None
            assert found[3].answers[0].data["verdict"] == verdict
    assert first_version(KIND, KIND.example, 1) is not None
    assert first_version(KIND, KIND.example, 3) is not None


def test_numbers_may_be_few_and_below_nought() -> None:
    (answer,) = solved(KIND, {"then": "a × a > a", "over": [-2, -1, 0, 1, 2]}, 6).answers
    assert answer.data["examples"] == [{"a": -2}, {"a": -1}, {"a": 2}]


def test_cases_are_counted_as_far_as_the_year_counts() -> None:
    data = {"then": "a + b = b + a", "over": "1 to 20"}
    young, older = (solved(KIND, data, year) for year in (2, 3))
    assert "in every case" in young.answers[0].says
    assert "in all 400 cases" in older.answers[0].says
    assert "400" in young.note
