"""Shapes counted again from their corners, solids from their meshes, claims from shapes made for the purpose."""

from __future__ import annotations

from dataclasses import replace
from itertools import combinations, pairwise, product
from math import atan2, cos, degrees, hypot, isclose, pi, sin
from random import Random
from typing import Any

import pytest
from activities.contexts import the_reference
from activities.trials import answers_of, first_version, fits, never_breaks, read, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import ValidationError
from storymaths.activities.kind import Unsolvable
from storymaths.activities.shape import KIND
from storymaths.activities.shape.claims import right_angles_can_be, solids_that_can_be
from storymaths.activities.shape.set import FLATS, SOLIDS, count_of
from storymaths.model.year import Met
from storymaths.render.figures.flat_outlines import OUTLINES
from storymaths.render.figures.solid_meshes import MESHES

Point = tuple[float, float]
STRAIGHT = [name for name, shape in FLATS.items() if not shape.curved]
FLAT_FACED = [name for name, solid in SOLIDS.items() if not solid.curved]


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [dict(answer.data) for answer in solution.answers] == [
        {"shape": "cube", "faces": 6, "edges": 12, "vertices": 8},
        {"shape": "triangular prism", "faces": 5, "edges": 9, "vertices": 6},
        {"shape": "square-based pyramid", "faces": 5, "edges": 8, "vertices": 5},
    ]
    assert fits(solution, 2)


def inside_angles(corners: tuple[Point, ...]) -> list[float]:
    """The angle inside at each corner, in degrees; corners run anti-clockwise."""
    angles = []
    for i, (x, y) in enumerate(corners):
        (bx, by), (ax, ay) = corners[i - 1], corners[(i + 1) % len(corners)]
        turn = degrees(atan2(by - y, bx - x) - atan2(ay - y, ax - x))
        angles.append(turn % 360)
    return angles


def lines_of_symmetry(corners: tuple[Point, ...]) -> int:
    """Mirror lines through the middle of the corners that lay the shape on itself, tried at every half degree's worth."""
    count = len(corners)
    mx, my = sum(x for x, _ in corners) / count, sum(y for _, y in corners) / count
    points = [(x - mx, y - my) for x, y in corners]
    # A mirror line goes through a corner or the middle of a side.
    middles = [((x + px) / 2, (y + py) / 2) for (x, y), (px, py) in zip(points, points[1:] + points[:1], strict=True)]
    lines = {round(atan2(y, x) % pi, 6) % round(pi, 6) for x, y in points + middles if hypot(x, y) > 1e-9}
    found = 0
    for line in lines:
        flipped = [(x * cos(2 * line) + y * sin(2 * line), x * sin(2 * line) - y * cos(2 * line)) for x, y in points]
        there = all(any(hypot(fx - x, fy - y) < 1e-3 for x, y in points) for fx, fy in flipped)
        # Corners must land on corners in their order, so that sides land on sides.
        places = [
            min(range(count), key=lambda i, f=f: hypot(f[0] - points[i][0], f[1] - points[i][1])) for f in flipped
        ]
        steps = {(other - one) % count for one, other in zip(places, places[1:] + places[:1], strict=True)}
        found += there and steps == {count - 1}
    return found


@pytest.mark.parametrize("name", STRAIGHT)
def test_flat_shapes_are_counted_on_their_own_corners(name: str) -> None:
    corners, shape = OUTLINES[name], FLATS[name]
    assert shape.sides == shape.corners == len(corners)
    angles = inside_angles(corners)
    assert isclose(sum(angles), 180 * (len(corners) - 2), abs_tol=1e-6)
    assert shape.right_angles == sum(isclose(angle, 90, abs_tol=1e-6) for angle in angles)
    assert shape.symmetry == lines_of_symmetry(corners)
    assert shape.acute == sum(angle < 89.9 for angle in angles)
    assert shape.obtuse == sum(90.1 < angle < 179.9 for angle in angles)
    sides = list(pairwise([*corners, corners[0]]))
    turned = [
        abs(atan2(dy - cy, dx - cx) - atan2(by - ay, bx - ax)) % pi
        for ((ax, ay), (bx, by)), ((cx, cy), (dx, dy)) in combinations(sides, 2)
    ]
    assert shape.parallel == any(min(turn, pi - turn) < 0.01 for turn in turned)
    assert shape.perpendicular == any(abs(turn - pi / 2) < 0.01 for turn in turned)


