"""Units chosen, held against amounts counted in the smallest unit; perimeters, against counting edges and against the drawing."""

from __future__ import annotations

import re
from itertools import pairwise
from math import dist

import pytest
from activities.test_measure import IN_SMALLEST, smallest
from activities.trials import answers_of, begins_in, drawn, first_version, never_breaks, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.measure import KIND

UNITS = [unit for units in IN_SMALLEST.values() for unit in units if unit != "l"]


@given(st.lists(st.tuples(st.integers(1, 90), st.sampled_from(UNITS)), min_size=1, max_size=6), st.data())
@settings(max_examples=60, deadline=None)
def test_the_unit_chosen_makes_the_amount_and_no_other_does(some: list[tuple[int, str]], data: st.DataObject) -> None:
    more = data.draw(st.lists(st.sampled_from(UNITS), max_size=4))
    offered = list(dict.fromkeys([unit for _, unit in some] + more))[:8]
    if len(offered) < 2:
        return
    things = {f"thing {n}": f"{number} {unit}" for n, (number, unit) in enumerate(some)}
    found = answers_of(KIND, {"find": "unit", "things": things, "units": offered}, 5)
    for answer, (number, unit) in zip(found, some, strict=True):
        kind = next(units for units in IN_SMALLEST.values() if unit in units)
        amount = smallest(number, unit)
        assert [one for one in offered if one in kind and smallest(answer["number"], one) == amount] == [answer["unit"]]


def test_a_hidden_number_has_one_unit_that_anybody_would_choose() -> None:
    hidden = {"find": "unit", "number": "hidden", "units": ["mm", "cm", "m"]}
    [found] = answers_of(KIND, {**hidden, "things": {"height of a house": "9 m"}, "units": ["mm", "m", "km"]}, 4)
    assert found["unit"] == "m"
    assert "9" not in str(solved(KIND, {**hidden, "things": {"pencil": "15 cm"}}, 3).task.lines)
    for told in ("8 cm", "2 m", "1/2 m"):  # 80 mm; 200 cm is too many, 2,000 mm too, so 2 m alone stands
        data = {**hidden, "things": {"thing": told}}
        if told == "2 m":
            assert answers_of(KIND, data, 3)[0]["unit"] == "m"
        else:
            refused(KIND, data, 3, "activity-cannot-be")


@st.composite
def squared(draw: st.DrawFn) -> list[str]:
    """A shape grown square by square on five by five, as rows."""
    shape = {(2, 2)}
    for _ in range(draw(st.integers(0, 11))):
        beside = {(x + a, y + b) for x, y in shape for a, b in ((1, 0), (-1, 0), (0, 1), (0, -1))} - shape
        shape.add(draw(st.sampled_from(sorted(one for one in beside if min(one) >= 0 and max(one) < 5))))
    return ["".join("x" if (x, y) in shape else "." for x in range(5)) for y in range(5)]


@given(squared(), st.integers(1, 12))
@settings(max_examples=100, deadline=None)
def test_the_perimeter_on_squares_is_every_edge_that_no_two_squares_share(rows: list[str], side: int) -> None:
    shape = [(x, y) for y, row in enumerate(rows) for x, mark in enumerate(row) if mark == "x"]
    edges = (
        4 * len(shape) - 2 * sum((x + 1, y) in shape for x, y in shape) - 2 * sum((x, y + 1) in shape for x, y in shape)
    )
    solution = never_breaks(KIND, {"find": "perimeter", "squares": rows, "side": f"{side} cm"}, 5)
    if solution is None:  # with a hole, walked from the outside: some empty square does not lead out
        assert not _all_lead_out(rows)
        return
    assert [answer.data for answer in solution.answers] == [{"perimeter": edges * side, "unit": "cm"}]


def _all_lead_out(rows: list[str]) -> bool:
    wide = ["." * 7, *(f".{row}." for row in rows), "." * 7]
    reached, left = set[tuple[int, int]](), [(0, 0)]
    while left:
        x, y = left.pop()
        if 0 <= x < 7 and 0 <= y < 7 and wide[y][x] == "." and (x, y) not in reached:
            reached.add((x, y))
            left += [(x + 1, y), (x - 1, y), (x, y + 1), (x, y - 1)]
    return len(reached) == sum(row.count(".") for row in wide)


