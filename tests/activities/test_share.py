"""Sharing held against dealing out one thing at a time and against every number of groups tried."""

from __future__ import annotations

import pytest
from activities.contexts import the_reference
from activities.trials import BAD_NUMBERS, answers_of, first_version, fits, never_breaks, read, refused, solved
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.share import KIND
from storymaths.activities.work_out import work_out

NAMES = "gull crab seal puffin whelk limpet otter heron cod tern dab eel".split()
TOTALS, GROUPS = st.integers(1, 200), st.integers(1, 25)


def dealt(total: int, hands: list[int]) -> tuple[list[int], int]:
    """Deals rounds, so many to each hand a round, while a whole round can be dealt."""
    got, round_ = [0] * len(hands), sum(hands)
    while total >= round_:
        total -= round_
        got = [have + more for have, more in zip(got, hands, strict=True)]
    return got, total


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.data["groups"] for answer in solution.answers] == [2, 4, 5, 10]
    assert fits(solution, 2)


@given(TOTALS, GROUPS, st.integers(0, 3))
def test_sharing_and_grouping_are_dealing_out(total: int, groups: int, year: int) -> None:
    got, left = dealt(total, [1] * groups)
    expected = {"groups": groups, "each": got[0], "left": left}
    assert answers_of(KIND, {"total": total, "among": groups}, year) == [expected]
    [grouped] = answers_of(KIND, {"total": total, "each": groups}, year)
    assert grouped == {"groups": got[0], "each": groups, "left": left}
    [back] = answers_of(KIND, {"among": groups, "each": total}, year)
    assert back["total"] == sum([total] * groups)


@given(TOTALS, st.integers(0, 6), st.integers(1, 6), st.integers(1, 60))
@settings(max_examples=100, deadline=None)
def test_every_way_is_one_that_filling_groups_of_every_size_finds(
    total: int, left: int, fewest: int, most: int
) -> None:
    data = {"total": total, "left_over": left, "fewest": fewest, "most": most}
    if fewest > most or left >= total:
        refused(KIND, data, rule="activity-cannot-be")
        return
    ways = []
    for size in range(1, total + 1):
        groups, over = 0, total
        while over >= size:  # fill one group after another, as far as they go
            groups, over = groups + 1, over - size
        if over == left and fewest <= groups <= most:
            ways.append({"groups": groups, "each": size, "left": left})
    assert answers_of(KIND, data) == sorted(ways, key=lambda way: way["groups"])


@given(st.lists(st.integers(1, 60), min_size=1, max_size=8), st.integers(1, 9), st.integers(0, 3), st.booleans())
@settings(max_examples=100, deadline=None)
def test_piles_are_those_that_can_be_dealt(piles: list[int], by: int, left: int, among: bool) -> None:
    data = {"piles": piles, "among" if among else "each": by, "left_over": left}
    if left >= by:
        refused(KIND, data, rule="activity-cannot-be")
        return
    expected = [pile for pile in piles if dealt(pile, [1] * by)[1] == left and pile >= by]
    assert [answer["pile"] for answer in answers_of(KIND, data)] == expected
    cast = {name: {"shells": pile} for name, pile in zip(NAMES, piles, strict=False)}
    own = {"fact": "shells", "cast": cast, **{name: data[name] for name in data if name != "piles"}}
    assert [answer["who"] for answer in answers_of(KIND, own)] == [
        name for name, pile in zip(NAMES, piles, strict=False) if pile in expected
    ]


@given(TOTALS, st.dictionaries(st.sampled_from(NAMES), st.integers(1, 5), min_size=2, max_size=5))
@settings(max_examples=100, deadline=None)
def test_parts_are_dealt_in_rounds(total: int, parts: dict[str, int]) -> None:
    got, left = dealt(total, list(parts.values()))
    cast: dict[str, dict[str, int]] = {name: {} for name in parts}
    [answer] = answers_of(KIND, {"total": total, "parts": parts, "cast": cast}, 3)
    assert answer == {"gets": dict(zip(parts, got, strict=True)), "left": left}
    [equal] = answers_of(KIND, {"total": total, "cast": cast}, 3)
    fair, rest = dealt(total, [1] * len(parts))
    assert equal["gets"] == dict(zip(parts, fair, strict=True))
    assert equal["left"] == rest


def test_it_is_said_in_the_signs_of_the_year() -> None:
    data = {"among": 2, "each": 5, "things": "eggs"}
    reception, first, second = (solved(KIND, data, year) for year in (0, 1, 2))
    assert not reception.task.lines
    assert not reception.demands.signs
    assert [str(line) for line in first.task.lines] == ["5 + 5 = ___"]
    assert [str(line) for line in second.task.lines] == ["2 × 5 = ___"]
    assert [fits(solution, year) for year, solution in enumerate((reception, first, second))] == [True] * 3


def test_slips_and_notes_are_worked_out() -> None:
    for data, gives in (
        ({"total": 14, "among": 3}, "5 for some, 4 for others."),
        ({"total": 33, "each": 5}, "7 groups."),
        ({"among": 3, "each": 4}, "7."),
        ({"total": 12}, "3 instead of 6."),
        ({"piles": [6, 21, 12], "among": 2}, "21 as well."),
    ):
        likely_error = solved(KIND, data).likely_error
        assert likely_error
        assert likely_error.gives == gives
    assert "21 leaves 1" in solved(KIND, {"piles": [6, 21, 12], "among": 2}).note
    none = solved(KIND, {"total": 9, "fewest": 4, "most": 8})
    assert not none.answers
    assert "from 4 to 8" in none.note


