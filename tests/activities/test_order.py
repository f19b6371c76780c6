"""Orders held against every permutation, and against Python's own sorting."""

from __future__ import annotations

from itertools import combinations, groupby, permutations
from math import comb, factorial

import pytest
from activities.contexts import a_context
from activities.trials import BAD_NUMBERS, answers_of, first_version, fits, never_breaks, read, refused, solved
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.activities.kind import Unsolvable
from storymaths.activities.order import KIND
from storymaths.activities.order.clues import read_clue
from storymaths.activities.order.search import Orders, too_few_to_clash

NAMES = "gull crab seal puffin whelk limpet".split()
CASTS = st.dictionaries(st.sampled_from(NAMES), st.integers(1, 12), min_size=2, max_size=6)
PAIRS = st.permutations(NAMES)
CLUES = st.one_of(
    PAIRS.map(lambda p: f"{p[0]} > {p[1]}"),
    PAIRS.map(lambda p: f"{p[0]} < {p[1]} < {p[2]}"),
    PAIRS.map(lambda p: f"{p[0]} between {p[1]} and {p[2]}"),
    PAIRS.map(lambda p: f"{p[0]} next to {p[1]}"),
    PAIRS.map(lambda p: f"{p[0]} not next to {p[1]}"),
    PAIRS.map(lambda p: f"{p[0]} first"),
    PAIRS.map(lambda p: f"the {p[0]} is last"),
)


def holds(clue: str, order: tuple[str, ...]) -> bool:
    """A clue read a second way, by places in a row from least to most."""
    words = clue.removeprefix("the ").replace(" is ", " ").split()
    at = {name: index for index, name in enumerate(order)}
    if "between" in words:
        low, high = sorted((at[words[2]], at[words[4]]))
        return low < at[words[0]] < high
    if "not" in words:
        return abs(at[words[0]] - at[words[4]]) > 1
    if "next" in words:
        return abs(at[words[0]] - at[words[3]]) == 1
    if words[1] in ("first", "last"):
        return at[words[0]] == (0 if words[1] == "first" else len(order) - 1)
    places = [at[name] for name in words[::2]]
    return places == sorted(places, reverse=">" in words)


def without_facts(names: list[str]) -> dict[str, dict[str, int]]:
    return {name: {} for name in names}


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.says for answer in solution.answers] == [
        "limpet < crab < gull < seal",
        "limpet < seal < gull < crab",
    ]
    assert "they do not tell which of crab and seal has more." in solution.note
    assert fits(solution, 2)


@given(CASTS, st.booleans())
def test_the_order_of_a_fact_with_equals_together(masses: dict[str, int], falling: bool) -> None:
    cast = {name: {"mass": mass} for name, mass in masses.items()}
    asked = {"cast": cast, "fact": "mass", "starting": "most" if falling else "least"}
    ranked = sorted(masses, key=lambda name: masses[name], reverse=falling)
    groups = [sorted(group, key=list(masses).index) for _, group in groupby(ranked, key=lambda name: masses[name])]
    assert answers_of(KIND, asked) == [{"order": groups}]


@given(st.lists(CLUES, min_size=1, max_size=6))
def test_every_order_that_keeps_the_clues(clues: list[str]) -> None:
    expected = [order for order in permutations(NAMES) if all(holds(clue, order) for clue in clues)]
    asked = {"cast": without_facts(NAMES), "clues": clues, "at_most": 500}
    if not expected:
        assert "cannot all be true" in refused(KIND, asked)
        assert answers_of(KIND, {**asked, "answers": 0}) == []
    elif len(expected) > 500:
        refused(KIND, asked, rule="activity-too-many-answers")
    else:
        found = [tuple(group[0] for group in answer["order"]) for answer in answers_of(KIND, asked)]
        assert found == sorted(expected, key=lambda order: [NAMES.index(name) for name in order])


@given(st.lists(CLUES, min_size=2, max_size=6))
@settings(max_examples=100, deadline=None)
def test_clues_that_clash_are_named_and_no_others(texts: list[str]) -> None:
    characters = a_context(without_facts(NAMES)).characters
    clues = [read_clue(text, characters, True, ()) for text in texts]
    if Orders(len(NAMES), clues).number:
        return
    clash = too_few_to_clash(len(NAMES), clues)
    assert Orders(len(NAMES), clash).number == 0
    for fewer in combinations(clash, len(clash) - 1):
        assert Orders(len(NAMES), fewer).number > 0


def test_whether_the_clues_fix_one_and_which_is_idle() -> None:
    cast = without_facts(["gull", "crab", "seal"])
    one = solved(KIND, {"cast": cast, "clues": ["gull > crab", "crab > seal", "gull > seal"]})
    assert one.note == 'The clues fix one order. The clue "gull > seal" is not needed.'
    assert solved(KIND, {"cast": cast, "clues": ["gull > crab > seal"]}).note == "The clues fix one order."


def test_first_is_the_end_pupils_start_with_and_most_is_most() -> None:
    cast = without_facts(["gull", "crab", "seal"])
    for clue in ("gull first", "gull most", "the gull is the most", "gull has most"):
        asked = {"cast": cast, "clues": [clue, "crab > seal"], "starting": "most"}
        assert answers_of(KIND, asked) == [{"order": [["gull"], ["crab"], ["seal"]]}]


