"""Routes walked again with complex numbers, and shortest routes found again by trying every way to go."""

from __future__ import annotations

from itertools import product
from math import comb
from typing import Any

import pytest
from activities.trials import answers_of, first_version, fits, never_breaks, read, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.kind import Unsolvable
from storymaths.activities.position import KIND

WAYS = {"up": 1j, "right": 1, "down": -1j, "left": -1}
TURNS = {
    "quarter turn right": -1j, "quarter turn left": 1j, "half turn": -1, "three-quarter turn clockwise": 1j,
    "three-quarter turn anti-clockwise": -1j, "turn right": -1j, "left": 1j, "whole turn left": 1, "quarter turn clockwise": -1j,
    "quarter turn anti-clockwise": 1j, "quarter turn anticlockwise": 1j, "turn 90° clockwise": -1j, "turn 180°": -1,
    "turn 270° anti-clockwise": -1j, "whole turn": 1, "turn 90° anti-clockwise": 1j, "three-quarter turn right": 1j,
}  # fmt: skip


def name(place: complex) -> str:
    return f"{'ABCDEFGHIJKLMNOPQRSTUVWXYZ'[round(place.real)]}{round(place.imag) + 1}"


def walked(place: complex, way: complex, route: list[str]) -> tuple[complex, complex, list[complex]]:
    """Where one ends, which way one faces, and every square on the way. A quarter turn left is × i."""
    squares = [place]
    for step in route:
        if step in TURNS:
            way *= TURNS[step]
            continue
        word, count = step.split()
        for _ in range(int(count)):
            place += way if word == "forward" else -way
            squares.append(place)
    return place, way, squares


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert len(solution.answers) == 4
    assert fits(solution, 2)
    for answer in solution.answers:
        assert walked(0j, 1j, answer.data["route"])[0] == 3 + 2j


STEPS = st.sampled_from(sorted(TURNS)) | st.builds(
    lambda w, n: f"{w} {n}", st.sampled_from(["forward", "back"]), st.integers(1, 4)
)


