"""Coordinates held against the drawing itself and against moving square by square."""

from __future__ import annotations

from itertools import pairwise
from math import hypot, isclose

import pytest
from activities.trials import answers_of, begins_in, drawn, never_breaks, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.coordinates import KIND
from storymaths.activities.kind import Unsolvable

POINT = st.tuples(st.integers(-10, 10), st.integers(-10, 10))
POINTS = st.lists(POINT, min_size=1, max_size=6).map(lambda some: dict(zip("ABCDEF", map(list, some), strict=False)))


@given(POINTS)
@settings(max_examples=100, deadline=None)
def test_points_are_read_off_the_drawing_by_counting_lines(points: dict[str, list[int]]) -> None:
    solution = solved(KIND, {"find": "read", "points": points}, 6)
    root = drawn(solution.task.figures[0])
    lines = [one for one in root.iter() if one.tag == "line" and "fig-faint" in one.get("class", "")]
    upright = sorted({float(one.get("x1", "")) for one in lines if one.get("x1") == one.get("x2")})
    level = sorted({float(one.get("y1", "")) for one in lines if one.get("y1") == one.get("y2")}, reverse=True)
    axes = [one for one in root.iter() if one.tag == "line" and one.get("class") == "fig-line"]
    nought = (
        next(float(one.get("x1", "")) for one in axes if one.get("x1") == one.get("x2")),
        next(float(one.get("y1", "")) for one in axes if one.get("y1") == one.get("y2")),
    )
    marks = [(float(one.get("cx", "")), float(one.get("cy", ""))) for one in root.iter() if one.tag == "circle"]

    def counted(places: list[float], mark: float, start: float) -> int:
        nearest = [min(range(len(places)), key=lambda i, to=to: abs(places[i] - to)) for to in (mark, start)]  # type: ignore[misc]
        return nearest[0] - nearest[1]

    seen = [[counted(upright, x, nought[0]), counted(level, y, nought[1])] for x, y in marks]
    assert seen == [list(answer.data["at"]) for answer in solution.answers] == list(points.values())


@given(POINTS, POINT.filter(any))
@settings(max_examples=100, deadline=None)
def test_a_translation_goes_square_by_square_and_back(points: dict[str, list[int]], by: tuple[int, int]) -> None:
    found = answers_of(KIND, {"find": "translate", "points": points, "by": list(by)}, 6)
    for old, one in zip(points.values(), found, strict=True):
        x, y = old
        for _ in range(abs(by[0])):
            x += 1 if by[0] > 0 else -1
        for _ in range(abs(by[1])):
            y += 1 if by[1] > 0 else -1
        assert list(one["at"]) == [x, y]
    start, end = next(iter(points.values())), list(found[0]["at"])
    assert answers_of(KIND, {"find": "translation", "points": {"A": start, "B": end}}, 6) == [
        {"right": by[0], "up": by[1]}
    ]


@given(POINTS, st.sampled_from("xy"))
@settings(max_examples=60, deadline=None)
def test_a_reflection_is_as_far_behind_the_axis(points: dict[str, list[int]], axis: str) -> None:
    for old, one in zip(
        points.values(), answers_of(KIND, {"find": "reflect", "points": points, "axis": axis}, 6), strict=True
    ):
        new, over = list(one["at"]), 1 if axis == "x" else 0
        assert new[1 - over] == old[1 - over]
        assert new[over] + old[over] == 0


@given(st.tuples(POINT, POINT, POINT), st.sampled_from(["square", "rectangle", "parallelogram"]))
def test_the_fourth_corner_closes_the_shape(three: tuple[tuple[int, int], ...], shape: str) -> None:
    """Opposite sides are equally long by Pythagoras, and the diagonals too where the corners are right angles."""
    data = {"find": "corner", "points": dict(zip("ABC", map(list, three), strict=True)), "shape": shape}
    try:
        [one] = answers_of(KIND, data, 6)
    except Unsolvable:
        return
    corners = [*three, tuple(one["at"])]
    sides = [hypot(bx - ax, by - ay) for (ax, ay), (bx, by) in pairwise([*corners, corners[0]])]
    assert isclose(sides[0], sides[2])
    assert isclose(sides[1], sides[3])
    if shape != "parallelogram":
        (ax, ay), (bx, by), (cx, cy), (dx, dy) = corners
        assert isclose(hypot(cx - ax, cy - ay), hypot(dx - bx, dy - by))
    if shape == "square":
        assert isclose(sides[0], sides[1])


@pytest.mark.parametrize(
    ("data", "first"),
    [
        ({"find": "read", "points": {"A": [2, 3]}}, 4),
        ({"find": "translate", "points": {"A": [2, 3]}, "by": [1, 1]}, 4),
        ({"find": "corner", "points": {"A": [1, 1], "B": [5, 1], "C": [5, 3]}}, 4),
    ],
)
def test_it_fits_its_year_and_not_the_year_before(data: dict[str, object], first: int) -> None:
    begins_in(KIND, data, first)


def test_below_nought_is_year_6s() -> None:
    data = {"find": "read", "points": {"A": [-2, 3]}}
    assert solved(KIND, data, 6)
    refused(KIND, data, 5, "activity-beyond-year")


def test_what_cannot_be_is_refused() -> None:
    refused(KIND, {"find": "translation", "points": {"A": [2, 3]}}, 4, "activity-cannot-be")
    refused(KIND, {"find": "translate", "points": {"A": [15, 3]}, "by": [15, 0]}, 6, "activity-cannot-be")
    refused(KIND, {"find": "corner", "points": {"A": [1, 1], "B": [5, 1], "C": [9, 1]}, "shape": "parallelogram"}, 6)
    for bad in spoilt(
        {"find": "translate", "points": {"A": [2, 3]}, "by": [1, 1], "joined": True}, ["points", "by", "joined"]
    ):
        never_breaks(KIND, bad, 6)