def test_clues_are_checked_by_the_facts_where_both_are_stated() -> None:
    cast = {"gull": {"mass": 12}, "crab": {"mass": 7}, "limpet": {"mass": 7}}
    solved(KIND, {"cast": cast, "fact": "mass", "clues": ["gull > crab"]})
    assert "gull has 12" in refused(KIND, {"cast": cast, "fact": "mass", "clues": ["crab > gull"]})
    assert "limpet has 7" in refused(KIND, {"cast": cast, "fact": "mass", "clues": ["crab > limpet"]})


def test_a_year_that_does_not_know_less_than_is_told_in_words() -> None:
    cast = without_facts(["gull", "crab", "seal"])
    solution = solved(KIND, {"cast": cast, "clues": ["gull > crab", "seal last"]}, year=1)
    assert str(solution.task.lines[0]) == "crab has less than gull"
    assert solution.answers[0].says == "crab, then gull, then seal"
    assert solution.demands.signs == frozenset()


def test_the_slip_of_looking_at_the_ones() -> None:
    cast = {name: {"mass": mass} for name, mass in {"gull": 19, "crab": 28, "seal": 37}.items()}
    likely_error = solved(KIND, {"cast": cast, "fact": "mass"}).likely_error
    assert likely_error is not None
    assert likely_error.gives == "37, 28, 19."


@pytest.mark.parametrize("bad", BAD_NUMBERS, ids=range(len(BAD_NUMBERS)))
def test_bad_values_are_refused_in_plain_words(bad: object) -> None:
    cast = {"gull": {"mass": 2}, "crab": {"mass": 3}}
    never_breaks(KIND, {"cast": {"gull": {"mass": bad}, "crab": {"mass": 3}}, "fact": "mass"})
    for field in ("clues", "starting", "unit", "fact"):
        never_breaks(KIND, {"cast": cast, "fact": "mass", field: bad})
    never_breaks(KIND, {"cast": cast, "clues": [bad]})


@pytest.mark.parametrize(
    ("clues", "says"),
    [
        (["gull > crab", "crab > seal", "seal > gull"], "cannot all be true"),
        (["gull > gull"], "names somebody twice"),
        (["gull > crab < seal"], "turns round"),
        (["> crab"], "A name is missing"),
        (["gul > crab"], 'Did you mean "gull"?'),
        (["gull ? crab"], "not understood"),
        (["gull between crab and crab"], "names somebody twice"),
        (["gull first", "crab first"], 'true: "gull first" and "crab first"'),
    ],
)
def test_clues_that_cannot_be_are_said(clues: list[str], says: str) -> None:
    assert says in refused(KIND, {"cast": without_facts(["gull", "crab", "seal"]), "clues": clues})


def test_what_else_cannot_be() -> None:
    assert "at least two" in refused(KIND, {"cast": {}, "clues": ["gull > crab"]})
    assert "nothing to order by" in refused(KIND, {"cast": without_facts(["gull", "crab"])})


def test_twelve_characters_with_neighbours_are_counted_in_a_moment() -> None:
    names = list("abcdefghijkl")
    clues = [f"{a} not next to {b}" for a, b in zip(names[::2], names[1::2], strict=True)]
    # By inclusion and exclusion: some k of the six pairs side by side, either way round.
    expected = sum((-1) ** k * comb(6, k) * 2**k * factorial(12 - k) for k in range(7))
    with pytest.raises(Unsolvable, match=f"{expected:,} orders"):
        KIND.solve(*read(KIND, {"cast": without_facts(names), "clues": clues}))


@pytest.mark.parametrize("year", range(7))
def test_versions_fit_their_year_and_keep_the_order(year: int) -> None:
    masses = {"gull": 12, "crab": 7, "seal": 30}
    asked = {"cast": {name: {"mass": mass} for name, mass in masses.items()}, "fact": "mass"}
    version = first_version(KIND, asked, year)
    if year == 0:  # "order" and "least" are words of Year 1
        assert version is None
        return
    assert version is not None
    assert version[3].answers[0].data == {"order": [["crab"], ["gull"], ["seal"]]}
    if year > 2:
        numbers = [int(character.facts["mass"]) for character in version[1].characters]
        ranked = sorted(numbers)
        assert [n % 10 for n in ranked] == sorted((n % 10 for n in ranked), reverse=True)


def test_orders_from_the_most_are_listed_as_the_cast_is() -> None:
    data = {"clues": ["a > c"], "starting": "most", "cast": {"a": {}, "b": {}, "c": {}}}
    orders = ["".join(name for [name] in answer["order"]) for answer in answers_of(KIND, data)]
    assert orders == sorted("".join(p) for p in permutations("abc") if p.index("a") < p.index("c"))


@given(st.lists(st.integers(-50, 50), min_size=2, max_size=6, unique=True))
@settings(max_examples=60, deadline=None)
def test_numbers_below_nought_are_ordered_by_walking_up(values: list[int]) -> None:
    cast = {name: {"night": value} for name, value in zip("abcdef", values, strict=False)}
    [found] = answers_of(KIND, {"fact": "night", "cast": cast}, 4)
    walked = [name for step in range(-50, 51) for name, facts in cast.items() if facts["night"] == step]
    assert [name for [name] in found["order"]] == walked
    below = min(values) < 0
    solution = solved(KIND, {"fact": "night", "cast": cast}, 3)
    assert fits(solution, 3) is not below
    assert fits(solution, 4)
