"""Unknowns held against Python's own arithmetic, tried on every choice of numbers."""

from __future__ import annotations

from itertools import product

import pytest
from activities.trials import answers_of, begins_in, never_breaks, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.unknowns import KIND

SMALL = st.integers(1, 9)
LINES = st.builds(
    lambda a, x, sign, b, y, total: (a, x, sign, b, y, total),
    SMALL, st.sampled_from("tc"), st.sampled_from("+−"), SMALL, st.sampled_from("tc"), st.integers(0, 40),
)  # fmt: skip


@given(
    st.lists(LINES, min_size=1, max_size=3),
    st.sampled_from(["{a}{x} {sign} {b}{y} = {n}", "{n} = {a} × {x} {sign} {b} × {y}"]),
)
@settings(max_examples=150, deadline=None)
def test_every_way_is_one_that_python_finds(lines: list[tuple[int, str, str, int, str, int]], form: str) -> None:
    names = sorted({name for _, x, _, _, y, _ in lines for name in (x, y)})
    written = [form.format(a=a, x=x, sign=sign, b=b, y=y, n=n) for a, x, sign, b, y, n in lines]
    expected = []
    for numbers in product(range(13), repeat=len(names)):
        at = dict(zip(names, numbers, strict=True))
        if all(a * at[x] + (b if sign == "+" else -b) * at[y] == n for a, x, sign, b, y, n in lines):
            expected.append(at)
    assert answers_of(KIND, {"lines": written, "unknowns": names, "gaps": "0-12"}, 6) == expected


@given(SMALL, SMALL, st.integers(1, 30))
def test_steps_of_a_problem_follow_one_another(boxes: int, each: int, gone: int) -> None:
    data = {"lines": [f"all = {boxes} × {each}", f"left = all − {gone}"], "unknowns": ["all", "left"], "gaps": "0-100"}
    whole = sum([each] * boxes)
    assert answers_of(KIND, data, 4) == ([{"all": whole, "left": whole - gone}] if gone <= whole else [])


@pytest.mark.parametrize(
    ("data", "first"),
    [
        ({"lines": ["3t = 96", "2t + 2c = 100"], "unknowns": ["t", "c"]}, 6),
        ({"lines": ["star + star = 8", "star + moon = 9"], "unknowns": ["star", "moon"], "gaps": "0-10"}, 1),
        ({"lines": ["all = 4 × 6", "left = all − 5"], "unknowns": ["all", "left"]}, 3),
    ],
)
def test_it_fits_its_year_and_not_the_year_before(data: dict[str, object], first: int) -> None:
    begins_in(KIND, data, first)


def test_hidden_lines_are_found_by_pupils() -> None:
    data = {"lines": ["all = 4 × 6", "left = all − 5"], "unknowns": ["all", "left"], "wanted": ["left"], "hidden": True}
    solution = solved(KIND, {**data, "ask": "Four nests have 6 eggs each. Then 5 hatch."}, 4)
    assert [str(line) for line in solution.task.lines] == ["left = ___"]
    assert solution.likely_error is not None
    assert solution.likely_error.gives == "24."
    refused(KIND, data, 4, "activity-cannot-be")


def test_bad_input_is_refused_in_plain_words() -> None:
    data = {"lines": ["a + b = 7"], "unknowns": ["a", "b"], "gaps": "0-10", "wanted": ["a"], "hidden": False}
    for bad in spoilt(data, list(data)):
        never_breaks(KIND, bad, 6)
    refused(KIND, {**data, "lines": ["a + b = 7", "? + ? = ?"]}, 6, rule="activity-broken")
    refused(KIND, {**data, "lines": ["a + b + c = 7"], "unknowns": ["a", "b", "c"], "gaps": "0-100"}, 6)