@pytest.mark.parametrize(
    ("rule", "first"), [("parallel", 3), ("perpendicular", 3), ("acute = 2", 4), ("obtuse > 0", 4)]
)
def test_a_word_for_sides_or_angles_is_met_in_its_year_and_not_before(rule: str, first: int) -> None:
    data = {"shapes": "flat", "by": [rule]}
    assert solved(KIND, data, first)
    refused(KIND, data, first - 1, "activity-beyond-year")


def test_parallel_and_perpendicular_sides_are_sorted_by() -> None:
    [placing] = answers_of(
        KIND, {"shapes": ["square", "rhombus", "kite", "right-angled triangle"], "by": ["parallel", "perpendicular"]}, 3
    )
    assert placing["regions"] == {
        "both": ["square"], "first": ["rhombus"], "second": ["right-angled triangle"], "neither": ["kite"],
    }  # fmt: skip


@pytest.mark.parametrize("name", FLAT_FACED)
def test_solids_are_counted_on_their_own_meshes_and_keep_eulers_rule(name: str) -> None:
    mesh = MESHES[name]()
    faces, edges, vertices = (count_of(SOLIDS[name], prop) or 0 for prop in ("faces", "edges", "vertices"))
    assert (faces, edges, vertices) == (len(mesh.faces), len(mesh.edges()), len(mesh.corners))
    assert vertices - edges + faces == 2
    assert sum(len(face) for face in mesh.faces) == 2 * edges  # each edge joins two faces


def test_every_shape_of_the_set_can_be_drawn_and_counted() -> None:
    assert set(OUTLINES) == set(STRAIGHT)
    assert set(MESHES) == set(FLAT_FACED)
    solved(KIND, {"shapes": "solid", "by": ["curved"]})
    solved(KIND, {"shapes": "flat", "by": ["sides > 3", "curved"], "diagram": "carroll"})
    answers = answers_of(KIND, {"shapes": STRAIGHT[:12], "count": ["sides", "corners", "symmetry", "right_angles"]})
    assert [answer["shape"] for answer in answers] == STRAIGHT[:12]


@given(
    st.lists(st.sampled_from(STRAIGHT), min_size=1, max_size=12, unique=True),
    st.lists(st.tuples(st.sampled_from(["sides", "corners", "symmetry", "right_angles"]), st.sampled_from("<=>"), st.integers(0, 8)),
             min_size=1, max_size=3, unique=True),
    st.integers(1, 6),
)  # fmt: skip
def test_clues_leave_just_those_that_fit(names: list[str], clues: list[tuple[str, str, int]], year: int) -> None:
    def holds(name: str, clue: tuple[str, str, int]) -> bool:
        prop, sign, number = clue
        value = getattr(FLATS[name], prop)
        return bool(value < number if sign == "<" else value > number if sign == ">" else value == number)

    expected = [{"shape": name} for name in names if all(holds(name, clue) for clue in clues)]
    data = {"shapes": names, "clues": [f"{prop} {sign} {number}" for prop, sign, number in clues]}
    assert answers_of(KIND, data, year) == expected
    (placed,) = answers_of(KIND, {"shapes": names, "by": data["clues"][:1]}, year)
    assert placed["regions"]["in"] == [name for name in names if holds(name, clues[0])]


