"""Calculations chosen, held against the story's calculation as a function of its numbers, and against fact families."""

from __future__ import annotations

from fractions import Fraction

import pytest
from activities.trials import answers_of, begins_in, never_breaks, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.number_sentence import KIND

STORY = "Gull has fish. How many?"
DO = {
    "+": lambda a, b: a + b,
    "−": lambda a, b: a - b,
    "×": lambda a, b: a * b,
    "÷": lambda a, b: Fraction(a) / b if b else None,
}
PAIRS = st.tuples(st.sampled_from("ab"), st.sampled_from("+−×÷"), st.sampled_from("ab"))


def worth(one: tuple[str, str, str], a: int, b: int) -> Fraction | None:
    left, sign, right = one
    return DO[sign]({"a": a, "b": b}[left], {"a": a, "b": b}[right])


def are_one(makes: tuple[str, str, str], other: tuple[str, str, str], a: int, b: int) -> bool:
    """Whether they come to the same whatever stands for one of the numbers of the story."""
    others = range(50, 60)
    by_a = "a" in makes and all(worth(makes, n, b) == worth(other, n, b) for n in others)
    by_b = "b" in makes and all(worth(makes, a, n) == worth(other, a, n) for n in others)
    return by_a or by_b


@given(PAIRS, st.lists(PAIRS, min_size=2, max_size=8, unique=True), st.integers(2, 20), st.integers(2, 20))
@settings(max_examples=150, deadline=None)
def test_right_is_what_is_the_same_whatever_the_numbers(
    makes: tuple[str, str, str], choices: list[tuple[str, str, str]], a: int, b: int
) -> None:
    if a == b:
        return
    of = {"a": a, "b": b}
    texts = {one: f"{of[one[0]]} {one[1]} {of[one[2]]}" for one in (makes, *choices)}
    data = {"story": STORY, "makes": texts[makes], "choices": [texts[one] for one in choices]}
    alike = [one for one in choices if worth(one, a, b) == worth(makes, a, b)]
    right = [one for one in alike if are_one(makes, one, a, b)]
    if len(right) < len(alike) or len(right) == len(choices):
        refused(KIND, data, 6, "activity-cannot-be")
        return
    assert [one["choice"] for one in answers_of(KIND, data, 6)] == [texts[one] for one in right]


@given(st.integers(2, 60), st.integers(2, 12), st.sampled_from("+−×÷"))
@settings(max_examples=80, deadline=None)
def test_what_checks_is_of_the_same_family(a: int, b: int, sign: str) -> None:
    if sign == "÷":
        a *= b
    c = DO[sign](a, b)
    if c < 1 or len({a, b, c}) < 3:
        return
    numbers = sorted({a, b, int(c)})
    every = [(x, one, y) for x in numbers for y in numbers for one in "+−×÷" if x != y]
    # Of the three numbers, two make the third; the result is among the two, and not both that it was made of.
    family = {(x, one, y) for x, one, y in every if DO[one](x, y) in set(numbers) - {x, y} and c in (x, y)}
    for some in (every[:8], every[8:16], every[16:24]):
        data = {"checks": f"{a} {sign} {b} = {c}", "choices": [f"{x} {one} {y}" for x, one, y in some]}
        found = [tuple(one["choice"].split()) for one in answers_of(KIND, data, 6)]
        assert found == [(str(x), one, str(y)) for x, one, y in some if (x, one, y) in family]


def test_groups_may_be_added_and_brackets_matter() -> None:
    nests = {"story": "There are 4 nests with 3 eggs in each. How many eggs are there?", "makes": "4 × 3"}
    found = answers_of(KIND, {**nests, "choices": ["3 + 3 + 3 + 3", "4 + 3", "3 × 4"]}, 3)
    assert [one["choice"] for one in found] == ["3 + 3 + 3 + 3", "3 × 4"]
    two_steps = {"story": "4 friends pay £3 each and £5 for the boat. What do they pay?", "makes": "4 × 3 + 5"}
    found = answers_of(KIND, {**two_steps, "choices": ["4 × (3 + 5)", "5 + 3 × 4", "4 + 3 + 5"]}, 6)
    assert [one["choice"] for one in found] == ["5 + 3 × 4"]
    slip = solved(KIND, {**two_steps, "choices": ["4 × (3 + 5)", "5 + 3 × 4"]}, 6).likely_error
    assert slip is not None
    assert slip.gives == "4 × (3 + 5) comes to 32."


@pytest.mark.parametrize(
    ("data", "first"),
    [
        ({"story": STORY, "makes": "12 − 4", "choices": ["12 − 4", "12 + 4", "4 − 12"]}, 1),
        ({"story": STORY, "makes": "12 + 9", "choices": ["12 − 9", "12 + 9"]}, 2),
        ({"checks": "10 ÷ 2 = 5", "choices": ["2 × 5", "10 × 5"]}, 2),
        ({"checks": "12 ÷ 4 = 3", "choices": ["3 × 4", "12 × 4"]}, 3),
        # A wrong choice is read and not worked out.
        ({"story": STORY, "makes": "80 − 30", "choices": ["80 − 30", "80 + 30"]}, 2),
    ],
)
def test_it_fits_its_year_and_not_the_year_before(data: dict[str, object], first: int) -> None:
    begins_in(KIND, data, first)


def test_what_cannot_be_is_refused_in_plain_words() -> None:
    told = {"story": STORY, "makes": "12 − 4", "choices": ["12 − 4", "12 + 4"]}
    for bad in (
        {**told, "checks": "12 − 4 = 8"}, {**told, "story": None}, {**told, "makes": None},
        {**told, "makes": "twelve"}, {"choices": ["12 − 4", "12 + 4"]},
    ):  # fmt: skip
        refused(KIND, bad, 2, "activity-broken")
    for bad in (
        {**told, "makes": "12"}, {**told, "choices": ["12 − 4", "12 - 4", "12 + 4"]}, {**told, "choices": ["12 − 4", "8"]},
        {"checks": "12 − 4 = 9", "choices": ["8 + 4", "8 − 4"]}, {"checks": "12 − 4", "choices": ["8 + 4", "8 − 4"]},
        {"checks": "12 − 4 − 3 = 5", "choices": ["8 + 4", "8 − 4"]},
    ):  # fmt: skip
        refused(KIND, bad, 2, "activity-cannot-be")
    for bad in spoilt({**told, "checks": None}, ["choices", "story", "makes", "checks"]):
        never_breaks(KIND, bad, 2)
    none = solved(KIND, {**told, "choices": ["12 + 4", "4 − 12"]}, 2)
    assert not none.answers
    assert none.note
