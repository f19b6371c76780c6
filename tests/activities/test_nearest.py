"""The nearest choice held against walking away from the number on both sides."""

from __future__ import annotations

from fractions import Fraction

import pytest
from activities.trials import answers_of, begins_in, never_breaks, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.nearest import KIND

SUMS = st.tuples(st.integers(0, 40), st.sampled_from("+−×"), st.integers(0, 40))


@given(st.lists(SUMS, min_size=2, max_size=8), st.integers(0, 100))
@settings(max_examples=150, deadline=None)
def test_the_nearest_is_met_first_when_walking_away(sums: list[tuple[int, str, int]], to: int) -> None:
    worth = [{"+": a + b, "−": a - b, "×": a * b}[sign] for a, sign, b in sums]
    data = {"to": to, "choices": [f"{a} {sign} {b}" for a, sign, b in sums]}
    far = next(steps for steps in range(2000) if {to - steps, to + steps} & set(worth))
    met = [place for place, number in enumerate(worth) if number in (to - far, to + far)]
    if len(met) == len(sums):
        refused(KIND, data, 6, "activity-cannot-be")
        return
    found = answers_of(KIND, data, 6)
    assert [one["choice"] for one in found] == [data["choices"][place] for place in met]
    assert {one["away"] for one in found} == {far}


def test_parts_of_numbers_are_compared_exactly() -> None:
    [found] = answers_of(KIND, {"to": "1/2", "choices": ["0.4", "0.7", "1/4"]}, 4)
    assert found["choice"] == "0.4"
    assert Fraction(found["away"]) == Fraction(1, 10)


@pytest.mark.parametrize(
    ("data", "first"),
    [({"to": 10, "choices": ["8", "14"]}, 1), ({"to": 40, "choices": ["18 + 21", "50 − 12"]}, 2),
     ({"to": 30, "choices": ["4 × 8", "3 × 9"]}, 3)],
)  # fmt: skip
def test_it_fits_its_year_and_not_the_year_before(data: dict[str, object], first: int) -> None:
    begins_in(KIND, data, first)


def test_bad_input_is_refused_in_plain_words() -> None:
    for bad in spoilt({"to": 10, "choices": ["8", "14"]}, ["to", "choices"]):
        never_breaks(KIND, bad, 3)
    refused(KIND, {"to": 10, "choices": ["8", "seven"]}, 3, "activity-broken")
    assert solved(KIND, {"to": 40, "choices": ["18 + 19", "41"]}, 2).likely_error is not None
