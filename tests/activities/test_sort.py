"""Sortings made again with plain comparisons; rules guessed again by trying every threshold; boxes by permutations."""

from __future__ import annotations

from collections.abc import Callable
from fractions import Fraction
from itertools import permutations
from typing import Any

import pytest
from activities.trials import answers_of, first_version, fits, never_breaks, read, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.kind import Unsolvable
from storymaths.activities.sort import KIND

Facts = dict[str, Any]
NAMES = "gull crab seal puffin whelk limpet otter moth".split()
FACTS = st.fixed_dictionaries(
    {"legs": st.integers(0, 10), "swims": st.booleans(), "home": st.sampled_from(["rock", "sand"])}
)
CASTS = st.dictionaries(st.sampled_from(NAMES), FACTS, min_size=1)
RULES: dict[str, Callable[[Facts], bool]] = {
    "swims": lambda f: f["swims"],
    "not swims": lambda f: not f["swims"],
    "legs > 4": lambda f: f["legs"] > 4,
    "legs <= 2": lambda f: f["legs"] < 3,
    "legs = 0": lambda f: f["legs"] == 0,
    "even(legs)": lambda f: f["legs"] in (0, 2, 4, 6, 8, 10),
    "multiple(legs, 5)": lambda f: f["legs"] in (0, 5, 10),
    "home = rock": lambda f: f["home"] == "rock",
    "home ≠ 'rock' and legs > 1": lambda f: f["home"] == "sand" and f["legs"] >= 2,
    "swims or legs < 6": lambda f: f["swims"] or f["legs"] <= 5,
}


def test_the_table_for_children_leaves_out_what_a_rule_answers_by_yes_or_no() -> None:
    """Common practice, no source: a sheet does not hold its own answers."""
    table = solved(KIND, KIND.example).task.table
    assert table is not None
    assert table.columns == ("Who", "Legs")


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert solution.answers[0].data == {
        "regions": {"both": ["moth"], "first": ["gull", "puffin"], "second": ["crab"], "neither": ["seal", "whelk"]},
        "empty": [],
    }
    assert fits(solution, 2)


@given(
    CASTS,
    st.lists(st.sampled_from(sorted(RULES)), min_size=1, max_size=2, unique=True),
    st.integers(0, 6),
    st.booleans(),
)
def test_everyone_goes_where_the_rules_put_them(
    cast: dict[str, Facts], by: list[str], year: int, carroll: bool
) -> None:
    data: dict[str, Any] = {"cast": cast, "by": by}
    if carroll and len(by) == 2:
        data["diagram"] = "carroll"
    (answer,) = answers_of(KIND, data, year)
    regions: dict[str, list[str]]
    if len(by) == 1:
        regions = {"in": [], "out": []}
        for name, facts in cast.items():
            regions["in" if RULES[by[0]](facts) else "out"].append(name)
    else:
        regions = {"both": [], "first": [], "second": [], "neither": []}
        for name, facts in cast.items():
            one, other = RULES[by[0]](facts), RULES[by[1]](facts)
            regions["both" if one and other else "first" if one else "second" if other else "neither"].append(name)
    assert answer == {"regions": regions, "empty": [region for region, names in regions.items() if not names]}