@pytest.mark.parametrize("bad", BAD_NUMBERS, ids=range(len(BAD_NUMBERS)))
def test_bad_values_are_refused_in_plain_words(bad: object) -> None:
    cast = {"gull": {"shells": 3}, "crab": {"shells": bad}}
    for data in (
        *({"total": 12, name: bad} for name in ("total", "among", "each", "left_over", "fewest", "most", "things")),
        {"piles": bad, "among": 2},
        {"piles": [bad], "among": 2},
        {"piles": [4], "among": bad},
        {"total": 12, "parts": bad, "cast": cast},
        {"total": 12, "parts": {"gull": bad, "crab": 1}, "cast": cast},
        {"fact": "shells", "among": 2, "cast": cast},
        {"total": "crab", "fact": "shells", "among": 2, "cast": cast},
        {"total": 12, "cast": bad},
    ):
        never_breaks(KIND, data)


def test_what_cannot_be_is_refused() -> None:
    cast = {"gull": {"shells": 3}, "crab": {"shells": 4}}
    assert "greater than or equal to 1" in refused(KIND, {"total": 5, "among": 0}, rule="activity-broken")
    refused(KIND, {"total": 0, "among": 2}, rule="activity-cannot-be")
    refused(KIND, {"total": 10**9, "among": 2}, rule="activity-cannot-be")
    refused(KIND, {"among": 9999, "each": 9999}, rule="activity-cannot-be")
    refused(KIND, {"each": 9}, rule="activity-broken")
    refused(KIND, {"total": 9, "among": 3, "each": 3}, rule="activity-broken")
    refused(KIND, {"total": 9, "among": 3, "most": 3}, rule="activity-broken")
    refused(KIND, {"total": 9, "among": 3, "cast": cast}, rule="activity-cannot-be")
    refused(KIND, {"piles": [9]}, rule="activity-broken")
    refused(KIND, {"piles": [9], "among": 2, "fact": "shells", "cast": cast}, rule="activity-broken")
    refused(KIND, {"fact": "shells", "among": 2}, rule="activity-fact-missing")
    refused(KIND, {"fact": "eggs", "among": 2, "cast": cast}, rule="activity-fact-missing")
    refused(KIND, {"total": "seal", "fact": "shells", "among": 2, "cast": cast}, rule="activity-fact-missing")
    refused(KIND, {"total": "seal", "among": 2}, rule="activity-fact-missing")
    refused(KIND, {"total": 9, "parts": {"gull": 1, "seal": 2}, "cast": cast}, rule="activity-fact-missing")
    refused(KIND, {"total": 9, "parts": {"gull": 1}, "cast": cast}, rule="activity-cannot-be")
    assert never_breaks(KIND, {"total": 720_720})
    assert never_breaks(KIND, {"total": 9_999_991})


VERSIONS = {
    "each": {"total": 14, "among": 3},
    "groups": {"total": 30, "each": 5},
    "total": {"among": 4, "each": 5},
    "ways": {"total": 12},
    "piles": {"piles": [6, 7, 12, 21], "among": 2},
    "parts": {"total": 12, "parts": {"gull": 2, "crab": 1}, "cast": {"gull": {}, "crab": {}}},
    "cast": {"total": 12, "cast": {"gull": {}, "crab": {}, "seal": {}}},
    "whose": {"fact": "shells", "among": 2, "cast": {"gull": {"shells": 12}, "crab": {"shells": 7}}},
}


@pytest.mark.parametrize("year", range(7))
@pytest.mark.parametrize("data", VERSIONS.values(), ids=VERSIONS)
def test_versions_fit_their_year_and_keep_the_order(data: dict[str, object], year: int) -> None:
    found = first_version(KIND, data, year)
    assert found
    fields, context, _, solution = found
    before = answers_of(KIND, data)
    if "left" in before[0] and before[0]["left"]:
        assert solution.answers[0].data["left"]
    piles = data.get("piles")
    if isinstance(piles, list):
        assert [sorted(piles).index(pile) for pile in piles] == [sorted(fields.piles).index(p) for p in fields.piles]
    if fields.fact:
        shells = [int(character.facts["shells"]) for character in context.characters]
        assert shells == sorted(shells, reverse=True)


def test_versions_are_the_same_every_time() -> None:
    cast = {name: {"shells": at + 3} for at, name in enumerate(NAMES)}
    for data in (*VERSIONS.values(), {"fact": "shells", "among": 2, "cast": cast}):
        fields, context = read(KIND, data)
        limits = the_reference().years[3]
        first = [(changed, there.characters) for changed, there, _ in KIND.versions(fields, context, limits)]
        assert first == [(changed, there.characters) for changed, there, _ in KIND.versions(fields, context, limits)]


def test_what_is_left_over_could_not_make_another_group() -> None:
    ways = answers_of(KIND, {"total": 13, "left_over": 3})
    assert [(way["groups"], way["each"]) for way in ways] == [(1, 10), (2, 5)]


def test_a_version_keeps_piles_apart_that_differ() -> None:
    data = {"piles": [28, 29, 24], "each": 6}
    for year in (1, 2, 3):
        version = first_version(KIND, data, year, home=3)
        if version is not None:
            assert len(set(version[0].piles)) == 3, version


def test_heaps_that_the_author_does_not_name_stand_below_the_question() -> None:
    halve = "kind: share\ntitle: Halves\npiles: [14, 15, 60]\namong: 2\nthings: tubs\nask: {}\n"

    def lines(ask: str) -> list[str]:
        done = work_out(halve.format(ask), "page.md", 1, None, 2, the_reference()).done
        assert done is not None
        return [str(line) for line in done.solution.task.lines]

    assert lines("Which of these can be halved?") == ["14, 15, 60"]
    assert lines("Which of 14, 15 and 60 can be halved?") == []
