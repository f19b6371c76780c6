"""Balances held against every placing of every character, and against a generating function."""

from __future__ import annotations

from collections import Counter
from itertools import product
from typing import Any

import pytest
from activities.contexts import a_context, the_reference
from activities.trials import BAD_NUMBERS, answers_of, first_version, fits, never_breaks, read, refused, solved
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.balance import KIND
from storymaths.activities.balance.search import ANYWHERE, Question, every_balance
from storymaths.activities.kind import Unsolvable
from storymaths.parse.number_sentence import find_number_sentences

NAMES = "gull crab seal puffin whelk limpet otter heron".split()
CASTS = st.dictionaries(st.sampled_from(NAMES), st.integers(1, 15), min_size=2, max_size=6)


def with_cast(masses: dict[str, int], **fields: Any) -> dict[str, Any]:
    return {"cast": {name: {"mass": mass} for name, mass in masses.items()}, "at_most": 500, **fields}


def by_hand(masses: dict[str, int], **fields: Any) -> set[tuple[frozenset[str], frozenset[str]]]:
    """Every placing of everybody on the left, on the right or out, kept where it does what is asked."""
    start = fields.get("start")
    given_side, given_character = (fields.get("given", {}).get(key) for key in ("side", "player"))
    labelled = bool(start or given_side or given_character)
    found = set()
    for places in product("lro", repeat=len(masses)):
        sides = {side: frozenset(n for n, p in zip(masses, places, strict=True) if p == side) for side in "lro"}
        left, right, out = sides["l"], sides["r"], sides["o"]
        if not left or not right or sum(map(masses.get, left)) != sum(map(masses.get, right)):
            continue
        if fields.get("teams") == "all" and out:
            continue
        if isinstance(fields.get("teams"), int) and not len(left) == len(right) == fields["teams"]:
            continue
        if given_side and left != set(given_side):
            continue
        if given_character and given_character not in left:
            continue
        if start and not _starts(start, left, right, masses, fields.get("joining", "lighter")):
            continue
        if not labelled and next(name for name in masses if name in left | right) not in left:
            continue
        found.add((left, right))
    return found


def _starts(start: Any, left: frozenset[str], right: frozenset[str], masses: dict[str, int], joining: str) -> bool:
    before = set(start["left"]), set(start.get("right", ()))
    if not (before[0] <= left and before[1] <= right):
        return False
    tilt = sum(masses[n] for n in before[0]) - sum(masses[n] for n in before[1])
    heavier = (left, before[0]) if tilt > 0 else (right, before[1])
    return joining == "either" or heavier[0] == heavier[1]


def teams(data: list[dict[str, Any]]) -> set[tuple[frozenset[str], frozenset[str]]]:
    found = [(frozenset(answer["left"]), frozenset(answer["right"])) for answer in data]
    assert len(found) == len(set(found))
    return set(found)


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.says for answer in solution.answers] == [
        "gull + crab = puffin",
        "gull + limpet = crab + puffin",
        "crab + limpet = seal",
        "gull + seal = puffin + limpet",
    ]
    assert solution.answers[1].worked == "2 + 6 = 3 + 5, because both sides come to 8."
    assert fits(solution, 2)
    assert (solution.steps, solution.difficulty) == (3, 6)


@given(CASTS, st.sampled_from(["any", "all", 1, 2]))
def test_all_ways_are_found_and_no_other(masses: dict[str, int], wanted: str | int) -> None:
    if isinstance(wanted, int) and 2 * wanted > len(masses):
        refused(KIND, with_cast(masses, teams=wanted))
        return
    asked = with_cast(masses, teams=wanted)
    solution = solved(KIND, asked)
    data = [dict(answer.data) for answer in solution.answers]
    assert teams(data) == by_hand(masses, teams=wanted)
    for answer in data:
        assert answer["total"] == sum(masses[n] for n in answer["left"]) == sum(masses[n] for n in answer["right"])
    assert [answer["total"] for answer in data] == sorted(answer["total"] for answer in data)


@given(CASTS, st.data())
@settings(max_examples=200, deadline=None)
def test_what_is_given_is_kept(masses: dict[str, int], data: st.DataObject) -> None:
    names = st.sampled_from(list(masses))
    settled = data.draw(
        st.one_of(
            st.lists(names, min_size=1, max_size=2, unique=True).map(lambda side: {"side": side}),
            names.map(lambda character: {"player": character}),
        )
    )
    wanted = data.draw(st.sampled_from(["any", "all"]))
    assert teams(answers_of(KIND, with_cast(masses, given=settled, teams=wanted))) == by_hand(
        masses, given=settled, teams=wanted
    )