@given(CASTS, st.sets(st.sampled_from(NAMES), min_size=1), st.integers(1, 6))
def test_every_rule_that_fits_is_guessed(cast: dict[str, Facts], some: set[str], year: int) -> None:
    inside = [name for name in cast if name in some]
    data = {"cast": cast, "inside": inside}
    if not inside or len(inside) == len(cast):
        return
    found = {answer["rule"] for answer in answers_of(KIND, data, year)}

    def divides(test: Callable[[Facts], bool]) -> bool:
        return [name for name, facts in cast.items() if test(facts)] == inside

    expected = {rule for rule in ("swims", "not swims") if divides(RULES[rule])}
    for value in ("rock", "sand"):
        if divides(lambda f, v=value: f["home"] == v):
            expected.add(f'home = "{value}"')
            expected.add(f'home ≠ "{"sand" if value == "rock" else "rock"}"')
    legs = {name: facts["legs"] for name, facts in cast.items()}
    outside = [legs[name] for name in cast if name not in inside]
    for value in range(-1, 12):
        if divides(lambda f, v=value: f["legs"] == v):
            expected.add(f"legs = {value}")
        if divides(lambda f, v=value: f["legs"] != v):
            expected.add(f"legs ≠ {value}")
        # Of all thresholds that tell the same apart, the one that somebody outside has.
        if divides(lambda f, v=value: f["legs"] > v):
            expected.add(f"legs > {max(outside)}")
        if divides(lambda f, v=value: f["legs"] < v):
            expected.add(f"legs < {min(outside)}")
    expected |= {
        rule for rule, rest in (("even(legs)", 0), ("odd(legs)", 1)) if divides(lambda f, r=rest: f["legs"] % 2 == r)
    }
    tables = {1: (), 2: (5, 10), 3: (3, 4, 5, 8, 10)}.get(year, range(3, 13))
    expected |= {f"multiple(legs, {table})" for table in tables if divides(lambda f, t=table: f["legs"] % t == 0)}
    assert found == {
        rule for rule in expected if not rule.startswith('home ≠ "') or len({f["home"] for f in cast.values()}) == 2
    }


def test_a_sorting_no_one_fact_explains() -> None:
    cast = {
        "gull": {"legs": 2, "swims": True},
        "crab": {"legs": 10, "swims": True},
        "whelk": {"legs": 2, "swims": False},
    }
    cast |= {"ant": {"legs": 6, "swims": False}}
    solution = solved(KIND, {"cast": cast, "inside": ["gull", "ant"]})
    assert solution.answers == ()
    assert "none puts these inside" in solution.note


@given(
    st.lists(st.integers(1, 60), min_size=1, max_size=7, unique=True),
    st.lists(st.sampled_from(["odd(n)", "even(n)", "n > 20", "square(n)", "multiple(n, 3)", "has_digit(n, 1)"]), min_size=1,
             max_size=4, unique=True),
)  # fmt: skip
@settings(max_examples=200, deadline=None)
def test_every_filling_of_boxes_is_found(numbers: list[int], by: list[str]) -> None:
    tests: dict[str, Callable[[int], bool]] = {
        "odd(n)": lambda n: n % 2 == 1, "even(n)": lambda n: n % 2 == 0, "n > 20": lambda n: n > 20,
        "square(n)": lambda n: n in {1, 4, 9, 16, 25, 36, 49}, "multiple(n, 3)": lambda n: n % 3 == 0,
        "has_digit(n, 1)": lambda n: "1" in str(n),
    }  # fmt: skip
    expected = [
        [str(n) for n in choice]
        for choice in permutations(numbers, len(by))
        if all(tests[rule](n) for rule, n in zip(by, choice, strict=True))
    ]
    data = {"numbers": numbers, "by": by, "diagram": "boxes"}
    if len(expected) > 500:
        refused(KIND, data, 5, "activity-too-many-answers")
    else:
        assert [answer["boxes"] for answer in answers_of(KIND, data, 5)] == expected


@given(
    st.lists(st.fractions(0, 3, max_denominator=20), min_size=1, max_size=8, unique=True),
    st.fractions(0, 3, max_denominator=9),
)
@settings(max_examples=100, deadline=None)
def test_fractions_keep_the_way_they_are_written(values: list[Fraction], than: Fraction) -> None:
    written = [f"{2 * value.numerator}/{2 * value.denominator}" for value in values]
    (answer,) = answers_of(KIND, {"numbers": written, "by": [f"n > {than}"]}, 6)
    assert answer["regions"]["in"] == [text for text, value in zip(written, values, strict=True) if value > than]


def test_empty_regions_are_named_with_their_reason() -> None:
    cast = {"gull": {"legs": 2, "swims": True}, "seal": {"legs": 0, "swims": True}}
    solution = solved(KIND, {"cast": cast, "by": ["swims", "legs > 4"], "diagram": "carroll"})
    assert solution.answers[0].data["empty"] == ["both", "second", "neither"]
    assert "no character fits both rules" in solution.note
    assert "nobody" in solution.answers[0].says
    assert "does not swim" in solution.answers[0].says