@pytest.mark.parametrize("sides", range(3, 13))
def test_right_angles_by_trying_angles_of_fifteen_degrees(sides: int) -> None:
    """Every list of angles in steps of 15° with the right total: which numbers of right angles occur."""
    steps = [angle for angle in range(15, 360, 15) if angle != 180]
    reachable: dict[tuple[int, int], bool] = {(0, 0): True}
    for _ in range(sides):
        reachable = {(total + angle, right + (angle == 90)): True for total, right in reachable for angle in steps}
    for right in range(sides + 3):
        assert right_angles_can_be(sides, right) is ((180 * (sides - 2), right) in reachable), (sides, right)


@pytest.mark.parametrize(
    ("sides", "right"), [(n, r) for n in range(3, 8) for r in range(n + 1) if right_angles_can_be(n, r)]
)
def test_shapes_with_so_many_right_angles_can_be_built(sides: int, right: int) -> None:
    """Sides are laid off at chance lengths until they close up without crossing."""
    random = Random(sides * 10 + right)
    for _ in range(200_000):
        angles = [90.0] * right
        rest = 180 * (sides - 2) - 90 * right
        cuts = sorted(random.random() for _ in range(sides - right - 1)) if sides > right else []
        angles += [rest * (b - a) for a, b in zip([0.0, *cuts], [*cuts, 1.0], strict=True)] if sides > right else []
        random.shuffle(angles)
        if all(5 < angle < 355 and (angle == 90 or abs(angle - 180) > 5) for angle in angles) and closes(
            angles, random
        ):
            return
    raise AssertionError((sides, right))


def closes(angles: list[float], random: Random) -> bool:
    """Whether sides of chance lengths with these angles close up, the last two fitted, and do not cross."""
    ways, way = [], 0.0
    for angle in angles:
        ways.append((cos(way), sin(way)))
        way += pi - angle * pi / 180
    lengths = [random.uniform(0.3, 2) for _ in angles[:-2]]
    x = -sum(length * c for length, (c, _) in zip(lengths, ways, strict=False))
    y = -sum(length * s for length, (_, s) in zip(lengths, ways, strict=False))
    (c1, s1), (c2, s2) = ways[-2:]
    area = c1 * s2 - s1 * c2
    if abs(area) < 1e-6:
        return False
    lengths += [(x * s2 - y * c2) / area, (c1 * y - s1 * x) / area]
    if min(lengths) < 0.05:
        return False
    corners = [(0.0, 0.0)]
    for length, (c, s) in zip(lengths, ways, strict=True):
        corners.append((corners[-1][0] + length * c, corners[-1][1] + length * s))
    sides = list(pairwise(corners))
    return not any(cross(*one, *other) for i, one in enumerate(sides) for other in sides[i + 2 : len(sides) - (i == 0)])


def cross(a: Point, b: Point, c: Point, d: Point) -> bool:
    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    return side(a, b, c) * side(a, b, d) <= 0 and side(c, d, a) * side(c, d, b) <= 0


def test_solids_are_those_that_cutting_and_capping_make() -> None:
    """From pyramids, cut a corner where three edges meet, or cap a face of three edges: all counts there are."""
    made, rim = set(), {(n + 1, 2 * n, n + 1) for n in range(3, 30)}
    while rim:
        made |= rim
        grown = set()
        for faces, edges, vertices in rim:
            # A pyramid has both a corner of three edges and a three-edged face, and so has what either step makes.
            grown |= {(faces + 1, edges + 3, vertices + 2), (faces + 2, edges + 3, vertices + 1)}
        rim = {solid for solid in grown - made if max(solid[0], solid[2]) <= 30}
    expected = {
        (f, v + f - 2, v)
        for f, v in product(range(31), repeat=2)
        if any(True for _ in solids_that_can_be({"faces": f, "vertices": v}))
    }
    assert {solid for solid in made if max(solid[0], solid[2]) <= 30} == expected


