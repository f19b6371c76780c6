"""Fractions of amounts, sets and shapes, and as numbers, held against counting one by one."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from functools import cmp_to_key
from itertools import product

import pytest
import yaml
from activities.contexts import the_reference
from activities.trials import answers_of, first_version, fits, never_breaks, read, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.fit import misfits
from storymaths.activities.fraction import KIND
from storymaths.activities.fraction.tasks import EqualTask, LineTask, OrderTask
from storymaths.model.year import Met
from storymaths.parse.number_sentence import exact

FRACTIONS = st.integers(1, 12).flatmap(lambda under: st.tuples(st.integers(1, under), st.just(under)))
SHELLS = st.dictionaries(st.sampled_from("gull crab seal puffin whelk limpet".split()), st.integers(1, 20), min_size=1)


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.data["character"] for answer in solution.answers] == ["gull", "seal", "whelk"]
    assert fits(solution, 2)


@given(FRACTIONS, st.integers(1, 200), st.integers(1, 6))
@settings(max_examples=100, deadline=None)
def test_a_part_of_an_amount_put_together_makes_it(fraction: tuple[int, int], amount: int, year: int) -> None:
    over, under = fraction
    [answer] = answers_of(KIND, {"find": "part", "fraction": f"{over}/{under}", "of": amount}, year)
    # Walk up in steps as small as the parts until so many parts make the amount.
    part = next(n for n in range(amount * over + 1) if n * under == amount * over * under)
    assert Fraction(answer["part"]) * under == part
    solution = solved(KIND, {"find": "whole", "fraction": f"{over}/{under}", "part": f"{amount * over}/{under}"}, year)
    assert solution.answers[0].data["whole"] == amount


@given(FRACTIONS, st.integers(1, 60))
@settings(max_examples=60, deadline=None)
def test_counts_that_share_out_are_those_dealt_without_a_remainder(fraction: tuple[int, int], up_to: int) -> None:
    over, under = Fraction(*fraction).as_integer_ratio()

    def dealt(count: int) -> list[int]:
        piles = [0] * under
        for thing in range(count):
            piles[thing % under] += 1
        return piles

    expected = [
        {"count": count, "part": sum(dealt(count)[:over])}
        for count in range(1, up_to + 1)
        if len(set(dealt(count))) == 1
    ]
    assert answers_of(KIND, {"find": "share", "fraction": "/".join(map(str, fraction)), "up_to": up_to}) == expected


@given(FRACTIONS, SHELLS)
@settings(max_examples=80, deadline=None)
def test_groups_are_those_found_by_trying_every_one(fraction: tuple[int, int], shells: dict[str, int]) -> None:
    cast = {name: {"shells": count} for name, count in shells.items()}
    data = {"find": "groups", "fraction": "/".join(map(str, fraction)), "fact": "shells", "cast": cast}
    expected = set()
    for inside in product((False, True), repeat=len(shells)):
        group = [name for name, joins in zip(shells, inside, strict=True) if joins]
        if group and sum(shells[name] for name in group) * fraction[1] == sum(shells.values()) * fraction[0]:
            expected.add(tuple(group))
    found = [tuple(answer["characters"]) for answer in answers_of(KIND, data)]
    assert set(found) == expected
    assert len(found) == len(expected)
    assert [len(group) for group in found] == sorted(len(group) for group in found)


@given(st.lists(st.integers(1, 6), min_size=1, max_size=8), st.data())
@settings(max_examples=60, deadline=None)
def test_a_shaded_shape_is_as_much_as_its_small_squares(sizes: list[int], data: st.DataObject) -> None:
    shaded = data.draw(st.lists(st.sampled_from(["0", "1/2", "1"]), min_size=len(sizes), max_size=len(sizes)))
    squares = [
        n < size * 2 * Fraction(share) for size, share in zip(sizes, shaded, strict=True) for n in range(size * 2)
    ]
    shape = {"parts": sizes, "shaded": shaded, "form": data.draw(st.sampled_from(["bar", "circle"]))}
    [answer] = answers_of(KIND, {"find": "shape", "shapes": [shape]})
    assert Fraction(answer["fraction"]) == Fraction(sum(squares), len(squares))
    wanted = {"find": "shape", "shapes": [shape, {"parts": 4, "shaded": 1}], "fraction": "1/4"}
    quarters = [found["shape"] for found in answers_of(KIND, wanted)]
    assert quarters == [
        name for name, part in (("A", Fraction(answer["fraction"])), ("B", Fraction(1, 4))) if part * 4 == 1
    ]


@given(FRACTIONS, st.integers(1, 30))
@settings(max_examples=60, deadline=None)
def test_every_equal_fraction_is_found_by_cross_multiplying_them_all(fraction: tuple[int, int], up_to: int) -> None:
    over, under = fraction
    written = f"{over}/{under}"
    expected = [
        [written, f"{a}/{b}"]
        for b in range(1, up_to + 1)
        for a in range(1, b + 1)
        if a * under == b * over and (a, b) != fraction
    ]
    found = answers_of(KIND, {"find": "equal", "fraction": written, "up_to": up_to})
    assert [answer["equal"] for answer in found] == expected


@given(st.lists(FRACTIONS, min_size=2, max_size=6), st.booleans())
@settings(max_examples=80, deadline=None)
def test_order_and_equality_are_those_of_cross_multiplying(fractions: list[tuple[int, int]], greatest: bool) -> None:
    texts = [f"{over}/{under}" for over, under in fractions]
    [answer] = answers_of(KIND, {"find": "order", "numbers": texts, "greatest_first": greatest}, 6)
    by_cross = cmp_to_key(lambda a, b: (a[0] * b[1] - b[0] * a[1]) * (-1 if greatest else 1))
    assert answer["order"] == [f"{over}/{under}" for over, under in sorted(fractions, key=by_cross)]
    pairs = answers_of(KIND, {"find": "equal", "numbers": texts}, 6)
    assert len(pairs) == sum(a[0] * b[1] == b[0] * a[1] for i, a in enumerate(fractions) for b in fractions[i + 1 :])


@given(FRACTIONS, st.integers(1, 20))
@settings(max_examples=60, deadline=None)
def test_a_number_stands_where_walking_the_line_meets_it(fraction: tuple[int, int], parts: int) -> None:
    over, under = fraction
    [answer] = answers_of(KIND, {"find": "line", "parts": parts, "numbers": [f"{over}/{under}"]}, 3)
    passed = [mark for mark in range(parts + 1) if mark * under <= over * parts]
    if passed[-1] * under == over * parts:
        assert answer["mark"] == passed[-1]
        [back] = answers_of(KIND, {"find": "line", "parts": parts, "marks": [answer["mark"]]}, 3)
        assert Fraction(back["number"]) == Fraction(over, under)
    else:
        assert answer["between"] == [passed[-1], passed[-1] + 1]


@given(st.integers(0, 9999))
@settings(max_examples=40, deadline=None)
def test_decimals_fractions_and_percentages_agree(thousandths: int) -> None:
    decimal = str(Decimal(thousandths) / 1000)
    [answer] = answers_of(KIND, {"find": "write", "numbers": [decimal]}, 5)
    assert exact(answer["simplest"]) == Fraction(thousandths, 1000)
    [back] = answers_of(KIND, {"find": "write", "numbers": [answer["simplest"]], "written_as": "decimal"}, 5)
    assert Decimal(back["written"].replace(",", "")) == Decimal(decimal)


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        ({"find": "part", "of": 8}, "activity-broken"),
        ({"find": "part", "fraction": "1/2"}, "activity-broken"),
        ({"find": "part", "fraction": "1/2", "of": 8, "counts": [4]}, "activity-broken"),
        ({"find": "part", "fraction": "5/4", "of": 8}, "activity-cannot-be"),
        ({"find": "part", "fraction": 0, "of": 8}, "activity-cannot-be"),
        ({"find": "part", "fraction": "1/2", "fact": "shells", "cast": {}}, "activity-fact-missing"),
        ({"find": "part", "fraction": "1/2", "fact": "shells", "cast": {"gull": {}}}, "activity-fact-missing"),
        ({"find": "part", "fraction": "1/2", "fact": "shells", "cast": {"gull": {"shells": 0}}}, "activity-cannot-be"),
        ({"find": "rest", "fraction": "1/2", "of": 8, "taken": [5]}, "activity-cannot-be"),
        ({"find": "whole", "fraction": 1, "rest": 5}, "activity-cannot-be"),
        ({"find": "share", "fraction": "1", "up_to": 1000}, "activity-too-many-answers"),
        ({"find": "line", "parts": 4, "numbers": ["5/4"]}, "activity-cannot-be"),
        ({"find": "line", "parts": 4, "marks": [5]}, "activity-cannot-be"),
        ({"find": "line", "parts": 4, "ends": [1, 1], "marks": [1]}, "activity-cannot-be"),
        ({"find": "write", "numbers": ["1/3"], "written_as": "decimal"}, "activity-cannot-be"),
        ({"find": "shape", "shapes": [{"parts": 2, "shaded": 3}]}, "activity-cannot-be"),
        ({"find": "order", "numbers": ["1/2"]}, "activity-cannot-be"),
    ],
)
def test_what_cannot_be_is_refused_in_plain_words(data: dict[str, object], rule: str) -> None:
    refused(KIND, data, rule=rule)


def test_a_group_that_whole_numbers_cannot_make_has_no_answer_and_a_reason() -> None:
    cast = {"gull": {"shells": 2}, "crab": {"shells": 3}}
    solution = solved(KIND, {"find": "groups", "fraction": "1/2", "fact": "shells", "cast": cast})
    assert not solution.answers
    assert "2 1/2" in solution.note


GOOD = [
    {"find": "part", "fraction": "3/4", "of": 24, "things": "shells"},
    {"find": "rest", "fraction": "1/2", "of": 30, "taken": [9]},
    {"find": "whole", "fraction": "3/4", "rest": 7},
    {"find": "share", "fraction": "1/4", "counts": [6, 8, 12]},
    {"find": "share", "fraction": "1/3", "up_to": 20},
    {"find": "shape", "shapes": [{"parts": 4, "shaded": 1}, {"parts": [2, 1, 1], "shaded": 1}], "fraction": "1/4"},
    {"find": "equal", "numbers": ["2/4", "1/2", "1/4"]},
    {"find": "equal", "fraction": "1/2", "up_to": 12},
    {"find": "order", "numbers": ["1/4", "3/4", "1/2"]},
    {"find": "line", "parts": 4, "numbers": ["1/4", "1/2", "3/4"]},
]


@pytest.mark.parametrize("data", GOOD, ids=lambda data: data["find"])
def test_bad_input_never_breaks_it(data: dict[str, object]) -> None:
    for bad in spoilt(data, list(data)):
        never_breaks(KIND, bad)


@pytest.mark.parametrize("data", [yaml.safe_load(KIND.example), *GOOD], ids=lambda data: data["find"])
@pytest.mark.parametrize("year", [1, 2, 3, 4, 5, 6])
def test_year_versions_fit_and_keep_the_order(data: dict[str, object], year: int) -> None:
    version = first_version(KIND, data, year)
    assert version is not None
    fields, context, why, _ = version
    assert why
    before, was = read(KIND, data)
    if isinstance(before, (EqualTask, LineTask, OrderTask)) and isinstance(fields, (EqualTask, LineTask, OrderTask)):
        old, new = [n.value for n in before.numbers], [n.value for n in fields.numbers]
        assert [a < b for a in old for b in old] == [a < b for a in new for b in new]
    if before.fact:
        old, new = ([p.facts[before.fact] for p in there.characters] for there in (was, context))
        assert [a < b for a in old for b in old] == [a < b for a in new for b in new]


@pytest.mark.parametrize(
    ("signs", "worked"),
    [
        ("+−=", "6 + 6 + 6 + 6 = 24, so one quarter is 6. 6 + 6 + 6 = 18."),
        ("+−=×", "6 + 6 + 6 + 6 = 24, so one quarter is 6. 3 × 6 = 18."),
        ("+−=÷", "24 ÷ 4 = 6. 6 + 6 + 6 = 18."),
    ],
)
def test_a_country_that_meets_signs_in_another_order_needs_other_data_alone(signs: str, worked: str) -> None:
    fields, context = read(KIND, {"find": "part", "fraction": "3/4", "of": 24}, 4)
    year = context.year.with_what_came_before(Met(signs=frozenset(signs)), context.year.practice)
    [answer] = KIND.solve(fields, replace(context, year=year)).answers
    assert answer.worked == worked


def test_the_denominators_practised_in_each_year_are_those_the_site_says_it_meets() -> None:
    reference = the_reference()
    for year, limits in reference.years.items():
        met = {under for under in reference.denominators_by(year) if under <= 12}
        assert set(limits.practice.fraction.denominators) == met


@given(st.integers(1, 60), st.integers(2, 30))
@settings(max_examples=100, deadline=None)
def test_mixed_numbers_keep_their_parts_and_go_back(over: int, under: int) -> None:
    [mixed] = answers_of(KIND, {"find": "write", "numbers": [f"{over}/{under}"], "written_as": "mixed"}, 6)
    wholes, parts = 0, over
    while parts >= under:  # take away one whole after another
        wholes, parts = wholes + 1, parts - under
    assert mixed["written"] == " ".join([str(wholes)] * bool(wholes) + [f"{parts}/{under}"] * bool(parts))
    if parts:
        [back] = answers_of(KIND, {"find": "write", "numbers": [mixed["written"]], "written_as": "improper"}, 6)
        assert back["written"] == f"{over}/{under}"


def test_a_fraction_is_simplified_at_once_and_a_decimal_through_tenths() -> None:
    worked = [a.worked for a in solved(KIND, {"find": "write", "numbers": ["12/16", "26/4", "0.35"]}, 6).answers]
    assert worked == ["12/16 = 3/4.", "26/4 = 6 1/2.", "0.35 = 35/100 = 7/20."]


def test_fractions_of_any_parts_are_year_6s() -> None:
    # Key stage 2 test content 6F2, "simplify fractions": 12/20, 12/15, 12/16 and 12/18.
    data = {"find": "write", "numbers": ["12/20", "12/15", "12/16", "12/18"]}
    reference = the_reference()
    for year, fit in ((6, True), (5, False)):
        demands = solved(KIND, data, year).demands
        assert (misfits(demands, reference.years[year], reference) == []) is fit


def test_counting_marks_is_a_slip_on_any_line() -> None:
    error = solved(KIND, {"find": "line", "parts": 4, "ends": [0, 20], "numbers": [5]}).likely_error
    assert error is not None
    assert error.gives == "4 for each part."  # 20 shared into five


def test_nobody_who_works_in_whole_numbers_gets_parts_of_one_by_a_slip() -> None:
    assert solved(KIND, {"find": "line", "parts": 4, "ends": [0, 24], "marks": [1]}).likely_error is None
    thirds = {"find": "share", "fraction": "1/3", "counts": [9, 10, 12]}
    assert solved(KIND, thirds).likely_error is None, "even numbers have nothing to do with thirds"
    assert solved(KIND, {**thirds, "fraction": "1/4", "counts": [8, 9, 10]}).likely_error is not None
