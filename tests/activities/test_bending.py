"""Versions for other years: pins are kept, years fit, the same comes out each time, and nothing takes long."""

from __future__ import annotations

from typing import Any

import pytest
from activities.contexts import the_reference
from activities.trials import read, stands
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.balance import KIND as BALANCE
from storymaths.activities.bending import Version, year_version
from storymaths.activities.fit import misfits
from storymaths.activities.kind import Kind, Unsolvable
from storymaths.activities.table import KINDS

MASSES = {"gull": 2, "crab": 3, "puffin": 5, "limpet": 6, "seal": 9}
CAST = {name: {"mass": mass} for name, mass in MASSES.items()}


def version(year: int, pins: dict[str, Any], kind: Kind[Any] = BALANCE, **data: Any) -> Version:
    fields, context = read(kind, {"cast": CAST, **data})
    made = year_version(kind, fields, context, kind.solve(fields, context), year, pins, the_reference())
    stands(made.solution)
    assert misfits(made.solution.demands, the_reference().years[year], the_reference()) == []
    return made


def refusal(year: int, pins: dict[str, Any], **data: Any) -> Unsolvable:
    with pytest.raises(Unsolvable) as caught:
        version(year, pins, **data)
    assert caught.value.loc[:2] == ("years", year)
    return caught.value


def masses(made: Version) -> dict[str, Any]:
    return {character.id: character.facts["mass"] for character in made.context.characters}


def test_the_largest_number_is_kept() -> None:
    made = version(1, {"largest": 10})
    assert made.solution.demands.largest <= 10
    assert len(made.solution.answers) == 4
    assert made.changed == "Other numbers, in the same order; the same teams are level."
    assert made.context.year.year == 1


def test_pinned_fields_are_kept_and_the_rest_is_searched_for() -> None:
    made = version(3, {"unit": "kg", "teams": 2})
    assert made.fields.unit == "kg"  # type: ignore[attr-defined]
    assert made.fields.teams == 2  # type: ignore[attr-defined]
    assert made.solution.demands.units == {"kg"}
    assert made.solution.demands.largest > 20


def test_pinned_facts_are_kept() -> None:
    made = version(2, {"facts": {"gull": 1, "seal": 10}})
    assert masses(made) == {**MASSES, "gull": 1, "seal": 10}
    assert version(1, {"facts": {"gull": {"mass": 4}}}).context.characters[0].facts["mass"] == 4


def test_fewer_characters_may_be_pinned() -> None:
    made = version(1, {"cast": ["gull", "crab", "puffin"]})
    assert list(masses(made)) == ["gull", "crab", "puffin"]


def test_a_pinned_number_of_answers_is_what_is_looked_for() -> None:
    assert len(version(3, {"answers": 2}).solution.answers) == 2
    assert 2 <= len(version(3, {"wished": [2, 3]}).solution.answers) <= 3


def test_where_there_is_none_by_intention_there_is_none_in_any_year() -> None:
    made = version(3, {}, cast={"gull": {"mass": 4}, "crab": {"mass": 9}}, answers=0)
    assert made.solution.answers == ()


def test_a_version_that_cannot_be_says_why() -> None:
    problem = refusal(1, {"largest": 3})
    assert problem.rule == "activity-no-version"
    assert problem.message == (
        "No version for Year 1 was found. With these numbers, it has 9, and Year 1 meets numbers to 3."
    )


@pytest.mark.parametrize(
    ("pins", "rule", "says"),
    [
        ({"unti": "kg"}, "activity-broken", 'Did you mean "unit"?'),
        ({"teams": "fve"}, "activity-broken", '"teams" cannot be pinned like that'),
        ({"largest": "ten"}, "activity-cannot-be", "whole number"),
        ({"largest": 0}, "activity-cannot-be", "whole number"),
        ({"largest": True}, "activity-cannot-be", "whole number"),
        ({"facts": {"gul": 3}}, "activity-fact-missing", 'Did you mean "gull"?'),
        ({"facts": 3}, "activity-cannot-be", "`id: value`"),
        ({"facts": {"gull": None}}, "activity-cannot-be", "missing"),
        ({"facts": {"gull": 10**9}}, "activity-cannot-be", "too large"),
        ({"cast": ["gul"]}, "activity-fact-missing", 'Did you mean "gull"?'),
        ({"cast": "gull"}, "activity-cannot-be", "list of ids"),
        ({"kind": "order"}, "activity-broken", "cannot be pinned"),
        ({"years": {}}, "activity-broken", "cannot be pinned"),
    ],
)
def test_pins_that_mean_nothing(pins: dict[str, Any], rule: str, says: str) -> None:
    problem = refusal(2, pins)
    assert problem.rule == rule
    assert says in problem.message


@given(
    st.dictionaries(st.sampled_from("abcdefgh"), st.integers(1, 30), min_size=8, max_size=8),
    st.integers(1, 6),
    st.sampled_from(["any", "all", 2]),
)
@settings(max_examples=40, deadline=None)
def test_eight_characters_take_less_than_a_second_and_come_out_the_same(
    cast: dict[str, int], year: int, teams: object
) -> None:
    data = {"cast": {name: {"mass": mass} for name, mass in cast.items()}, "teams": teams, "at_most": 500}
    try:
        made = version(year, {}, **data)
    except Unsolvable as problem:
        assert problem.rule in ("activity-no-version", "activity-too-many-answers")  # noqa: PT017
        return
    assert 1 <= len(made.solution.answers) <= 12
    assert masses(version(year, {}, **data)) == masses(made)


@pytest.mark.parametrize("name", list(KINDS))
def test_every_kinds_example_has_versions_and_can_be_pinned(name: str) -> None:
    kind = KINDS[name]
    fields, context = read(kind, kind.example)
    own = context.year.year
    found = []
    for year in range(1, 7):
        if year == own:
            continue
        try:
            made = year_version(
                kind, fields, context, kind.solve(fields, context), year, {"title": "Another"}, the_reference()
            )
        except Unsolvable:
            continue
        assert made.fields.title == "Another"
        assert misfits(made.solution.demands, the_reference().years[year], the_reference()) == []
        found.append(year)
    assert own + 1 in found or own == 6


def test_numbers_chosen_for_a_year_come_before_any_that_are_searched_for() -> None:
    data = {"cast": {}, "sentences": ["52 = 50 + ___"]}
    for year, sentence in ((1, "15 = 10 + ___"), (3, "152 = 150 + ___")):
        made = version(year, {"sentences": [sentence]}, KINDS["number-sentence"], **data)
        assert list(made.fields.sentences) == [sentence]  # type: ignore[attr-defined]
        assert made.changed == "Chosen by the author for this year."
    assert version(1, {"ask": "Which number?"}, KINDS["number-sentence"], **data).changed != made.changed
