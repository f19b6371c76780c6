"""Bonds held against every choice of parts, tried one by one, and against generating functions."""

from __future__ import annotations

from itertools import combinations, product
from math import comb

import pytest
from activities.contexts import the_reference
from activities.trials import BAD_NUMBERS, answers_of, first_version, fits, never_breaks, read, refused, solved
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.bonds import KIND
from storymaths.activities.bonds.split import Split

CAST = st.dictionaries(
    st.sampled_from("gull crab seal puffin whelk limpet otter".split()), st.integers(1, 12), min_size=2
)


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.data["parts"] for answer in solution.answers] == [[3, 5, 12], [3, 7, 10], [5, 7, 8]]
    assert fits(solution, 2)
    assert "20 groups of three to try" in solution.note


@given(
    st.integers(0, 30), st.integers(2, 4), st.integers(0, 4), st.integers(0, 30), st.sampled_from([1, 1, 2, 5, 10]),
    st.booleans(), st.booleans(),
)  # fmt: skip
def test_every_way_is_found_in_order(
    whole: int, parts: int, least: int, most: int, step: int, different: bool, counts: bool
) -> None:
    values = [n for n in range(least, min(most, whole) + 1) if n % step == 0]
    expected = sorted(
        list(way)
        for way in product(values, repeat=parts)
        if sum(way) == whole
        and (counts or list(way) == sorted(way))
        and not (different and len(set(way)) < len(way))
    )  # fmt: skip
    data = {"whole": whole, "parts": parts, "smallest": least, "largest": most, "step": step, "different": different}
    data["order"] = "counts" if counts else "same"
    if len(expected) > 500:
        refused(KIND, data, rule="activity-too-many-answers")
    else:
        assert [answer["parts"] for answer in answers_of(KIND, data)] == expected


@given(st.integers(1, 40), st.integers(1, 4), st.integers(0, 3))
@settings(max_examples=60, deadline=None)
def test_as_many_ways_as_the_generating_function_counts(whole: int, parts: int, least: int) -> None:
    # Partitions of the rest into at most so many parts are partitions into parts of at most that size.
    rest = whole - parts * least
    counts = [1] + [0] * max(rest, 0)
    for size in range(1, parts + 1):
        for n in range(size, len(counts)):
            counts[n] += counts[n - size]
    found = sum(1 for _ in Split(parts, least, whole).ways(whole))
    assert found == (counts[rest] if rest >= 0 else 0)
    in_order = comb(rest + parts - 1, parts - 1) if rest >= 0 else 0
    data = {"whole": whole, "parts": max(2, parts), "smallest": least, "order": "counts"}
    if parts > 1 and in_order <= 500:
        assert len(answers_of(KIND, data)) == in_order


@given(CAST, st.integers(2, 4), st.integers(2, 30))
@settings(max_examples=60, deadline=None)
def test_every_group_of_the_cast_is_found(values: dict[str, int], parts: int, whole: int) -> None:
    cast = {name: {"stones": value} for name, value in values.items()}
    data = {"whole": whole, "parts": parts, "fact": "stones", "cast": cast}
    if len(values) < parts:
        refused(KIND, data, rule="activity-cannot-be")
        return
    expected = [
        [name for place, name in enumerate(values) if mask >> place & 1]
        for mask in range(1 << len(values))
        if mask.bit_count() == parts
        and sum(value for place, value in enumerate(values.values()) if mask >> place & 1) == whole
    ]
    found = [answer["who"] for answer in answers_of(KIND, data)]
    assert sorted(found) == sorted(expected)
    places = [[list(values).index(name) for name in who] for who in found]
    assert places == sorted(places)
    whole_of = answers_of(KIND, {**data, "whole": next(iter(values)), "parts": 2}) if len(values) > 2 else []
    others = list(values)[1:]
    assert len(whole_of) == sum(
        values[a] + values[b] == next(iter(values.values())) for a, b in combinations(others, 2) if len(values) > 2
    )


def test_holders_get_every_share_and_known_parts_leave_the_rest() -> None:
    cast: dict[str, dict[str, int]] = {"gull": {}, "crab": {}}
    solution = solved(KIND, {"whole": 3, "things": "shells", "cast": cast})
    assert [answer.says for answer in solution.answers] == [
        "Gull has 0 shells and crab has 3 shells",
        "Gull has 1 shell and crab has 2 shells",
        "Gull has 2 shells and crab has 1 shell",
        "Gull has 3 shells and crab has 0 shells",
    ]
    assert solution.likely_error
    assert solution.likely_error.gives == "2 instead of 4."
    assert answers_of(KIND, {"whole": 12, "known": [9]}) == [{"whole": 12, "parts": [9, 3]}]
    assert answers_of(KIND, {"known": [8, 5]}) == [{"whole": 13, "parts": [8, 5]}]
    assert [a["parts"] for a in answers_of(KIND, {"whole": 12, "known": [9], "parts": 3})] == [[9, 0, 3], [9, 1, 2]]


