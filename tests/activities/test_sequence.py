"""Sequences held against counting along, and against every rule and every unit tried in turn."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import accumulate, cycle, islice, pairwise, product, repeat

import pytest
from activities.contexts import the_reference
from activities.trials import BAD_NUMBERS, answers_of, first_version, fits, never_breaks, read, refused, solved
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.sequence import KIND
from storymaths.activities.sequence.number_rules import whole_root

STARTS, STEPS = st.integers(-20, 60), st.integers(-12, 12)


def counted(start: int, step: int, grows: int = 0) -> Iterator[int]:
    """A count, one step after another."""
    while True:
        yield start
        start, step = start + step, step + grows


@st.composite
def gapped(draw: st.DrawFn, length: int, shown: int) -> set[int]:
    """Which places of a row are gaps: at least one, and enough are shown."""
    return draw(st.sets(st.integers(0, length - 1), min_size=1, max_size=length - shown))


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.data["term"] for answer in solution.answers] == ["crab", "crab", "gull"]
    assert fits(solution, 2)


@given(STARTS, STEPS, st.integers(0, 3), st.data())
def test_gaps_are_what_counting_along_says(start: int, step: int, grows: int, data: st.DataObject) -> None:
    terms = list(islice(counted(start, step, grows), data.draw(st.integers(4, 9))))
    gaps = data.draw(gapped(len(terms), 3 if grows else 2))
    asked = ["___" if place in gaps else term for place, term in enumerate(terms)]
    [answer] = answers_of(KIND, {"terms": asked, "rule": "growing" if grows else "step"}, 5)
    assert answer["terms"] == terms
    assert answer["gaps"] == [terms[place] for place in sorted(gaps)]


@given(st.integers(1, 9), st.sampled_from([Fraction(2), Fraction(3), Fraction(10), Fraction(1, 2)]), st.data())
@settings(max_examples=60, deadline=None)
def test_times_are_multiplied_along(first: int, factor: Fraction, data: st.DataObject) -> None:
    terms = list(accumulate(repeat(factor, 4), lambda term, by: term * by, initial=Fraction(first)))
    gaps = data.draw(gapped(5, 2))
    asked = ["___" if place in gaps else str(term) for place, term in enumerate(terms)]
    [answer] = answers_of(KIND, {"terms": asked, "rule": "times"}, 6)
    assert [Fraction(str(term).replace(",", "")) for term in answer["terms"]] == terms


@given(STARTS, STEPS, st.lists(st.integers(1, 60), min_size=1, max_size=5, unique=True))
@settings(max_examples=60, deadline=None)
def test_places_and_said_numbers_are_met_by_walking(start: int, step: int, places: list[int]) -> None:
    walk = list(islice(counted(start, step), 70))
    data = {"terms": walk[:2]}
    found = answers_of(KIND, {**data, "places": places}, 5)
    assert found == [{"place": place, "term": walk[place - 1]} for place in places]
    asked = [walk[place - 1] + place % 3 for place in places]
    said = {answer["said"]: answer["place"] for answer in answers_of(KIND, {**data, "said": asked}, 5)}
    far = list(islice(counted(start, step), 2000))
    assert said == {number: far.index(number) + 1 for number in asked if number in far}


@given(STARTS, st.integers(1, 9), st.integers(4, 8), st.data())
@settings(max_examples=100, deadline=None)
def test_the_mistake_is_found_by_trying_every_change(start: int, step: int, length: int, data: st.DataObject) -> None:
    terms = list(islice(counted(start, step), length))
    terms[data.draw(st.integers(0, length - 1))] += data.draw(st.integers(-5, 5))
    expected = []
    for place, here in enumerate(terms):
        for other in range(start - 60, start + 150):
            row = [*terms[:place], other, *terms[place + 1 :]]
            if other != here and len({b - a for a, b in pairwise(row)}) == 1:
                expected.append({"place": place + 1, "is": here, "should_be": other})
    if len({b - a for a, b in pairwise(terms)}) == 1:
        expected = []
    assert answers_of(KIND, {"terms": terms, "mistake": True}, 5) == expected


@given(st.lists(st.sampled_from("ABC"), min_size=1, max_size=4), st.integers(8, 14), st.data())
@settings(max_examples=100, deadline=None)
def test_the_unit_is_the_shortest_of_all_that_could_be(unit: list[str], length: int, data: st.DataObject) -> None:
    whole = list(islice(cycle(unit), length))
    gaps = data.draw(st.sets(st.integers(0, length - 1), max_size=3))
    shown = ["___" if place in gaps else thing for place, thing in enumerate(whole)]
    fitting = [
        list(tried)
        for size in range(1, length // 2 + 1)
        for tried in product("ABC", repeat=size)
        if all(thing in ("___", tried[place % size]) for place, thing in enumerate(shown))
        and all(any(shown[place] != "___" for place in range(start, length, size)) for start in range(size))
    ]
    if not fitting:
        refused(KIND, {"pattern": shown}, rule="activity-cannot-be")
        return
    [answer] = answers_of(KIND, {"pattern": shown})
    assert answer["unit"] == fitting[0]
    if gaps:
        assert answer["terms"] == list(islice(cycle(fitting[0]), length))
    places = [1, 7, 23]
    far = list(islice(cycle(fitting[0]), 23))
    found = answers_of(KIND, {"pattern": shown, "places": places})
    assert [answer["term"] for answer in found] == [far[place - 1] for place in places]


@given(st.lists(st.sampled_from("AB"), min_size=2, max_size=3), st.integers(0, 8))
@settings(max_examples=60, deadline=None)
def test_what_is_out_of_place_is_found_by_trying_every_swap(unit: list[str], place: int) -> None:
    shown = list(islice(cycle(unit), 9))
    shown[place] = "B" if shown[place] == "A" else "A"

    def repeats(row: list[str], size: int) -> bool:
        return all(row[n] == row[n - size] for n in range(size, len(row)))

    if any(repeats(shown, size) for size in range(1, 5)):
        assert not answers_of(KIND, {"pattern": shown, "mistake": True})
        return
    for size in range(1, 5):
        expected = []
        for at, thing in enumerate(shown):
            other = "B" if thing == "A" else "A"
            if other in shown and repeats([*shown[:at], other, *shown[at + 1 :]], size):
                expected.append({"place": at + 1, "is": thing, "should_be": other})
        if expected:
            assert answers_of(KIND, {"pattern": shown, "mistake": True}) == expected
            return
    refused(KIND, {"pattern": shown, "mistake": True}, rule="activity-cannot-be")


@given(st.integers(0, 50), st.integers(1, 6), st.integers(1, 10**7))
@settings(max_examples=100, deadline=None)
def test_whole_roots(root: int, power: int, other: int) -> None:
    assert whole_root(root**power, power) == root
    found = whole_root(other, power)
    assert found is None or found**power == other


def test_year_1_counts_in_words_and_year_2_in_signs() -> None:
    row = {"terms": [55, 56, 57, 58, 59, "___"]}
    assert "1 more than 59 is 60" in solved(KIND, row, 1).answers[0].worked
    solution = solved(KIND, row, 2)
    assert "59 + 1 = 60" in solution.answers[0].worked
    assert solution.likely_error
    assert solution.likely_error.gives == "50."
    assert fits(solved(KIND, row, 1), 1)


def test_notes_say_why_a_number_is_not_said_and_when_nothing_is_wrong() -> None:
    assert "after 40 comes 48" in solved(KIND, {"terms": [0, 8], "said": [24, 42]}, 3).note
    right = solved(KIND, {"terms": [2, 4, 6, 8], "mistake": True})
    assert not right.answers
    assert "Nothing is wrong" in right.note


@pytest.mark.parametrize("bad", BAD_NUMBERS, ids=range(len(BAD_NUMBERS)))
def test_bad_values_are_refused_in_plain_words(bad: object) -> None:
    for data in (
        {"terms": bad},
        {"terms": [bad]},
        {"terms": [bad, 2, "___"]},
        {"terms": [bad, 2, 3, 4, 5], "mistake": True},
        *({"terms": [1, 2, "___"], name: bad} for name in ("step", "rule", "places", "said", "mistake", "cast")),
        {"terms": [1, 2], "places": [bad]},
        {"terms": [1, 2], "said": [bad]},
        {"terms": [1, 2], "rule": "times", "places": [bad]},
        {"pattern": bad},
        {"pattern": [bad, bad]},
        {"pattern": ["A", "B", "A", "B"], "places": [bad]},
        {"pattern": ["gull", "crab"] * 2, "cast": {"gull": {"legs": bad}, "crab": {}}},
    ):
        never_breaks(KIND, data)


def test_what_cannot_be_is_refused() -> None:
    refused(KIND, {}, rule="activity-broken")
    refused(KIND, {"terms": [1, 2, "___"], "pattern": ["A", "A"]}, rule="activity-broken")
    refused(KIND, {"terms": [1, 2], "places": [3], "said": [4]}, rule="activity-broken")
    refused(KIND, {"terms": [2, 4, 6]}, rule="activity-broken")
    assert "from 4 to 7" in refused(KIND, {"terms": [2, 4, 7, "___"]}, rule="activity-cannot-be")
    refused(KIND, {"terms": ["___", "___"]}, rule="activity-cannot-be")
    refused(KIND, {"terms": [2, "___"]}, rule="activity-cannot-be")
    refused(KIND, {"terms": [2, 4, 7, 11], "mistake": True}, rule="activity-cannot-be")
    refused(KIND, {"terms": [2, 4, 7], "mistake": True}, rule="activity-cannot-be")
    refused(KIND, {"terms": [9_999_999, "___"], "step": 9_999_999}, rule="activity-cannot-be")
    refused(KIND, {"terms": [1, 2], "rule": "times", "places": [999_999]}, rule="activity-cannot-be")
    refused(KIND, {"terms": [1, 2], "rule": "times", "places": [40]}, rule="activity-cannot-be")
    refused(KIND, {"terms": [0, 2, "___"], "rule": "times"}, rule="activity-cannot-be")
    refused(KIND, {"terms": [1, 2, "___"], "rule": "growing", "step": 2}, rule="activity-broken")
    refused(KIND, {"pattern": ["gull", "crow"] * 2, "cast": {"gull": {}, "crab": {}}}, rule="activity-fact-missing")
    refused(KIND, {"pattern": ["x" * 40] * 4}, rule="activity-cannot-be")
    refused(KIND, {"pattern": list("ABCD")}, rule="activity-cannot-be")
    refused(KIND, {"pattern": list("ABAB"), "step": 2}, rule="activity-broken")


VERSIONS = [
    {"terms": [55, 56, 57, 58, 59, "___"]},
    {"terms": [40, 35, "___", 25, "___"]},
    {"terms": [3, 6, 9], "places": [10]},
    {"terms": [2, 4, 6, 9, 10], "mistake": True},
    {"terms": [0, 5], "said": [15, 22]},
    {"pattern": ["gull", "crab"] * 3, "places": [9, 12]},
]


@pytest.mark.parametrize("year", range(7))
@pytest.mark.parametrize("data", VERSIONS, ids=["ones", "back", "places", "mistake", "said", "pattern"])
def test_versions_fit_their_year_and_keep_the_order(data: dict[str, object], year: int) -> None:
    found = first_version(KIND, data, year)
    if not found:
        # In Reception, numbers past ten are counted, not reckoned; long counts have no version there.
        assert year == 0
        return
    old, new = data.get("terms", []), list(found[0].terms) if "terms" in data else []
    assert isinstance(old, list)
    assert _rises(old) == _rises(new)
    assert [term == "___" for term in old] == [term == "___" for term in new]


def _rises(terms: list[object]) -> bool:
    numbers = [Fraction(str(term)) for term in terms if term != "___"]
    return numbers == sorted(numbers)


def test_growing_and_doubling_rows_have_versions() -> None:
    assert first_version(KIND, {"terms": [1, 3, 6, "___"], "rule": "growing"}, 3)
    found = first_version(KIND, {"terms": [3, 6, 12, "___"], "rule": "times"}, 3)
    assert found
    assert found[0].terms != (3, 6, 12, "___")


def test_versions_are_the_same_every_time() -> None:
    for data in VERSIONS:
        fields, context = read(KIND, data)
        limits = the_reference().years[3]
        first = [changed for changed, _, _ in KIND.versions(fields, context, limits)]
        assert first == [changed for changed, _, _ in KIND.versions(fields, context, limits)]


@given(st.integers(0, 24), st.integers(1, 24), st.sampled_from([3, 4, 5, 8, 10]), st.integers(3, 8))
@settings(max_examples=60, deadline=None)
def test_a_row_typed_in_fractions_is_answered_in_fractions(first: int, step: int, under: int, place: int) -> None:
    """Counted in parts of which ``under`` make a whole, as mixed numbers in lowest terms."""

    def mixed(parts: int) -> str:
        whole, rest = divmod(parts, under)
        part = [str(Fraction(rest, under))] if rest else []
        return " ".join([str(whole)] * bool(whole or not rest) + part)

    row = [mixed(first + n * step) for n in range(place + 1)]
    if not any("/" in term for term in row[:place]):
        return
    solution = solved(KIND, {"terms": [*row[:place], "___"]}, 6)
    assert solution.answers[0].says == f"{row[place]} is missing"
    assert str(solution.task.lines[0]) == f"{', '.join(row[:place])}, ___"
    assert "." not in solution.demands.signs


def test_a_row_in_fractions_fits_the_year_that_knows_them() -> None:
    data = {"terms": ["1 1/2", "1 3/4", "2", "___"]}
    assert fits(solved(KIND, data, 2), 2)
    assert not fits(solved(KIND, {"terms": ["1 1/8", "1 3/8", "___"]}, 2), 2)
    assert [str(line) for line in solved(KIND, {"terms": ["1.5", "1.75", "___"]}, 4).task.lines] == ["1.5, 1.75, ___"]