@given(CASTS, st.data())
def test_who_levels_an_unfair_start(masses: dict[str, int], data: st.DataObject) -> None:
    names = data.draw(st.permutations(list(masses)))
    left = names[: data.draw(st.integers(1, 2))]
    right = names[len(left) : len(left) + data.draw(st.integers(0, 2))]
    asked: dict[str, Any] = {
        "start": {"left": left, "right": right},
        "joining": data.draw(st.sampled_from(["lighter", "either"])),
        "teams": data.draw(st.sampled_from(["any", "all"])),
    }
    if sum(masses[n] for n in left) == sum(masses[n] for n in right):
        assert "level already" in refused(KIND, with_cast(masses, **asked))
        return
    assert teams(answers_of(KIND, with_cast(masses, **asked))) == by_hand(masses, **asked)


def number_of_balances(masses: list[int]) -> int:
    """The coefficient of x⁰ in ∏(xᵐ + 1 + x⁻ᵐ), without the empty teams, halved for mirror images."""
    series = Counter({0: 1})
    for mass in masses:
        grown: Counter[int] = Counter()
        for power, count in series.items():
            for shift in (-mass, 0, mass):
                grown[power + shift] += count
        series = grown
    return (series[0] - 1) // 2


@given(st.lists(st.integers(1, 200), min_size=2, max_size=12))
@settings(max_examples=150, deadline=None)
def test_the_number_of_ways_is_the_generating_functions(masses: list[int]) -> None:
    found = every_balance(Question(tuple(masses), (ANYWHERE,) * len(masses)))
    assert len(found) == len(set(found)) == number_of_balances(masses)


def test_twelve_characters_take_a_moment() -> None:
    question = Question(tuple(range(1, 13)), (ANYWHERE,) * 12)
    found = every_balance(question)
    assert len(found) == number_of_balances(list(range(1, 13)))


@pytest.mark.parametrize(
    ("masses", "fields", "says"),
    [
        ({"gull": 2, "crab": 3, "seal": 4}, {"teams": "all"}, "9, which is odd"),
        ({"gull": 2, "crab": 3, "seal": 9}, {"teams": "all"}, "Seal alone has 9, and all the others together only 5"),
        ({"gull": 3, "crab": 3, "seal": 3, "otter": 1}, {"teams": "all"}, "the nearest that can be made are 4 and 6"),
        ({"gull": 4, "crab": 9}, {}, "no two have the same, unless somebody is in both"),
        ({"gull": 4, "crab": 9, "otter": 6}, {"start": {"left": ["crab"], "right": ["gull"]}}, "the difference is 5"),
        ({"gull": 4, "crab": 9}, {"given": {"side": ["crab"]}}, "9 is needed on the other side"),
    ],
)
def test_why_there_is_none(masses: dict[str, int], fields: dict[str, Any], says: str) -> None:
    solution = solved(KIND, with_cast(masses, **fields))
    assert solution.answers == ()
    assert says in solution.note


def test_the_slip_is_worked_out_from_the_numbers() -> None:
    likely_error = solved(KIND, with_cast({"gull": 2, "crab": 5, "seal": 4, "otter": 6})).likely_error
    assert likely_error is not None
    assert likely_error.gives == "gull + crab against seal + otter, 2 on each side: 2 + 5 ≠ 4 + 6, because 7 is not 10."
    assert solved(KIND, with_cast({"gull": 4, "crab": 4})).likely_error is None


def test_units_are_said_with_every_amount_and_nouns_only_in_words() -> None:
    cast = {"gull": 2, "crab": 3, "seal": 5}
    kilograms = solved(KIND, with_cast(cast, unit="kg"))
    assert kilograms.answers[0].worked == "2 kg + 3 kg = 5 kg."
    assert kilograms.demands.units == {"kg"}
    buttons = solved(KIND, with_cast(cast, unit="buttons"))
    assert buttons.answers[0].worked == "2 + 3 = 5."
    assert tuple(map(str, buttons.task.shows)) == ("2 buttons", "3 buttons", "5 buttons")
    assert "the same number of buttons" in buttons.task.ask


@pytest.mark.parametrize("bad", BAD_NUMBERS, ids=range(len(BAD_NUMBERS)))
def test_bad_values_are_refused_in_plain_words(bad: object) -> None:
    never_breaks(KIND, {"cast": {"gull": {"mass": bad}, "crab": {"mass": 3}}})
    for field in ("teams", "given", "start", "joining", "unit", "fact"):
        never_breaks(KIND, with_cast({"gull": 2, "crab": 3}, **{field: bad}))
        never_breaks(KIND, with_cast({"gull": 2, "crab": 3}, given={"side": [bad]}))
        never_breaks(KIND, with_cast({"gull": 2, "crab": 3}, start={"left": [bad]}))