@given(st.lists(st.tuples(st.integers(1, 60), st.sampled_from(["mm", "cm", "m"])), min_size=3, max_size=8))
@settings(max_examples=60, deadline=None)
def test_the_sides_are_counted_in_the_smallest_unit_and_drawn_as_long_as_they_are(some: list[tuple[int, str]]) -> None:
    lengths = [smallest(*one) for one in some]
    data = {"find": "perimeter", "sides": [f"{number} {unit}" for number, unit in some]}
    if 2 * max(lengths) >= sum(lengths):
        refused(KIND, data, 5, "activity-cannot-be")
        return
    solution = solved(KIND, data, 5)
    [answer] = [one.data for one in solution.answers]
    assert smallest(1, str(answer["unit"])) * int(str(answer["perimeter"])) == sum(lengths)
    if min(lengths) * 20 >= max(lengths):  # what is shorter is drawn to less than the hundredth that is written
        shown = _sides_of(solution.task.figures[0])
        for length, seen in zip(lengths, shown, strict=True):
            assert seen / sum(shown) == pytest.approx(length / sum(lengths), abs=0.002)


def _sides_of(figure: object) -> list[float]:
    course = next(one.get("d", "") for one in drawn(figure).iter() if one.tag == "path")  # type: ignore[arg-type]
    numbers = list(map(float, re.findall(r"-?[\d.]+", course)))
    corners = list(zip(numbers[::2], numbers[1::2], strict=True))
    return [dist(one, other) for one, other in pairwise([*corners, corners[0]])]


def test_two_lengths_are_a_rectangle_and_equal_sides_need_one() -> None:
    [found] = answers_of(KIND, {"find": "perimeter", "sides": ["4 cm", "6 cm"]}, 3)
    assert found == {"perimeter": 20, "unit": "cm"}
    across, down, *_ = _sides_of(solved(KIND, {"find": "perimeter", "sides": ["4 cm", "6 cm"]}, 3).task.figures[0])
    assert across / down == pytest.approx(1.5, abs=0.01)
    assert answers_of(KIND, {"find": "perimeter", "sides": ["5 cm"], "equal": 6}, 3)[0]["perimeter"] == 30
    # The site's word bank says so: a square with sides of 2 cm has a perimeter of 8 cm.
    assert answers_of(KIND, {"find": "perimeter", "sides": ["2 cm"], "equal": 4}, 3)[0]["perimeter"] == 8


@pytest.mark.parametrize(
    ("data", "first"),
    [
        ({"find": "unit", "things": {"pencil": "15 cm"}, "units": ["cm", "m"]}, 2),
        ({"find": "unit", "things": {"ant": "4 mm"}, "units": ["mm", "m"]}, 3),
        ({"find": "unit", "things": {"walk": "4 km"}, "units": ["m", "km"]}, 4),
        ({"find": "perimeter", "sides": ["6 cm", "4 cm"]}, 3),
        ({"find": "perimeter", "squares": ["xx", "x."]}, 3),
        ({"find": "perimeter", "sides": ["7 km", "4 km"]}, 4),
    ],
)
def test_it_fits_its_year_and_not_the_year_before(data: dict[str, object], first: int) -> None:
    begins_in(KIND, data, first)


def test_a_younger_year_has_only_the_units_it_knows() -> None:
    data = {"find": "unit", "things": {"ant": "4 mm", "pencil": "15 cm"}, "units": ["mm", "cm", "m"]}
    version = first_version(KIND, data, 2, 3)
    assert version is not None
    assert [answer.data["thing"] for answer in version[3].answers] == ["pencil"]
    assert "mm" not in version[3].task.ask
    assert first_version(KIND, data, 1, 3) is None


def test_bad_input_never_breaks_it() -> None:
    choosing = {"find": "unit", "things": {"pencil": "15 cm"}, "units": ["cm", "m"]}
    round_it = {"find": "perimeter", "sides": ["6 cm", "4 cm"], "equal": None, "squares": [], "side": None}
    for data in (choosing, round_it):
        for bad in spoilt(data, list(data)):
            never_breaks(KIND, bad, 3)
