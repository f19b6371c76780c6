"""Shapes made of pieces, found again by trying every placement, and counted against published numbers of tilings."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import product
from typing import Any

import pytest
from activities.trials import answers_of, drawn, first_version, never_breaks, read, refused, solved, spoilt
from hypothesis import example, given, settings
from hypothesis import strategies as st
from storymaths.activities.kind import Unsolvable
from storymaths.activities.shape import KIND
from storymaths.activities.shape.covering import TooMany, every_way
from storymaths.activities.shape.pieces import PIECES, pieces_of
from storymaths.activities.shape.quarters import shape_of

Shape = frozenset[complex]
CORNERS: dict[str, Sequence[complex]] = {
    "square": (0, 1, 1 + 1j, 1j),
    "triangle": (0, 1, 1j),
    "rectangle": (0, 2, 2 + 1j, 1j),
    "long rectangle": (0, 3, 3 + 1j, 1j),
    "large square": (0, 2, 2 + 2j, 2j),
    "wide triangle": (0, 2, 1 + 1j),
    "large triangle": (0, 2, 2j),
    "parallelogram": (0, 1, 2 + 1j, 1 + 1j),
    "trapezium": (0, 2, 1 + 1j, 1j),
    "L-shape": (0, 2, 2 + 1j, 1 + 1j, 1 + 2j, 2j),
}
"""The pieces by their corners, up the page as in a drawing of axes."""
MARKS = {"x": (0, 1, 1 + 1j, 1j), "◣": (0, 1, 1j), "◢": (0, 1, 1 + 1j), "◤": (0, 1 + 1j, 1j), "◥": (1, 1 + 1j, 1j)}


def inside(point: complex, corners: Sequence[complex]) -> bool:
    """Whether a point lies within corners: how often a line to the right of it crosses the sides."""
    crossed = False
    for one, other in zip(corners, [*corners[1:], corners[0]], strict=True):
        if (one.imag > point.imag) != (other.imag > point.imag):
            along = (point.imag - one.imag) / (other.imag - one.imag)
            crossed ^= point.real < one.real + along * (other.real - one.real)
    return crossed


def samples(corners: Sequence[complex]) -> Shape:
    """Four points of each square that tell every half square apart, those that lie within."""
    steps = [0.5 + 0.25j, 0.75 + 0.5j, 0.5 + 0.75j, 0.25 + 0.5j]
    squares = [complex(x, y) for x, y in product(range(3), repeat=2)]
    return frozenset(square + step for square in squares for step in steps if inside(square + step, corners))


def settled(points: Shape) -> Shape:
    """Moved by whole squares into the corner of the axes."""
    left, foot = (int(min(part) // 1) for part in zip(*((p.real, p.imag) for p in points), strict=True))
    return frozenset(point - complex(left, foot) for point in points)


def turns(points: Shape) -> list[Shape]:
    """The eight turned and flipped forms: a quarter turn is a multiplication by i, a flip a conjugation."""
    return [settled(frozenset(1j**n * p for p in form)) for form in (points, {p.conjugate() for p in points})
            for n in range(4)]  # fmt: skip


def target(rows: Sequence[str]) -> Shape:
    points = [
        complex(c, len(rows) - 1 - r) + p
        for r, row in enumerate(rows)
        for c, mark in enumerate(row)
        if mark != "."
        for p in samples(MARKS[mark])
    ]
    return settled(frozenset(points))


def by_every_placement(rows: Sequence[str], pieces: dict[str, int], all_used: bool) -> int:
    """How many different ways: whatever covers the lowest point left bare, again and again; turned and flipped once."""
    shape = target(rows)
    lying = [(sort, on) for sort, name in enumerate(pieces) for on in set(placements(shape, name))]
    over = {point: [(sort, on) for sort, on in lying if point in on] for point in shape}

    def coverings(bare: Shape, left: tuple[int, ...]) -> Iterator[frozenset[tuple[int, Shape]]]:
        if not bare:
            if not (all_used and any(left)):
                yield frozenset()
            return
        for sort, on in over[min(bare, key=key)]:
            if left[sort] and on <= bare:
                fewer = tuple(many - (at == sort) for at, many in enumerate(left))
                yield from (more | {(sort, on)} for more in coverings(bare - on, fewer))

    ways = coverings(shape, tuple(pieces.values()))
    return len({min(map(sorted_form, same_ways(shape, way))) for way in ways})


def placements(shape: Shape, name: str) -> Iterator[Shape]:
    lying = dict.fromkeys(turns(samples(CORNERS[name])))
    for form, x, y in product(lying, range(6), range(6)):
        on = frozenset(point + complex(x, y) for point in form)
        if on <= shape:
            yield on


def same_ways(shape: Shape, way: frozenset[tuple[int, Shape]]) -> Iterator[frozenset[tuple[int, Shape]]]:
    """The way under each turn and flip that lays the whole shape on itself."""
    for flip, n in product((False, True), range(4)):

        def move(p: complex, flip: bool = flip, n: int = n) -> complex:
            return 1j**n * (p.conjugate() if flip else p)

        whole = frozenset(map(move, shape))
        back = next(iter(sorted(settled(whole), key=key))) - next(iter(sorted(whole, key=key)))
        if settled(whole) == shape:
            yield frozenset((sort, frozenset(move(p) + back for p in on)) for sort, on in way)


def key(point: complex) -> tuple[float, float]:
    return point.real, point.imag


def sorted_form(way: frozenset[tuple[int, Shape]]) -> tuple[Any, ...]:
    return tuple(sorted((sort, tuple(sorted(map(key, on)))) for sort, on in way))


@pytest.mark.parametrize("name", PIECES)
def test_pieces_are_as_their_corners_say(name: str) -> None:
    shape = PIECES[name]
    down = max(y for _, y in shape) // 4 + 1
    as_points = frozenset(complex(x / 4, down - y / 4) for x, y in shape)
    assert settled(as_points) in turns(samples(CORNERS[name]))


shapes = st.integers(1, 3).flatmap(
    lambda n: st.lists(st.text("xxxx.◣◢◤◥", min_size=n, max_size=n), min_size=1, max_size=3)
)
handfuls = st.dictionaries(st.sampled_from(list(PIECES)), st.integers(1, 3), min_size=1, max_size=3)


@given(shapes, handfuls, st.sampled_from(["all", "some"]))
def test_every_way_is_found_and_no_other(rows: list[str], pieces: dict[str, int], use: str) -> None:
    data = {"make": rows, "pieces": pieces, "use": use}
    if set("".join(rows)) == {"."}:
        refused(KIND, data)
        return
    answers = answers_of(KIND, data)
    assert len(answers) == by_every_placement(rows, pieces, use == "all")
    assert len({str(answer) for answer in answers}) == len(answers)
    for answer in answers:
        laid = [part["piece"] for part in answer["pieces"]]
        assert all(laid.count(name) <= many for name, many in pieces.items())
        assert use == "some" or all(laid.count(name) == many for name, many in pieces.items())


def ways_in_all(rows: Sequence[str], **many: int) -> int:
    """Every covering, turned and flipped forms each for themselves."""
    pieces = pieces_of({name.replace("_", " "): count for name, count in many.items()}, 40)
    shape = shape_of(rows, 400, ("make",))
    return sum(map(len, every_way(shape, pieces, True, 10_000, 2_000_000)))


@pytest.mark.parametrize(("long", "ways"), [*enumerate([1, 2, 3, 5, 8, 13, 21, 34, 55, 89], 1)])
def test_rectangles_on_a_strip_two_squares_wide(long: int, ways: int) -> None:
    """Domino tilings of 2 × n are the Fibonacci numbers (OEIS A000045, a comment there)."""
    assert ways_in_all(["x" * long] * 2, rectangle=long) == ways


@pytest.mark.parametrize(("long", "ways"), [(2, 3), (4, 11), (6, 41), (3, 0)])
def test_rectangles_on_a_strip_three_squares_wide(long: int, ways: int) -> None:
    """OEIS A001835: 1, 3, 11, 41 …"""
    assert ways_in_all(["x" * long] * 3, rectangle=long * 3 // 2) == ways


@pytest.mark.parametrize(("side", "ways"), [(2, 2), (4, 36)])
def test_rectangles_on_a_large_square(side: int, ways: int) -> None:
    """OEIS A004003: 1, 2, 36, 6728 …, by the formula of Kasteleyn, and of Temperley and Fisher, of 1961."""
    assert ways_in_all(["x" * side] * side, rectangle=side * side // 2) == ways


@pytest.mark.parametrize("order", [1, 2, 3])
def test_rectangles_on_stepped_diamonds(order: int) -> None:
    """An Aztec diamond has 2 to the power n(n + 1)/2 domino tilings (Elkies, Kuperberg, Larsen and Propp, 1992)."""
    steps = [2 * n for n in [*range(1, order + 1), *range(order, 0, -1)]]
    rows = [("x" * wide).center(2 * order, ".") for wide in steps]
    assert ways_in_all(rows, rectangle=sum(steps) // 2) == 2 ** (order * (order + 1) // 2)


@pytest.mark.parametrize("squares", range(1, 7))
def test_triangles_cut_each_square_one_of_two_ways(squares: int) -> None:
    assert ways_in_all(["x" * squares], triangle=2 * squares) == 2**squares


def test_turned_and_flipped_ways_count_once() -> None:
    square = answers_of(KIND, {"make": ["xx", "xx"], "pieces": {"rectangle": 2}})
    assert [[part["on"] for part in answer["pieces"]] for answer in square] == [[["A2", "B2"], ["A1", "B1"]]]
    lopsided = answers_of(KIND, {"make": ["xx◣", "xx."], "pieces": {"rectangle": 2, "triangle": 1}})
    assert len(lopsided) == 2


def test_what_is_said_of_the_hut() -> None:
    solution = solved(KIND, KIND.more_examples[0])
    assert solution.task.ask == (
        "Make this shape of 1 wide triangle, 2 triangles, 2 squares and 1 rectangle. You need not use them all. "
        "Find every way. A way that is only turned or flipped over is the same way."
    )
    by_sizes = {answer.worked for answer in solution.answers}
    assert "Nothing is left bare: in squares, 1 + 2 = 3." in by_sizes
    assert "Nothing is left bare: in half squares, 1 + 1 + 2 + 2 = 6." in by_sizes
    fewest = min(solution.answers, key=lambda answer: len(answer.data["pieces"]))
    assert fewest.says == "A wide triangle on the lower right of A2 and the lower left of B2; a rectangle on A1 and B1"
    assert solution.likely_error
    assert solution.likely_error.gives == "2 of the 7 ways."
    assert solution.steps == 4
    target, pieces = solution.task.figures
    assert target.alt == (
        "The shape to make, on 2 squares across and 2 squares down: it covers A1, lower right of A2, B1 and lower left of B2."
    )
    assert pieces.alt == "The pieces: 1 wide triangle, 2 triangles, 2 squares and 1 rectangle."
    assert solution.answer_figures[0].alt == "Drawings: 7 ways of those in the list, in its order."


@pytest.mark.parametrize(
    ("data", "gives"),
    [
        ({"make": ["xx"], "pieces": {"square": 2}}, None),
        ({"make": ["x", "x"], "pieces": {"rectangle": 1}}, "no way at all."),
        ({"make": ["◤x"], "pieces": {"trapezium": 1}, "use": "some"}, None),
    ],
)
def test_the_slip_is_to_turn_nothing(data: dict[str, Any], gives: str | None) -> None:
    likely_error = solved(KIND, data).likely_error
    assert (likely_error.gives if likely_error else None) == gives


def test_why_there_is_none() -> None:
    short = solved(KIND, {"make": ["xx"], "pieces": {"square": 1, "triangle": 1}})
    assert short.note == "The shape is as big as 4 half squares, and the pieces as 3 half squares."
    over = solved(KIND, {"make": ["◣"], "pieces": {"triangle": 1, "square": 1}})
    assert over.note == "The shape is as big as 1 half square, and the pieces as 3 half squares."
    awkward = solved(KIND, {"make": ["x.", "xx"], "pieces": {"long rectangle": 1}})
    assert awkward.note.endswith("it never comes out.")
    assert [len(found.answers) for found in (short, over, awkward)] == [0, 0, 0]


@pytest.mark.parametrize("year", [0, 1, 2])
def test_sizes_are_added_where_the_year_adds(year: int) -> None:
    data = {"make": ["xxxx"] * 6, "pieces": {"large square": 6}}
    (first, *_) = solved(KIND, data, year).answers
    assert ("24" in first.worked) is (year >= 2)
    (plain,) = solved(KIND, {"make": ["xx"], "pieces": {"square": 2}}, year).answers
    assert ("1 + 1 = 2" in plain.worked) is (year >= 1)


def test_years_see_more_or_less_drawn_in() -> None:
    for home, year, help_ in ((2, 1, "pieces"), (2, 3, "outline"), (3, 6, "outline")):
        version = first_version(KIND, KIND.more_examples[0], year, home)
        assert version is not None
        assert version[0].drawn == help_  # type: ignore[attr-defined]
    eased = first_version(KIND, KIND.more_examples[0], 1)
    assert eased is not None
    assert "The lines show one way: lay the pieces on it." in eased[3].task.ask
    assert len(eased[3].answers) == 7
    told = {**dict(read(KIND, KIND.more_examples[0])[0]), "drawn": "pieces", "years": {}, "kind": "shape"}
    again = first_version(KIND, {name: told[name] for name in ("make", "pieces", "use", "drawn")}, 1)
    assert again is not None
    assert again[2] == "The same shapes."


@given(shapes, handfuls)
@example(["xxx"] * 3, {"square": 3, "trapezium": 3, "triangle": 3})
@settings(max_examples=60, deadline=None)
def test_drawings_are_as_big_as_what_they_show(rows: list[str], pieces: dict[str, int]) -> None:
    if set("".join(rows)) == {"."}:
        return
    try:
        solution = solved(KIND, {"make": rows, "pieces": pieces, "use": "some"})
    except Unsolvable as why:
        if why.rule != "activity-too-many-answers":
            raise
        return
    whole = len(shape_of(rows, 400, ("make",)))
    (outline,) = sizes(solution.task.figures[0])
    assert outline == pytest.approx(whole, rel=0.01)
    assert sizes(solution.task.figures[1]) == [pytest.approx(len(PIECES[name]), rel=0.01) for name in pieces]
    for figure in solution.answer_figures:
        shown = min(12, len(solution.answers))
        assert sum(sizes(figure)) == pytest.approx(whole * shown, rel=0.02)


def sizes(figure: Any) -> list[float]:
    """The size of each part drawn, in quarters of squares, by its corners."""
    across = max(figure.data.across, *(picture.across for picture in figure.data.pictures))
    side = min(20.0 if figure.data.small else 80.0, 314 / across)
    found = []
    for element in drawn(figure).iter("path"):
        size = 0.0
        for ring in element.get("d", "").split("Z"):
            xs = [tuple(map(float, pair.split())) for pair in re.findall(r"[\d.]+ [\d.]+", ring)]
            size += sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(xs, xs[1:] + xs[:1], strict=True)) / 2
        found.append(abs(size) / side / side * 4)
    return found


BASE: dict[str, Any] = {"make": ["xx"], "pieces": {"square": 2}}


@pytest.mark.parametrize(
    ("change", "at"),
    [
        ({"make": ["xx", "x"]}, ("make", 1)),
        ({"make": ["xo"]}, ("make", 0)),
        ({"make": [".."]}, ("make",)),
        ({"make": ["x" * 27]}, ("make",)),
        ({"make": ["x" * 20] * 21}, ("make",)),
        ({"pieces": {}}, ("pieces",)),
        ({"pieces": {"squere": 1}}, ("pieces", "squere")),
        ({"pieces": {"square": 41}}, ("pieces",)),
        ({"pieces": {"square": 10**9}}, ("pieces",)),
        ({"make": ["x" * 5] * 4, "pieces": {"triangle": 40}}, ("make",)),
        ({"make": ["." + "x" * 7, *["x" * 8] * 6, "x" * 7 + "."], "pieces": {"rectangle": 31}}, ("make",)),
    ],
)
def test_what_cannot_be_is_told_where_it_stands(change: dict[str, Any], at: tuple[object, ...]) -> None:
    with pytest.raises(Unsolvable) as caught:
        KIND.solve(*read(KIND, {**BASE, **change}))
    assert caught.value.loc == at
    refused(KIND, {**BASE, **change})


def test_the_search_gives_up_where_it_is_told_to() -> None:
    shape, pieces = shape_of(["x" * 8] * 5, 400, ("make",)), pieces_of({"rectangle": 20}, 40)
    with pytest.raises(TooMany):
        every_way(shape, pieces, True, 500, 2_000_000)
    with pytest.raises(TooMany):
        every_way(shape, pieces, True, 10**9, 1_000)


def test_bad_values_anywhere() -> None:
    data = {**BASE, "use": "some", "drawn": "pieces"}
    for bad in spoilt(data, list(data)):
        never_breaks(KIND, bad)
    refused(KIND, {**BASE, "pieces": {"square": 0}})