@given(
    st.lists(STEPS, min_size=1, max_size=9), st.sampled_from(sorted(WAYS)), st.integers(1, 8), st.integers(1, 8),
    st.integers(0, 63), st.integers(1, 6),
)  # fmt: skip
def test_a_route_ends_where_walking_it_ends(
    route: list[str], facing: str, columns: int, high: int, at: int, year: int
) -> None:
    start = complex(at % columns, (at // 8) % high)
    end, way, squares = walked(start, WAYS[facing], route)
    data = {"grid": [columns, high], "start": name(start), "facing": facing, "route": route, "back": True}
    if not all(0 <= square.real < columns and 0 <= square.imag < high for square in squares):
        assert "leaves the grid" in refused(KIND, data, year)
        return
    first, back = answers_of(KIND, data, year)
    assert first["ends"] == name(end)
    assert WAYS[first["facing"]] == pytest.approx(way)
    assert walked(end, way, back["back"])[:2] == (start, WAYS[facing])
    assert not any(one in TURNS and other in TURNS for one, other in zip(back["back"], back["back"][1:], strict=False))


@given(
    st.integers(1, 4), st.integers(1, 4), st.integers(0, 15), st.integers(0, 15), st.sets(st.integers(0, 15), max_size=6),
    st.sampled_from(sorted(WAYS)), st.integers(0, 6),
)  # fmt: skip
def test_every_shortest_route_is_found(
    columns: int, high: int, at: int, to: int, blocks: set[int], facing: str, year: int
) -> None:
    squares = [complex(x, y) for y in range(high) for x in range(columns)]
    start, goal = squares[at % len(squares)], squares[to % len(squares)]
    blocked = {squares[b % len(squares)] for b in blocks} - {start, goal}
    if start == goal:
        return
    free = set(squares) - blocked
    expected: list[list[str]] = []
    for length in range(1, 8):  # every list of ways, from the shortest up, until some arrive
        for ways in product(WAYS.values(), repeat=length):
            places = [start]
            for way in ways:
                places.append(places[-1] + way)
                if places[-1] not in free:
                    break
            else:
                if places[-1] == goal:
                    expected.append([name(place) for place in places])
        if expected:
            break
    data = {"grid": [columns, high], "start": name(start), "goal": name(goal), "facing": facing}
    data["blocked"] = [name(square) for square in sorted(blocked, key=lambda z: (z.real, z.imag))]
    found = answers_of(KIND, data, year)
    if not expected:
        longer = reached(start, free)
        assert bool(found) is (goal in longer)
        return
    assert [answer["squares"] for answer in found] == expected
    for answer in found:
        end, _, places = walked(start, WAYS[facing], answer["route"])
        assert end == goal
        assert [name(place) for place in places] == answer["squares"]


def reached(start: complex, free: set[complex]) -> set[complex]:
    """Every square that can be got to."""
    found, rim = {start}, {start}
    while rim:
        rim = {square + way for square in rim for way in WAYS.values()} & free - found
        found |= rim
    return found


@pytest.mark.parametrize(("columns", "high"), [(2, 2), (3, 4), (5, 5), (6, 5), (1, 9)])
def test_on_an_open_grid_there_are_as_many_as_choices(columns: int, high: int) -> None:
    data = {"grid": [columns, high], "goal": f"{'ABCDEFGH'[columns - 1]}{high}"}
    assert len(answers_of(KIND, data)) == comb(columns + high - 2, high - 1)


def test_where_every_way_is_blocked_that_is_said() -> None:
    solution = solved(KIND, {"grid": [3, 3], "blocked": ["A2", "B1"], "goal": "C3"})
    assert solution.answers == ()
    assert "Every way to C3 is blocked" in solution.note


def test_left_and_right_mixed_up() -> None:
    solution = solved(KIND, {"grid": [5, 5], "start": "C3", "route": ["quarter turn right", "forward 2"]})
    assert solution.answers[0].data["ends"] == "E3"
    assert solution.likely_error is not None
    assert "ends at A3" in solution.likely_error.gives


BASE: dict[str, Any] = {"grid": [4, 4], "start": "A1", "route": ["forward 2", "right", "forward 1"]}


@pytest.mark.parametrize(
    ("change", "at"),
    [
        ({"grid": [0, 4]}, ("grid",)),
        ({"grid": [1000, 1000]}, ("grid",)),
        ({"grid": [10**9, 10**9]}, ("grid",)),
        ({"grid": [-3, 4]}, ("grid",)),
        ({"start": "Z9"}, ("start",)),
        ({"start": "11"}, ("start",)),
        ({"start": "A1", "blocked": ["A1"]}, ("start",)),
        ({"blocked": ["Q7"]}, ("blocked", 0)),
        ({"blocked": ["A2"]}, ("route", 0)),
        ({"route": ["forward 9"]}, ("route", 0)),
        ({"route": ["forward 1", "jump"]}, ("route", 1)),
        ({"route": ["forward 0"]}, ("route", 0)),
        ({"route": ["quarter turn"]}, ("route", 0)),
        ({"route": ["forward 1e400"]}, ("route", 0)),
        ({"route": ()}, ("route",)),
        ({"route": (), "goal": "A1"}, ("goal",)),
        ({"route": (), "goal": "E5"}, ("goal",)),
    ],
)
def test_what_cannot_be_is_told_where_it_stands(change: dict[str, Any], at: tuple[object, ...]) -> None:
    with pytest.raises(Unsolvable) as caught:
        KIND.solve(*read(KIND, {**BASE, **change}))
    assert caught.value.loc == at
    refused(KIND, {**BASE, **change})


def test_a_route_and_a_goal_are_two_tasks() -> None:
    assert "goal" in refused(KIND, {**BASE, "goal": "B2"})


def test_more_routes_than_can_be_listed() -> None:
    refused(KIND, {"grid": [20, 20], "goal": "T20"}, rule="activity-too-many-answers")
    refused(KIND, {"grid": [8, 8], "goal": "H8"}, rule="activity-too-many-answers")


def test_bad_values_anywhere() -> None:
    full = {**BASE, "facing": "up", "blocked": ["D4"], "back": True, "turns": "clockwise"}
    for data in spoilt(full, list(full)):
        never_breaks(KIND, data)
        never_breaks(KIND, {**data, "route": (), "goal": "D3"})
    for grid in ([26, 15], [1, 99], [20, 20]):
        assert never_breaks(KIND, {"grid": grid, "route": ["forward 3"]}) is not None
    assert never_breaks(KIND, {"grid": [26, 15], "goal": "Z1"}) is not None
    assert never_breaks(KIND, {"grid": [4, 4], "goal": "B2", "cast": {"x" * 40: {}}}) is not None


@pytest.mark.parametrize("year", range(1, 7))
def test_versions_say_turns_as_the_year_does(year: int) -> None:
    found = first_version(KIND, {**BASE, "back": True}, year)
    assert found is not None
    steps = found[3].answers[1].data["back"]
    word = "right" if year < 2 else "quarter turn" if year < 5 else "°"
    assert any(word in step for step in steps) or year < 2
    assert ("clockwise" in " ".join(steps)) is (year >= 2)
    assert found[3].answers[0].data["ends"] == "B3"
    assert first_version(KIND, KIND.example, year) is not None


@given(st.lists(st.tuples(st.sampled_from(sorted(WAYS)), st.integers(1, 3)), min_size=1, max_size=3))
@settings(max_examples=100, deadline=None)
def test_moves_without_turning_are_added_up(moves: list[tuple[str, int]]) -> None:
    """The start is far enough from every edge; the end is the sum of the moves, and the way back is as long."""
    route = [f"{squares} {way}" for way, squares in moves]
    end, back = answers_of(KIND, {"grid": [20, 20], "start": "J10", "route": route, "back": True}, 1)
    gone = sum(WAYS[way] * squares for way, squares in moves)
    x, y = int(gone.real), int(gone.imag)
    assert end["ends"] == f"{'ABCDEFGHIJKLMNOPQRSTUVWXYZ'[9 + x]}{10 + y}"
    assert end["degrees"] == 0
    home = answers_of(KIND, {"grid": [20, 20], "start": end["ends"], "route": list(back["back"])}, 1)
    assert home[0]["ends"] == "J10"
    assert "facing" not in solved(KIND, {"grid": [20, 20], "start": "J10", "route": route}, 1).task.ask