@given(st.fixed_dictionaries({}, optional={name: st.integers(0, 14) for name in ("faces", "edges", "vertices")}))
@settings(max_examples=200, deadline=None)
def test_claims_about_solids(claim: dict[str, int]) -> None:
    if not claim:
        return
    can = any(
        v - e + f == 2 and 2 * e >= 3 * f and 2 * e >= 3 * v and f >= 4 and v >= 4
        for f in ([claim["faces"]] if "faces" in claim else range(4, 60))
        for v in ([claim["vertices"]] if "vertices" in claim else range(4, 60))
        for e in ([claim["edges"]] if "edges" in claim else [f + v - 2])
    )
    (answer,) = answers_of(KIND, {"claims": [claim]}, 4)
    assert answer["can"] is can
    named = [n for n in FLAT_FACED if all(count_of(SOLIDS[n], prop) == count for prop, count in claim.items())]
    assert answer["shapes"] == named


@pytest.mark.parametrize(
    ("claim", "can"),
    [
        ({"sides": 3, "right_angles": 2}, False),
        ({"sides": 4, "right_angles": 3}, False),
        ({"sides": 4, "right_angles": 4}, True),
        ({"sides": 6, "right_angles": 5}, True),
        ({"sides": 5, "right_angles": 4}, False),
        ({"sides": 2}, False),
        ({"sides": 4, "corners": 5}, False),
        ({"sides": 5, "symmetry": 2}, False),
        ({"sides": 6, "symmetry": 3}, True),
        ({"sides": 9, "symmetry": 9}, True),
        ({"right_angles": 30}, True),
        ({"symmetry": 7}, True),
        ({"corners": 0}, False),
    ],
)
def test_claims_about_flat_shapes(claim: dict[str, int], can: bool) -> None:
    for year in (2, 6):
        (answer,) = answers_of(KIND, {"claims": [claim]}, year)
        assert answer["can"] is can


@pytest.mark.parametrize("sides", range(3, 10))
def test_lines_of_symmetry_share_the_sides_evenly(sides: int) -> None:
    """A star round a middle with any of the numbers of lines the rule allows, and the allowed ones only."""
    for lines in range(1, sides + 1):
        (answer,) = answers_of(KIND, {"claims": [{"sides": sides, "symmetry": lines}]}, 4)
        assert answer["can"] is any(lines_of_symmetry(star) == lines for star in stars(sides) if len(star) == sides), (
            sides,
            lines,
        )


def stars(sides: int) -> list[tuple[Point, ...]]:
    """Shapes about a middle whose corners are as far out as a repeated mirror-like pattern says."""
    found = []
    for spread in {tuple(1 + (i * j % sides in chosen) * 0.3 for i in range(sides))
                   for j in (1,) for size in range(0, 5) for chosen in combinations(range(sides), size)}:  # fmt: skip
        found.append(tuple((r * cos(2 * pi * i / sides), r * sin(2 * pi * i / sides)) for i, r in enumerate(spread)))
    return found


@given(
    st.integers(1, 6).flatmap(lambda n: st.lists(st.text("x.", min_size=n, max_size=n), min_size=1, max_size=6)),
    st.sampled_from(["right", "left", "top", "bottom"]),
)
@settings(max_examples=200, deadline=None)
def test_a_completed_figure_is_symmetrical_and_keeps_its_half(half: list[str], edge: str) -> None:
    if not any("x" in row for row in half):
        refused(KIND, {"half": half, "mirror": edge})
        return
    (answer,) = answers_of(KIND, {"half": half, "mirror": edge})
    rows, wide, high = answer["rows"], len(half[0]), len(half)
    for r, row in enumerate(rows):
        for c, mark in enumerate(row):
            partner = rows[r][len(row) - 1 - c] if edge in ("right", "left") else rows[len(rows) - 1 - r][c]
            assert mark == partner
    right, down = (wide if edge == "left" else 0), (high if edge == "top" else 0)
    assert [row[right : right + wide] for row in rows[down : down + high]] == half
    assert answer["squares"] == 2 * "".join(half).count("x")