BASE = {"cast": {"gull": {"legs": 2, "swims": True}, "crab": {"legs": 10, "swims": False}}, "by": ["swims"]}


@pytest.mark.parametrize(
    ("change", "at"),
    [
        ({"cast": {}}, ("cast",)),
        ({"cast": {"gull": {"legs": -1, "swims": True}}}, ("cast",)),
        ({"cast": {"gull": {"legs": 10**9, "swims": True}}}, ("cast",)),
        ({"cast": {"gull": {"swims": True}, "crab": {"legs": 1}}}, ("by", 0)),
        ({"by": ["swim"]}, ("by", 0)),
        ({"by": ["legs"]}, ("by", 0)),
        ({"by": ["legs > swims"]}, ("by", 0)),
        ({"by": ["swims", "swims"]}, ("by",)),
        ({"by": []}, ("by",)),
        ({"by": ["swims", "legs > 1", "legs > 2", "legs > 3"]}, ("by",)),
        ({"by": ["legs ÷ 0 > 1"]}, ("by", 0)),
        ({"by": ["legs × 9999999 > 1"]}, ("by", 0)),
        ({"diagram": "venn"}, ("by",)),
        ({"by": None, "inside": ["gul"]}, ("inside", 0)),
        ({"by": None, "inside": ["gull", "crab"]}, ("inside",)),
        ({"by": None, "inside": ["gull"], "looking_at": ["wings"]}, ("looking_at", 0)),
        ({"numbers": [2, 2], "by": ["odd(n)"]}, ("numbers",)),
        ({"cast": {"gull": {"legs": "1e400"}, "crab": {"legs": "nan"}}, "by": ["legs > 4"]}, ("by", 0)),
        ({"cast": {"gull": {"legs": True}, "crab": {"legs": 3}}, "by": ["legs > 4"]}, ("by", 0)),
    ],
)
def test_what_cannot_be_is_told_where_it_stands(change: dict[str, object], at: tuple[object, ...]) -> None:
    data = {name: value for name, value in {**BASE, **change}.items() if value is not None}
    with pytest.raises(Unsolvable) as caught:
        KIND.solve(*read(KIND, data))
    assert caught.value.loc == at
    refused(KIND, data)


def test_bad_values_anywhere() -> None:
    for data in spoilt(BASE, ["cast", "by", "diagram", "numbers", "inside", "looking_at"]):
        never_breaks(KIND, data)
    for numbers in (
        "1 to 1000000",
        "9 to 1",
        ["1e400"],
        [float("nan")],
        ["x" * 40],
        list(range(101)),
        ["3/0"],
        "10 to 109",
    ):
        never_breaks(KIND, {"numbers": numbers, "by": ["odd(n)"]})
    names = {f"{'a' * 40}{i}": {"swims": i % 2 == 0} for i in range(12)}
    assert never_breaks(KIND, {"cast": names, "by": ["swims"]}) is not None
    assert never_breaks(KIND, {"numbers": "1 to 100", "by": ["odd(n)", "n > 50"], "diagram": "carroll"}) is not None
    everything = {"numbers": "1 to 12", "by": [f"n > {-i}" for i in range(6)], "diagram": "boxes"}
    refused(KIND, everything, 5, "activity-too-many-answers")


@pytest.mark.parametrize("year", range(0, 7))
def test_versions_fit_their_year(year: int) -> None:
    found = first_version(KIND, KIND.example, year)
    assert found is not None
    places = found[3].answers[0].data["regions"]
    # The facts of the characters are true, so they stay: whoever flies in one year flies in every year.
    flying = places["in"] if "in" in places else [*places["first"], *places["both"]]
    assert sorted(flying) == ["gull", "moth", "puffin"]
    if year == 3:
        assert "Carroll" in found[2]
    guess = {"cast": {"gull": {"legs": 2, "swims": True}, "crab": {"legs": 10, "swims": False}}, "inside": ["gull"]}
    assert first_version(KIND, guess, year) is not None
    numbers = {"numbers": [3, 8, 15, 120, 2500], "by": ["odd(n)"]}
    assert (first_version(KIND, numbers, year, home=5) is not None) is True