@pytest.mark.parametrize(
    ("fields", "says"),
    [
        (with_cast({}), "at least two characters"),
        (with_cast({"gull": 0, "crab": 3}), "The mass of gull is 0."),
        (with_cast({"gull": 10**9, "crab": 3}), "The mass of gull is 1,000,000,000."),
        (with_cast({"gull": 2, "crab": 3}, fact="legs"), 'no fact "legs"'),
        (with_cast({"gull": 2, "crab": 3}, given={"side": ["gul"]}), 'Did you mean "gull"?'),
        (with_cast({"gull": 2, "crab": 3}, start={"left": ["gull"], "right": ["gull"]}), "level already"),
        (
            with_cast({"gull": 2, "crab": 3}, start={"left": ["gull", "crab"], "right": ["gull"]}),
            "on both sides at once",
        ),
        (
            with_cast({"gull": 2, "crab": 3}, given={"player": "gull"}, start={"left": ["gull"]}),
            "given\n  Extra inputs",
        ),
        (with_cast({"gull": 2, "crab": 3}, given={}), "given.side\n  Field required"),
        (with_cast({"gull": 2, "crab": 3}, teams=1, given={"side": ["gull", "crab"]}), "more than 1 on it"),
    ],
)
def test_what_cannot_be_is_said(fields: dict[str, Any], says: str) -> None:
    assert says in refused(KIND, fields)


def test_more_ways_than_a_class_can_list() -> None:
    cast = {f"n{i}": {"mass": i + 1} for i in range(12)}
    assert "4,955 ways" in refused(KIND, {"cast": cast}, rule="activity-too-many-answers")


@pytest.mark.parametrize("year", range(1, 7))
def test_versions_fit_their_year_and_keep_the_storys_order(year: int) -> None:
    version = first_version(KIND, KIND.example, year)
    assert version is not None
    _, context, _, solution = version
    fields, before = read(KIND, KIND.example)
    old = [(str(fields.fact), int(character.facts["mass"])) for character in before.characters]
    new = [int(character.facts["mass"]) for character in context.characters]
    for (_, a), x in zip(old, new, strict=True):
        for (_, b), y in zip(old, new, strict=True):
            assert (a < b) == (x < y)
    assert [answer.says for answer in solution.answers] == [
        answer.says for answer in KIND.solve(fields, before).answers
    ]


def test_an_older_years_version_adds_across_ten() -> None:
    version = first_version(KIND, KIND.example, 3)
    assert version is not None
    sums = [s.text for answer in version[3].answers for s in find_number_sentences(answer.worked)]
    assert any(sum(int(n) % 10 for n in text.split("=")[0].split(" + ")) > 10 for text in sums)


@given(st.dictionaries(st.sampled_from(NAMES), st.integers(1, 30), min_size=3, max_size=8), st.integers(1, 6))
@settings(max_examples=40, deadline=None)
def test_versions_offered_come_out_and_are_the_same_each_time(masses: dict[str, int], year: int) -> None:
    fields, context = read(KIND, with_cast(masses))
    limits = the_reference().years[year]
    offered = [(s, why) for _, (_, s, why) in zip(range(3), KIND.versions(fields, context, limits), strict=False)]
    again = [(s, why) for _, (_, s, why) in zip(range(3), KIND.versions(fields, context, limits), strict=False)]
    assert offered == again
    for place, _ in offered:
        solution = KIND.solve(fields, place)
        assert 1 <= len(solution.answers) <= 12
        assert solution.demands.largest <= limits.largest_number
        assert max(solution.demands.calculated, default=0) <= limits.largest_calculated


def test_the_scene_is_left_as_it_was() -> None:
    context = a_context(gull=2, crab=3, seal=5)
    before = repr(context)
    list(
        zip(
            range(5),
            KIND.versions(KIND.tasks[0](kind="balance", title="x"), context, the_reference().years[3]),
            strict=False,
        )
    )
    assert repr(context) == before


@given(CASTS, st.data())
@settings(max_examples=200, deadline=None)
def test_the_slip_keeps_to_what_is_asked(masses: dict[str, int], data: st.DataObject) -> None:
    cast = {name: {"mass": mass} for name, mass in masses.items()}
    names = data.draw(st.permutations(list(masses)))
    task = data.draw(
        st.sampled_from(
            [{"teams": 2}, {"teams": 1}, {"teams": "all"}, {}, {"given": {"side": names[:2]}}, {"given": {"player": names[0]}},
             {"start": {"left": names[:2], "right": names[2:3]}}]
        )
    )  # fmt: skip
    try:
        solution = solved(KIND, {"cast": cast, **task})
    except Unsolvable:
        return
    if solution.likely_error is None:
        return
    sides = solution.likely_error.gives.partition(",")[0].split(" against ")
    left, right = (side.split(" + ") for side in sides)
    assert len(left) == len(right) > 1
    assert sum(masses[name] for name in left) != sum(masses[name] for name in right)
    match task:
        case {"teams": "all"}:
            assert len(left) + len(right) == len(masses)
        case {"teams": int() as size}:
            assert len(left) == size
        case {"given": {"side": side}}:
            assert sorted(left) == sorted(side)
        case {"given": {"player": player}}:
            assert player in left
        case {"start": start}:
            assert set(start["left"]) <= set(left)
            assert set(start["right"]) <= set(right)