BASE: dict[str, Any] = {"shapes": ["square", "kite"], "count": ["sides"]}


@pytest.mark.parametrize(
    ("change", "at"),
    [
        ({"shapes": ["sqare"]}, ("shapes", 0)),
        ({"shapes": ["square", "cube"]}, ("shapes",)),
        ({"shapes": ["square", "square"]}, ("shapes",)),
        ({"shapes": None}, ("shapes",)),
        ({"count": ["faces"]}, ("count", 0)),
        ({"count": ()}, ("count",)),
        ({"shapes": ["cone"], "count": ["faces"]}, ("count",)),
        ({"shapes": ["circle"], "count": ["symmetry"]}, ("count",)),
        ({"shapes": None, "cast": {"gull": {"parcel": 3}}, "fact": "parcel"}, ("fact",)),
        ({"shapes": None, "cast": {"gull": {"parcel": "blob"}}, "fact": "parcel"}, ("fact",)),
    ],
)
def test_what_cannot_be_is_told_where_it_stands(change: dict[str, Any], at: tuple[object, ...]) -> None:
    is_told_at({**BASE, **change}, at)


@pytest.mark.parametrize(
    ("data", "at"),
    [
        ({"shapes": ["square"], "by": ["faces > 3"]}, ("by", 0)),
        ({"shapes": ["circle"], "by": ["symmetry > 3"]}, ("by", 0)),
        ({"shapes": ["square"], "by": ["sides > 3"], "diagram": "venn"}, ("diagram",)),
        ({"shapes": ["square"], "clues": ["sides >"]}, ("clues", 0)),
        ({"shapes": ["square"], "clues": ["sides > 3", "sides > 3"]}, ("clues",)),
        ({"claims": [{}]}, ("claims", 0)),
        ({"claims": [{"sides": 3}, {"sides": 3, "faces": 4}]}, ("claims", 1)),
        ({"claims": [{"sides": 7, "symmetry": 1, "right_angles": 3}]}, ("claims", 0)),
        ({"shapes": ["cube"], "count": ["edges", "edges"]}, ("count", 1)),
        ({"half": ["x.", "x"]}, ("half", 1)),
        ({"half": ["xo"]}, ("half", 0)),
        ({"half": ["x" * 30] * 30}, ("half",)),
    ],
)
def test_what_cannot_be_is_told_in_every_task(data: dict[str, Any], at: tuple[object, ...]) -> None:
    is_told_at(data, at)


def is_told_at(data: dict[str, Any], at: tuple[object, ...]) -> None:
    with pytest.raises(Unsolvable) as caught:
        KIND.solve(*read(KIND, data))
    assert caught.value.loc == at
    refused(KIND, data)


@pytest.mark.parametrize(
    ("data", "stray"),
    [
        ({**BASE, "by": ["sides > 3"]}, "by"),
        ({**BASE, "diagram": "hoop"}, "diagram"),
        ({"shapes": ["square"], "claims": [{"sides": 4}]}, "shapes"),
        ({"fact": "parcel", "half": ["x"]}, "fact"),
        ({"half": ["x"], "make": ["x"]}, "make"),
    ],
)
def test_a_field_of_another_task_is_refused(data: dict[str, Any], stray: str) -> None:
    with pytest.raises(ValidationError) as caught:
        read(KIND, data)
    assert [(error["loc"], error["type"]) for error in caught.value.errors()] == [((stray,), "extra_forbidden")]


