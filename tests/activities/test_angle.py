"""Angles held against turning in small steps and against corners of shapes that are drawn."""

from __future__ import annotations

from math import atan2, cos, degrees, pi, sin

import pytest
from activities.trials import answers_of, begins_in, never_breaks, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.angle import KIND


@given(st.lists(st.integers(1, 359), min_size=1, max_size=8))
@settings(max_examples=100, deadline=None)
def test_angles_are_named_by_turning_degree_by_degree(angles: list[int]) -> None:
    def turned(size: int) -> str:
        seen = 0
        for passed in range(1, size + 1):  # turn one degree after another, and note each right angle that is passed
            seen = passed // 90 if passed % 90 else seen
        return {0: "right" if size == 90 else "acute", 1: "straight" if size == 180 else "obtuse"}.get(seen, "reflex")

    assert [one["name"] for one in answers_of(KIND, {"find": "name", "angles": angles}, 5)] == list(map(turned, angles))


@pytest.mark.parametrize("parts", [2, 3, 4, 5, 6, 8, 9, 10, 12])
def test_turns_are_those_that_make_a_whole_one(parts: int) -> None:
    turns = [f"{over}/{parts}" for over in range(1, parts + 1)]
    found = [one["degrees"] for one in answers_of(KIND, {"find": "turns", "turns": turns}, 5)]
    assert found[-1] == 360
    assert {after - before for before, after in zip([0, *found], found, strict=False)} == {found[0]}


@given(st.integers(3, 9), st.data())
@settings(max_examples=60, deadline=None)
def test_the_missing_angle_closes_a_shape_that_is_drawn(sides: int, data: st.DataObject) -> None:
    """Corners on a circle, in order; the angle at each is measured between its two sides."""
    at = sorted(data.draw(st.lists(st.integers(0, 719), min_size=sides, max_size=sides, unique=True)))
    corners = [(cos(pi * one / 360), sin(pi * one / 360)) for one in at]

    def angle(i: int) -> float:
        (px, py), (x, y), (nx, ny) = corners[i - 1], corners[i], corners[(i + 1) % sides]
        return degrees(atan2(py - y, px - x) - atan2(ny - y, nx - x)) % 360

    whole = [max(1, min(359, round(angle(i)))) for i in range(sides)]
    if 180 * (sides - 2) - sum(whole[1:]) <= 0:
        return
    [one] = answers_of(KIND, {"find": "shape", "sides": sides, "known": whole[1:]}, 6)
    assert abs(one["degrees"] - angle(0)) <= sides / 2


@given(st.sampled_from([("right angle", 90), ("straight line", 180), ("point", 360)]), st.data())
@settings(max_examples=60, deadline=None)
def test_angles_side_by_side_come_round(where: tuple[str, int], data: st.DataObject) -> None:
    on, total = where
    known = data.draw(st.lists(st.integers(1, 50), min_size=1, max_size=4).filter(lambda some: sum(some) < total))
    [one] = answers_of(KIND, {"find": "around", "place": on, "known": known}, 5)
    left = total
    for angle in known:
        left -= angle
    assert one["degrees"] == left


@pytest.mark.parametrize(
    ("data", "first"),
    [
        ({"find": "turns", "turns": ["1/4", "1/2"]}, 3),
        ({"find": "name", "angles": [40, 90]}, 3),
        ({"find": "around", "known": [35]}, 5),
        ({"find": "shape", "known": [35, 90]}, 6),
    ],
)
def test_it_fits_its_year_and_not_the_year_before(data: dict[str, object], first: int) -> None:
    begins_in(KIND, data, first)


def test_a_year_names_what_it_has_a_name_for() -> None:
    said = [solved(KIND, {"find": "name", "angles": [40]}, year).answers[0].says for year in (3, 4, 5)]
    assert said == ["Angle A is less than a right angle", "Angle A is acute", "Angle A is acute"]
    assert "°" not in str(solved(KIND, {"find": "name", "angles": [40]}, 4).task.lines[0])


@pytest.mark.parametrize(
    "data",
    [{"find": "name", "angles": [40]}, {"find": "turns", "turns": ["1/2"]}, {"find": "around", "known": [40], "equal": 2},
     {"find": "shape", "known": [40, 60], "sides": 3}],
)  # fmt: skip
def test_bad_input_is_refused_in_plain_words(data: dict[str, object]) -> None:
    for bad in spoilt(data, list(data)[1:]):
        never_breaks(KIND, bad, 6)


def test_what_cannot_be_is_refused() -> None:
    refused(KIND, {"find": "shape", "sides": 4, "known": [80, 95]}, 6, "activity-cannot-be")
    refused(KIND, {"find": "around", "known": [120, 80]}, 5, "activity-cannot-be")
    refused(KIND, {"find": "turns", "turns": ["1/8"]}, 3, "activity-cannot-be")
