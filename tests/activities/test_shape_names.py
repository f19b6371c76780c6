"""Shapes named whichever way up: the drawing measured, turned and not, against each other and against the name."""

from __future__ import annotations

import re
from itertools import pairwise
from math import atan2, degrees, dist

import pytest
from activities.trials import answers_of, drawn, never_breaks, refused, solved, spoilt
from storymaths.activities.shape import KIND
from storymaths.activities.shape.set import FLATS, SOLIDS
from storymaths.model.activity import Figure

# Euclid, Elements I, definitions 19 to 22, and the usual names for five to eight sides.
SIDES = {
    "triangle": 3, "square": 4, "rectangle": 4, "rhombus": 4, "parallelogram": 4, "kite": 4, "trapezium": 4,
    "pentagon": 5, "hexagon": 6, "heptagon": 7, "octagon": 8,
}  # fmt: skip
STRAIGHT = [name for name in FLATS if name.rpartition(" ")[2] in SIDES]


def outlines(figure: Figure) -> list[list[tuple[float, float]]]:
    """The corners of each shape drawn with straight sides."""
    courses = [one.get("d", "") for one in drawn(figure).iter() if one.tag == "path"]
    numbers = [list(map(float, re.findall(r"-?[\d.]+", course))) for course in courses]
    return [list(zip(some[::2], some[1::2], strict=True)) for some in numbers]


def test_plain_names_are_those_of_the_sides_that_are_drawn() -> None:
    data = {"shapes": STRAIGHT, "name": "plain", "turned": True}
    names = [answer["shape"] for answer in answers_of(KIND, data, 4)]
    assert names == [name.rpartition(" ")[2] for name in STRAIGHT]
    shapes = outlines(solved(KIND, data, 4).task.figures[0])
    assert [len(corners) for corners in shapes] == [SIDES[name] for name in names]


def test_what_is_turned_is_the_same_shape_and_stands_as_no_book_draws_it() -> None:
    """Common practice, no source: a shape is known when it is known turned."""
    usual, turned = (
        outlines(solved(KIND, {"shapes": STRAIGHT, "name": "full", "turned": way}, 4).task.figures[0])
        for way in (False, True)
    )
    for name, one, other in zip(STRAIGHT, usual, turned, strict=True):
        lengths = [[dist(a, b) for a, b in pairwise([*shape, shape[0]])] for shape in (one, other)]
        scale = sum(lengths[1]) / sum(lengths[0])
        assert lengths[1] == pytest.approx([length * scale for length in lengths[0]], abs=0.1), name
        # The same way round, so it is turned and not flipped.
        assert (area(one) > 0) is (area(other) > 0), name
        slants = [degrees(atan2(b[1] - a[1], b[0] - a[0])) % 90 for a, b in pairwise([*other, other[0]])]
        if "right" in name or name in ("square", "rectangle", "L-shaped hexagon"):
            assert min(min(slant, 90 - slant) for slant in slants) > 5, name


def area(corners: list[tuple[float, float]]) -> float:
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise([*corners, corners[0]]))


def test_neither_drawing_nor_words_give_the_name_away() -> None:
    for names in (["oval", "semicircle", "circle", "square"], ["cone", "cube", "square-based pyramid"]):
        solution = solved(KIND, {"shapes": names, "name": "plain", "turned": True}, 2)
        seen = " ".join([*drawn(solution.task.figures[0]).itertext(), solution.task.figures[0].alt, solution.task.ask])
        assert not [name for name in (*FLATS, *SOLIDS) if re.search(rf"\b{name}\b", seen)]
        assert [answer.value.shape for answer in solution.answers] == [name.rpartition(" ")[2] for name in names]


def test_square_turned_is_no_diamond() -> None:
    data = {"shapes": ["triangle", "square"], "name": "plain"}
    slip = solved(KIND, {**data, "turned": True}, 1).likely_error
    assert slip is not None
    assert slip.gives == "“Diamond” for B."
    assert solved(KIND, data, 1).likely_error is None


def test_solids_lie_and_other_tasks_turn_too() -> None:
    turned = solved(KIND, {"shapes": ["cone", "cube"], "by": ["curved"], "turned": True}, 2)
    turns = [one.get("transform") for one in drawn(turned.task.figures[0]).iter() if one.tag == "g"]
    assert [str(one).partition(" ")[0] for one in turns] == ["rotate(90", "rotate(270"]
    for asked in ({"count": ["sides"]}, {"clues": ["sides > 3"]}):
        usual, other = (
            outlines(solved(KIND, {"shapes": ["square", "kite"], "turned": way, **asked}, 2).task.figures[0])
            for way in (False, True)
        )
        assert usual != other


def test_bad_input_never_breaks_it() -> None:
    data = {"shapes": ["triangle", "square"], "name": "plain", "turned": True}
    for bad in spoilt(data, list(data)):
        never_breaks(KIND, bad, 2)
    refused(KIND, {**data, "shapes": None}, 2, "activity-cannot-be")
    refused(KIND, {**data, "shapes": ["cube", "square"]}, 2, "activity-cannot-be")