def test_bad_values_anywhere() -> None:
    shapes = {"shapes": ["square", "kite"]}
    tasks: tuple[dict[str, Any], ...] = (
        {**shapes, "count": ["sides"]}, {**shapes, "by": ["sides > 3"], "diagram": "hoop"},
        {**shapes, "clues": ["sides = 4"]}, {"claims": [{"sides": 4}]}, {"half": ["x.", ".x"], "mirror": "top"},
    )  # fmt: skip
    for data in tasks:
        for bad in spoilt(data, list(data)):
            never_breaks(KIND, bad)
    for number in (0, 1, 100, 101, -1, 10**9, True, "4"):
        for prop in ("sides", "corners", "symmetry", "right_angles", "faces", "edges", "vertices"):
            never_breaks(KIND, {"claims": [{prop: number}]})
            never_breaks(KIND, {"claims": [{prop: number, "faces": 100, "vertices": 100}]})


@pytest.mark.parametrize("year", range(1, 7))
def test_versions_fit_their_year(year: int) -> None:
    flat = first_version(KIND, {"shapes": ["square", "kite"], "count": ["corners", "symmetry"]}, year)
    assert flat is not None
    assert ("symmetry" in flat[3].answers[0].data) is (year >= 2)
    assert (first_version(KIND, KIND.example, year) is not None) is (year >= 2)  # "face" is a word of Year 2


def test_a_country_that_folds_and_adds_angles_early_needs_other_data_alone() -> None:
    """A made-up Year 1 that has a word for lines of symmetry, adds up angles, and does not yet write +."""
    first = the_reference().years[1]
    shape = first.practice.shape.model_copy(update={"counts": ("symmetry",), "angle_sums": True})
    practice = first.practice.model_copy(update={"shape": shape})
    year = first.model_copy(update={"symbols_new": ()}).with_what_came_before(Met(), practice)
    fields, context = read(KIND, {"shapes": ["square"], "count": ["corners", "symmetry"]})
    assert [changed for _, _, changed in KIND.versions(fields, context, year)] == [
        "Only lines of symmetry are counted.",
        "The same shapes.",
    ]
    here = replace(context, year=year)
    claims, _ = read(KIND, {"claims": [{"sides": 3, "right_angles": 2}]})
    assert KIND.solve(claims, here).answers[0].worked.startswith("The angles come to 180 × 1 = 180 degrees")
    half, _ = read(KIND, {"half": ["x"]})
    solution = KIND.solve(half, here)
    assert solution.answers[0].worked == "Every shaded square has one just as far from the line, on the other side."
    assert not solution.demands.operations


def test_all_of_a_sort_are_those_on_which_it_is_counted() -> None:
    [placing] = answers_of(KIND, {"shapes": "solid", "by": ["faces = 6"]})
    placed = [name for region in placing["regions"].values() for name in region]
    assert sorted(placed) == sorted(FLAT_FACED)
    [round_ones] = answers_of(KIND, {"shapes": "solid", "by": ["curved"]})
    assert {"sphere", "cylinder"} <= set(round_ones["regions"]["in"])
    counted = answers_of(KIND, {"shapes": "flat", "count": ["symmetry"]})
    assert "circle" not in [one["shape"] for one in counted]
    assert "square" in [one["shape"] for one in counted]


def test_a_shape_that_is_named_and_cannot_be_counted_is_refused() -> None:
    assert "cylinder" in refused(KIND, {"shapes": ["cube", "cylinder"], "by": ["faces = 6"]})


def test_the_slip_in_a_claim_is_one_that_a_shape_bears_out() -> None:
    assert solved(KIND, {"claims": [{"edges": 7}]}).likely_error is None
    assert solved(KIND, {"claims": [{"faces": 6, "edges": 7}]}).likely_error is not None


def test_a_shape_is_called_what_its_author_calls_it() -> None:
    ring = {
        "shapes": ["square", "triangle", "circle"],
        "by": [{"rule": "sides = 3", "says": "triangle", "otherwise": "no triangle"}],
        "diagram": "hoop",
    }
    solution = solved(KIND, ring)
    told = f"{solution.answers[0].says} {solution.answers[0].worked}"
    assert "triangle" in told
    assert "equilateral" not in told
    assert "A triangle has 3 straight sides." in told