@pytest.mark.parametrize(
    ("data", "why"),
    [
        ({"whole": 95, "step": 10}, "never comes to 95"),
        ({"whole": 9, "largest": 4}, "Even the largest parts make 8"),
        ({"whole": 4, "smallest": 4}, "Even the smallest parts make 8"),
        ({"whole": 6, "known": [3], "different": True}, "the same as one that is known"),
    ],
)
def test_where_there_is_none_the_note_says_why(data: dict[str, object], why: str) -> None:
    solution = solved(KIND, data)
    assert not solution.answers
    assert why in solution.note


def test_the_count_of_triples_is_added_up() -> None:
    assert "4 + 3 + 1 = 8" in solved(KIND, {"whole": 7, "parts": 3}).note
    likely_error = solved(KIND, {"whole": 7}).likely_error
    assert likely_error
    assert likely_error.gives == "8 instead of 4."


@pytest.mark.parametrize("bad", BAD_NUMBERS, ids=range(len(BAD_NUMBERS)))
def test_bad_values_are_refused_in_plain_words(bad: object) -> None:
    cast = {"gull": {"stones": 3}, "crab": {"stones": bad}, "seal": {"stones": 2}}
    for data in (
        {"whole": bad},
        {"whole": bad, "fact": "stones", "cast": cast},
        {"whole": 5, "fact": "stones", "cast": cast},
        *({"whole": 12, name: bad} for name in ("parts", "smallest", "largest", "step", "different", "known", "order")),
        {"whole": 12, "known": [bad]},
        {"known": [bad, 3]},
        {"whole": 12, "cast": bad},
        {"whole": 12, "things": bad},
    ):
        never_breaks(KIND, data)


def test_what_cannot_be_is_refused() -> None:
    cast = {"gull": {"stones": 3}, "crab": {"stones": 4}}
    refused(KIND, {}, rule="activity-broken")
    refused(KIND, {"whole": 9_999_999, "parts": 5}, rule="activity-too-many-answers")
    refused(KIND, {"whole": 1000}, rule="activity-too-many-answers")
    refused(KIND, {"whole": "seal"}, rule="activity-broken")
    refused(KIND, {"whole": "seal", "fact": "stones", "cast": cast}, rule="activity-fact-missing")
    refused(KIND, {"whole": 7, "fact": "stones"}, rule="activity-cannot-be")
    refused(KIND, {"whole": 7, "fact": "shells", "cast": cast}, rule="activity-fact-missing")
    refused(KIND, {"whole": 7, "fact": "stones", "parts": 3, "cast": cast}, rule="activity-cannot-be")
    refused(KIND, {"whole": 7, "fact": "stones", "smallest": 3, "cast": cast}, rule="activity-broken")
    refused(KIND, {"whole": 7, "known": [4, 4], "parts": 3}, rule="activity-cannot-be")
    refused(KIND, {"whole": 7, "known": [4, 3]}, rule="activity-cannot-be")
    refused(KIND, {"known": [9_000_000, 9_000_000]}, rule="activity-cannot-be")
    refused(KIND, {"whole": 7, "cast": {f"crab-{n}": {} for n in range(6)}}, rule="activity-cannot-be")
    assert never_breaks(KIND, {"whole": 9_999_999, "parts": 5, "largest": 2_000_001})


@pytest.mark.parametrize("year", range(7))
@pytest.mark.parametrize(
    "data",
    [
        {"whole": 7},
        {"whole": 40, "step": 10},
        {"whole": 12, "known": [9]},
        {"known": [8, 5]},
        {"whole": 7, "things": "shells", "cast": {"gull": {}, "crab": {}}},
        KIND.example,
    ],
    ids=["pairs", "tens", "part", "whole", "shared", "cast"],
)
def test_versions_fit_their_year_and_keep_the_order(data: dict[str, object] | str, year: int) -> None:
    found = first_version(KIND, data, year)
    assert found
    fields, context, _, _ = found
    if fields.fact:
        stones = [character.facts["stones"] for character in context.characters]
        assert stones == sorted(set(stones))


def test_versions_are_the_same_every_time() -> None:
    cast = {f"crab-{n}": {"stones": n + 2} for n in range(12)}
    fields, context = read(KIND, {"whole": 40, "parts": 5, "fact": "stones", "cast": cast})
    limits = the_reference().years[3]
    first = [(changed.whole, there.characters) for changed, there, _ in KIND.versions(fields, context, limits)]
    assert first == [(changed.whole, there.characters) for changed, there, _ in KIND.versions(fields, context, limits)]


@pytest.mark.parametrize("whole", range(2, 14))
def test_the_note_tells_which_part_is_left_out(whole: int) -> None:
    cast: dict[str, dict[str, int]] = {"gull": {}, "crab": {}}
    solution = solved(KIND, {"whole": whole, "different": True, "cast": cast})
    firsts = {answer.data["parts"][0] for answer in solution.answers}
    out = [first for first in range(max(firsts)) if first not in firsts]
    assert f"Only {out[0]} is left out" in solution.note if out else "left out" in solution.note


def test_a_slip_gives_something_else_than_the_answer() -> None:
    for data in ({"known": [0, 7]}, {"whole": 7, "known": [0]}):
        assert solved(KIND, data).likely_error is None
