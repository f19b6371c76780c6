"""Measures, held against counting in the smallest unit and against trying every placing of weights."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from fractions import Fraction
from itertools import product

import pytest
import yaml
from activities.contexts import the_reference
from activities.trials import answers_of, first_version, fits, never_breaks, read, refused, solved, spoilt
from dateutil.relativedelta import relativedelta
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.kind import ActivityFields, Unsolvable
from storymaths.activities.measure import KIND
from storymaths.activities.measure.amount import SIZES, is_met
from storymaths.activities.work_out import work_out
from storymaths.model.activity import Context
from storymaths.model.year import Met

# How many of the smallest of each kind: an account of its own, in whole numbers.
IN_SMALLEST = {
    "length": {"mm": 1, "cm": 10, "m": 1000, "km": 1_000_000},
    "mass": {"g": 1, "kg": 1000},
    "capacity": {"ml": 1, "l": 1000, "litres": 1000},
    "time": {"seconds": 1, "minutes": 60, "hours": 3600, "days": 86_400, "weeks": 604_800},
}
KINDS = st.sampled_from(sorted(IN_SMALLEST))


@st.composite
def amounts(draw: st.DrawFn, least: int = 1, most: int = 6) -> list[tuple[int, str]]:
    units = IN_SMALLEST[draw(KINDS)]
    one = st.tuples(st.integers(1, 60), st.sampled_from(sorted(units)))
    return draw(st.lists(one, min_size=least, max_size=most))


def smallest(number: int, unit: str) -> int:
    return next(units[unit] for units in IN_SMALLEST.values() if unit in units) * number


def value(number: int | str) -> Fraction:
    return Fraction(number)


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [(answer.data["character"], answer.data["against"]) for answer in solution.answers] == [
        ("seal", [10, 2]), ("seal", [5, 5, 2]), ("puffin", [5, 2])
    ]  # fmt: skip
    assert fits(solution, 2)


@given(amounts(2, 2))
@settings(max_examples=100, deadline=None)
def test_the_longer_is_longer_in_the_smallest_unit(two: list[tuple[int, str]]) -> None:
    one, other = (smallest(*amount) for amount in two)
    [answer] = answers_of(KIND, {"find": "compare", "amounts": [f"{n} {unit}" for n, unit in two]}, 5)
    assert answer["more"] == ("same" if one == other else "first" if one > other else "second")
    assert value(answer["difference"]) * smallest(1, answer["unit"]) == abs(one - other)


@given(amounts(2, 6), st.booleans())
@settings(max_examples=80, deadline=None)
def test_order_is_that_of_the_smallest_unit(some: list[tuple[int, str]], greatest: bool) -> None:
    data = {"find": "order", "amounts": [f"{n} {unit}" for n, unit in some], "greatest_first": greatest}
    [answer] = answers_of(KIND, data, 5)
    ordered = sorted(some, key=lambda amount: smallest(*amount) * (-1 if greatest else 1))
    assert answer["order"] == [f"{n} {unit}" for n, unit in ordered]


@given(amounts(1, 4), st.data())
@settings(max_examples=80, deadline=None)
def test_converting_keeps_the_amount(some: list[tuple[int, str]], data: st.DataObject) -> None:
    units = next(units for units in IN_SMALLEST.values() if some[0][1] in units)
    to = data.draw(st.sampled_from(sorted(units)))
    found = answers_of(KIND, {"find": "convert", "amounts": [f"{n} {unit}" for n, unit in some], "to": to}, 6)
    assert [value(answer["number"]) * units[to] for answer in found] == [smallest(*amount) for amount in some]


@given(amounts(1, 4), st.integers(1, 9), st.data())
@settings(max_examples=60, deadline=None)
def test_totals_are_those_of_the_smallest_unit(some: list[tuple[int, str]], count: int, data: st.DataObject) -> None:
    there = sum(smallest(*amount) for amount in some) + (count - 1) * smallest(*some[0])
    written = [f"{count} × {some[0][0]} {some[0][1]}", *(f"{n} {unit}" for n, unit in some[1:])]
    less = data.draw(st.lists(st.sampled_from(some), max_size=2))
    gone = sum(smallest(*amount) for amount in less)
    asked = {"find": "total", "amounts": written, "less": [f"{n} {unit}" for n, unit in less]}
    if gone > there:
        refused(KIND, asked, 5, rule="activity-cannot-be")
    else:
        [answer] = answers_of(KIND, asked, 5)
        assert value(answer["total"]) * smallest(1, answer["unit"]) == there - gone


@given(st.integers(1, 80), st.dictionaries(st.sampled_from(["shell", "peg", "hand"]), st.integers(1, 30), min_size=1))
@settings(max_examples=60, deadline=None)
def test_units_laid_end_to_end_one_by_one(length: int, by: dict[str, int]) -> None:
    found = answers_of(KIND, {"find": "units", "amount": f"{length} cm", "by": {k: f"{n} cm" for k, n in by.items()}})
    for answer, (name, size) in zip(found, by.items(), strict=True):
        laid = len(range(size, length + 1, size))
        assert answer == {"unit": name, "count": laid, "left": length - laid * size}


@given(st.lists(st.integers(1, 20), min_size=1, max_size=5), st.integers(1, 60), st.booleans())
@settings(max_examples=120, deadline=None)
def test_levelling_is_what_trying_every_placing_finds(weights: list[int], load: int, both: bool) -> None:
    expected = set()
    for places in product((0, 1, -1) if both else (0, 1), repeat=len(weights)):
        if sum(place * weight for place, weight in zip(places, weights, strict=True)) == load:
            sides = ([w for p, w in zip(places, weights, strict=True) if p == side] for side in (1, -1))
            expected.add(tuple(tuple(sorted(side, reverse=True)) for side in sides))
    data = {"weights": weights, "pans": "both" if both else "one"}
    found = answers_of(KIND, {"find": "level", "load": load, **data})
    assert {(tuple(answer["against"]), tuple(answer["beside"])) for answer in found} == expected
    assert len(found) == len(expected)
    reached = [answer["load"] for answer in answers_of(KIND, {"find": "reach", **data})]
    assert (load in reached) == bool(expected)


@given(
    st.integers(1, 40), st.integers(1, 25), st.integers(-20, 20), st.lists(st.integers(0, 80), min_size=1, max_size=4)
)
@settings(max_examples=80, deadline=None)
def test_a_scale_is_read_by_walking_its_marks(parts: int, step: int, start: int, halves: list[int]) -> None:
    end = start + parts * step
    pointers = [Fraction(2 * start + half * step, 2) for half in halves if half <= 2 * parts]
    if not pointers:
        return
    data = {"find": "read", "ends": [start, end], "parts": parts, "pointers": [f"{p}" for p in pointers]}
    marks = list(range(start, end + 1, step))
    for answer, pointer in zip(answers_of(KIND, data, 5), pointers, strict=True):
        below, above = max(m for m in marks if m <= pointer), min(m for m in marks if m >= pointer)
        if below == above:
            assert answer["reading"] == below
        else:
            assert answer["between"] == [below, above]
            assert answer["nearer"] == "halfway"


@given(st.integers(1, 12), st.integers(1, 500), st.integers(1, 24), st.lists(st.integers(1, 9), min_size=2, max_size=4))
@settings(max_examples=60, deadline=None)
def test_rates_and_ratios_put_together_again(blocks: int, height: int, want: int, ratio: list[int]) -> None:
    data = {"find": "rate", "of": f"{blocks} blocks", "comes_to": f"{height} cm", "want": f"{want} blocks"}
    [answer] = answers_of(KIND, data, 6)
    assert value(answer["amount"]) * blocks == height * want
    [parts] = answers_of(KIND, {"find": "parts", "total": f"{height} g", "ratio": ratio}, 6)
    shares = [value(part) for part in parts["parts"]]
    assert sum(shares) == height
    assert all(share * ratio[0] == shares[0] * count for share, count in zip(shares, ratio, strict=True))
    sides = [f"{blocks} cm", f"{want} cm", f"{ratio[0]} cm"]
    [cuboid] = answers_of(KIND, {"find": "volume", "sides": sides}, 6)
    assert cuboid["volume"] == sum(1 for _ in product(range(blocks), range(want), range(ratio[0])))


@pytest.mark.parametrize(
    ("data", "rule"),
    [
        ({"find": "compare"}, "activity-broken"),
        ({"find": "compare", "amounts": ["3 cm", "4 cm"], "load": 3}, "activity-broken"),
        ({"find": "compare", "amounts": ["3 cm", "4 kg"]}, "activity-cannot-be"),
        ({"find": "compare", "amounts": ["3 cm"]}, "activity-cannot-be"),
        ({"find": "compare", "fact": "mass", "cast": {}}, "activity-fact-missing"),
        ({"find": "compare", "fact": "mass", "cast": {"gull": {"mass": 2}, "crab": {}}}, "activity-fact-missing"),
        (
            {"find": "compare", "fact": "mass", "cast": {"gull": {"mass": 2}, "crab": {"mass": "lots"}}},
            "activity-cannot-be",
        ),
        ({"find": "convert", "amounts": ["3 shells"], "to": "cm"}, "activity-cannot-be"),
        ({"find": "convert", "amounts": ["3 kg"], "to": "cm"}, "activity-cannot-be"),
        ({"find": "read", "parts": 10, "pointers": [101]}, "activity-cannot-be"),
        ({"find": "read", "parts": 10, "numbered": 3, "pointers": [10]}, "activity-cannot-be"),
        ({"find": "read", "ends": [5, 5], "parts": 10, "pointers": [5]}, "activity-cannot-be"),
        ({"find": "units", "amount": "0 cm", "by": {"shell": "3 cm"}}, "activity-cannot-be"),
        ({"find": "units", "amount": "9 cm", "by": {"shell": "0 cm"}}, "activity-cannot-be"),
        ({"find": "level", "load": 0, "weights": [1]}, "activity-cannot-be"),
        ({"find": "level", "load": 3, "weights": [-1, 4]}, "activity-cannot-be"),
        ({"find": "level", "load": 3, "weights": list(range(1, 19))}, "activity-cannot-be"),
        ({"find": "level", "load": "3 cm", "weights": ["1 kg"]}, "activity-cannot-be"),
        ({"find": "level", "load": 60, "weights": list(range(1, 16))}, "activity-too-many-answers"),
        ({"find": "total", "start": "3 kg", "less": ["4 kg"]}, "activity-cannot-be"),
        ({"find": "total", "start": "3 kg", "less": ["-4 kg"]}, "activity-cannot-be"),
        ({"find": "rate", "of": "3 kg", "comes_to": "4 cm", "want": "3 m"}, "activity-cannot-be"),
        ({"find": "parts", "total": "3 kg", "ratio": [1]}, "activity-cannot-be"),
        ({"find": "volume", "sides": ["3 kg", "1 kg", "1 kg"]}, "activity-cannot-be"),
        ({"find": "volume", "sides": ["3 cm", "1 cm"]}, "activity-cannot-be"),
    ],
)
def test_what_cannot_be_is_refused_in_plain_words(data: dict[str, object], rule: str) -> None:
    refused(KIND, data, rule=rule)


@pytest.mark.parametrize(
    "text", ["lots", "3/0 cm", "1e5 cm", "10000001 g", "3 × × 4 cm", "x" * 40, float("nan"), [], True]
)
def test_what_is_no_amount_is_refused(text: object) -> None:
    refused(KIND, {"find": "compare", "amounts": [text, "3 cm"]})


def test_a_load_that_nothing_levels_has_no_answer_and_a_reason() -> None:
    solution = solved(KIND, {"find": "level", "load": 4, "weights": [1, 2, 5]})
    assert not solution.answers
    assert "Nothing levels" in solution.note


GOOD = [
    {"find": "compare", "amounts": ["60 cm", "85 cm"]},
    {"find": "order", "things": {"stick": "60 cm", "rope": "95 cm", "pole": "85 cm"}},
    {"find": "read", "ends": [0, 100], "parts": 20, "numbered": 2, "pointers": [35, 70], "unit": "cm"},
    {"find": "read", "ends": [0, 50], "parts": 10, "numbered": 5, "pointers": [15], "unit": "ml", "form": "jug"},
    {"find": "units", "amount": "20 cm", "by": {"shell": "5 cm", "peg": "2 cm"}},
    {"find": "level", "load": "8 kg", "weights": ["1 kg", "3 kg", "9 kg"], "pans": "both"},
    {"find": "reach", "weights": ["1 kg", "2 kg", "5 kg"]},
    {"find": "total", "start": "100 g", "less": ["70 g"]},
    {"find": "total", "amounts": ["3 × 5 kg", "20 kg"]},
]
LATER = [
    {"find": "convert", "amounts": ["6 weeks", "10 weeks"], "to": "days"},
    {"find": "rate", "of": "5 blocks", "comes_to": "20 cm", "want": "3 blocks"},
    {"find": "parts", "total": "60 g", "ratio": [1, 3]},
    {"find": "volume", "sides": ["12 cm", "1 1/2 cm", "2 cm"]},
    {"find": "read", "ends": [-10, 40], "parts": 10, "pointers": [-5], "unit": "°C", "form": "thermometer"},
]


@pytest.mark.parametrize("data", [*GOOD, *LATER], ids=lambda data: data["find"])
def test_bad_input_never_breaks_it(data: dict[str, object]) -> None:
    for bad in spoilt(data, list(data)):
        never_breaks(KIND, bad, 5)


def order_of(fields: ActivityFields, context: Context) -> list[list[bool]]:
    """Which of every two is less, within each group of what is measured."""
    given = dict(fields)
    groups = [
        [amount.each.size for amount in given.get("amounts", ())],
        [amount.size for amount in (given.get("things") or {}).values()],
        [amount.size for amount in given.get("weights", ())],
        [amount.size for amount in (given.get("by") or {}).values()],
        list(given.get("pointers", ())),
        [Fraction(str(character.facts["mass"]).split()[0]) for character in context.characters],
    ]
    return [[a < b for a in group for b in group] for group in groups]


@pytest.mark.parametrize("data", [yaml.safe_load(KIND.example), *GOOD], ids=lambda data: data["find"])
@pytest.mark.parametrize("year", [1, 2, 3, 4, 5, 6])
def test_year_versions_fit_and_keep_the_order(data: dict[str, object], year: int) -> None:
    version = first_version(KIND, data, year)
    if version is None:
        # Several times so much is a multiplication, which Year 1 does not write.
        assert (data["find"], year) == ("total", 1)
        return
    fields, context, why, _ = version
    assert why
    assert order_of(fields, context) == order_of(*read(KIND, data))


@pytest.mark.parametrize("data", LATER, ids=lambda data: data["find"])
def test_versions_for_older_years(data: dict[str, object]) -> None:
    assert first_version(KIND, data, 6, 5) is not None


UNITS_BY_YEAR = {
    "cm": 2,
    "m": 2,
    "g": 2,
    "kg": 2,
    "ml": 2,
    "l": 2,
    "litre": 2,
    "litres": 2,
    "p": 2,
    "£": 2,
    "°C": 2,
    "mm": 3,
    "km": 4,
}
"""Programmes of study, Department for Education, 2013, DFE-00180-2013; km in Year 4."""


def test_units_are_first_met_in_the_years_of_the_site() -> None:
    for unit, first in UNITS_BY_YEAR.items():
        assert [is_met(unit, the_reference().years[year]) for year in range(7)] == [year >= first for year in range(7)]
        assert unit in SIZES
    assert all(is_met(unit, the_reference().years[0]) for unit in ("shells", "days", "weeks", ""))


def test_a_country_that_meets_signs_and_units_in_other_years_needs_no_other_program() -> None:
    """Made up: centimetres and × in the first year, no ÷ and no < at all."""
    fields, context = read(KIND, {"find": "units", "amount": "20 cm", "by": {"shell": "5 cm"}}, 1)
    year = context.year.with_what_came_before(Met(frozenset("+−=×"), frozenset({"cm"})), context.year.practice)
    there = replace(context, year=year)
    assert KIND.solve(fields, there).answers[0].worked == "4 × 5 cm = 20 cm."
    assert KIND.solve(fields, context).answers[0].worked == "5 cm + 5 cm + 5 cm + 5 cm = 20 cm."
    assert {task.amount.unit for task, _, _ in KIND.versions(fields, there, year)} == {"cm"}
    scale, _ = read(KIND, {"find": "read", "parts": 20, "numbered": 2, "pointers": [35]})
    assert "÷" not in KIND.solve(scale, there).answers[0].worked
    ordered, _ = read(KIND, {"find": "order", "amounts": ["3 cm", "5 cm"]})
    assert KIND.solve(ordered, there).demands.signs == frozenset()


@given(amounts(2, 5), st.sampled_from(["order", "compare"]))
@settings(max_examples=60, deadline=None)
def test_amounts_in_unlike_units_keep_their_order_in_every_version(some: list[tuple[int, str]], find: str) -> None:
    things = {name: f"{number} {unit}" for name, (number, unit) in zip("abcde", some, strict=False)}
    data = {"find": find, "things": dict(list(things.items())[: 2 if find == "compare" else 5])}
    try:
        before = solved(KIND, data, 3)
    except Unsolvable:
        return
    for year in (1, 2):
        version = first_version(KIND, data, year, home=3)
        if version is not None:
            keys = ("order", "together") if find == "order" else ("more",)
            for key in keys:
                assert version[3].answers[0].data[key] == before.answers[0].data[key], (data, version[3])


def test_loads_past_all_the_weights_are_told() -> None:
    data = {"find": "reach", "weights": [1, 3], "up_to": 6}
    solution = solved(KIND, data)
    assert [answer.data["load"] for answer in solution.answers] == [1, 3, 4]
    assert "Nothing levels 2, 5 or 6." in solution.note
    assert (
        "4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15 or 15 more of them"
        in solved(KIND, {"find": "reach", "weights": [1, 2], "up_to": 30}).note
    )


@given(
    st.lists(
        st.tuples(st.integers(1, 40), st.sampled_from(["days", "weeks", "months", "years"])), min_size=2, max_size=5
    )
)
@settings(max_examples=150, deadline=None)
def test_months_are_ordered_as_on_every_calendar(some: list[tuple[int, str]]) -> None:
    """The same lengths laid on the calendar from every day of four years, of which one is a leap year."""
    data = {"find": "order", "amounts": [f"{number} {unit}" for number, unit in some]}
    if len({unit in ("days", "weeks") for _, unit in some}) == 1:
        return
    try:
        [found] = answers_of(KIND, data, 4)
    except Unsolvable:
        return
    for start in (date(2027, 1, 1) + timedelta(days=days) for days in range(0, 1461, 7)):
        ends = [start + relativedelta(**{unit: number}) for number, unit in some]
        laid = [amount for _, amount in sorted(zip(ends, data["amounts"], strict=True))]
        singular = {f"1 {unit}s": f"1 {unit}" for unit in ("day", "week", "month", "year")}
        assert [singular.get(one, one) for one in laid] == [singular.get(one, one) for one in found["order"]]


def test_months_and_years_are_turned_into_each_other_and_into_nothing_else() -> None:
    assert [
        one["number"] for one in answers_of(KIND, {"find": "convert", "amounts": ["60 months"], "to": "years"}, 4)
    ] == [5]
    refused(KIND, {"find": "convert", "amounts": ["2 months"], "to": "weeks"}, 4, "activity-cannot-be")
    refused(KIND, {"find": "order", "amounts": ["4 weeks", "1 month"]}, 4, "activity-cannot-be")


@pytest.mark.parametrize(
    ("more", "less", "says"),
    [
        ("basket of tins", "melon", "The basket of tins is 3 cubes more than the melon"),
        ("the long hand", "Mr Osei's plank", "The long hand is 3 cubes more than Mr Osei’s plank"),
        ("A", "b", "A is 3 cubes more than b"),
    ],
)
def test_things_are_called_as_people_call_them(more: str, less: str, says: str) -> None:
    text = f'kind: measure\ntitle: Two\nfind: compare\nthings: {{"{more}": 18 cubes, "{less}": 15 cubes}}\n'
    done = work_out(text, "page.md", 1, None, 1, the_reference()).done
    assert done is not None
    assert done.solution.answers[0].says.replace("'", "’") == says
