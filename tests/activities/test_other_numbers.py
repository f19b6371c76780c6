"""Other numbers of an activity: as many answers, found a second way; its shape, order and pins kept; none where none fits."""

from __future__ import annotations

import re
from itertools import combinations

import pytest
from activities.contexts import the_reference
from storymaths.activities.alike import are_alike, as_large, numbers_in, relabelled
from storymaths.activities.bending import Version
from storymaths.activities.other_numbers import MOST_SETS
from storymaths.activities.work_out import work_out

SUMS = """
kind: number-sentence
title: Tens and ones
ask: What stands in each gap?
sentences: ["64 = 60 + ___", "35 = ___ + 5", "7 + 20 = ___"]
answers: 3
"""
TEAMS = """
kind: balance
title: Two with two
fact: mass
cast: {a: {mass: 9}, b: {mass: 6}, c: {mass: 5}, d: {mass: 4}, e: {mass: 3}, f: {mass: 1}}
teams: 2
"""


def sets_of(text: str, year: int = 2) -> tuple[Version, ...]:
    worked = work_out(text, "content/a.md", 1, None, year, the_reference())
    assert not worked.problems
    return worked.other_sets


def test_each_line_of_sums_is_true_as_ordinary_arithmetic_has_it() -> None:
    found = sets_of(SUMS)
    assert len(found) == MOST_SETS
    for one in found:
        lines = [answer.says for answer in one.solution.answers]
        assert len(lines) == 3
        for line in lines:
            left, right = line.split(" = ")
            assert sum(map(int, left.split(" + "))) == sum(map(int, right.split(" + ")))
        assert are_alike([64, 60, 4, 35, 30, 5, 7, 20, 27], numbers_in(" ".join(lines)))


def test_no_set_is_the_author_s_own_nor_another_s() -> None:
    given = [tuple(map(str, one.solution.task.lines)) for one in sets_of(SUMS)]
    assert len({*given, ("64 = 60 + ___", "35 = ___ + 5", "7 + 20 = ___")}) == len(given) + 1


def test_teams_are_level_as_often_when_all_are_tried_and_whoever_had_more_has_more() -> None:
    for one in sets_of(TEAMS):
        masses = [int(character.facts["mass"]) for character in one.context.characters]
        assert masses == sorted(masses, reverse=True)
        assert len(set(masses)) == 6
        pairs = list(combinations(range(6), 2))
        level = [
            (left, right)
            for left, right in combinations(pairs, 2)
            if not set(left) & set(right) and sum(masses[n] for n in left) == sum(masses[n] for n in right)
        ]
        assert len(level) == 3


def test_what_the_author_pins_for_the_year_is_kept() -> None:
    pinned = SUMS.replace("answers: 3", 'years: {2: {sentences: ["64 = 60 + ___", "35 = ___ + 5", "7 + 20 = ___"]}}')
    assert sets_of(pinned) == ()


@pytest.mark.parametrize(
    ("words", "kept"),
    [
        ("What stands in each gap?", True),
        ("Seven friends wait. What stands in each gap?", False),
        ("Half of them wait. What stands in each gap?", False),
        ("From 64 to 35. What stands in each gap?", False),
    ],
)
def test_words_of_the_author_that_name_a_number_are_not_asked_again(words: str, kept: bool) -> None:
    for one in sets_of(SUMS.replace("What stands in each gap?", words)):
        assert (one.solution.task.ask == words) is kept


def test_the_one_number_in_an_authors_words_is_written_anew() -> None:
    sets = sets_of(SUMS.replace("What stands in each gap?", "Each bridge has 64 planks. What is missing?"))
    assert sets
    for one in sets:
        [whole] = re.findall(r"\d+", one.solution.task.ask)
        assert one.solution.task.ask == f"Each bridge has {whole} planks. What is missing?"
        assert str(one.solution.task.lines[0]).startswith(f"{whole} =")


def test_parts_by_name_have_no_other_numbers() -> None:
    strip = "kind: measure\ntitle: Parts\nfind: order\nthings: {%s: 12 squares, %s: 8 squares}\n"
    assert sets_of(strip % ("the half", "the third")) == ()
    assert sets_of(strip % ("the reed", "the twig"))


def test_steps_told_in_words_are_the_steps_that_are_counted() -> None:
    for one in sets_of("kind: sequence\ntitle: Sing\nask: Count on in fours.\nterms: [0, 4, 8, ___, 16, ___, 24]\n"):
        first, second = map(int, one.fields.model_dump()["terms"][:2])
        assert (one.solution.task.ask == "Count on in fours.") is (second - first == 4)


def test_whole_answers_stay_whole() -> None:
    for one in sets_of("kind: fraction\ntitle: Nuts\nfind: part\nfraction: 1/3\nof: 15\nthings: nuts\n"):
        assert not re.search(r"\d/\d", one.solution.answers[0].says)


def test_nothing_is_offered_where_nothing_fits() -> None:
    judged = "kind: always-sometimes-never\ntitle: Odd or even\nthen: even(a + a)\nover: 1 to 14\nstatement: Even.\n"
    assert sets_of(judged) == ()
    split = "kind: bonds\ntitle: Five\nwhole: 5\nparts: 2\norder: counts\n"
    assert sets_of(split) == (), "only 5 has six ways"


def test_numbers_stand_for_others_of_their_size_and_roundness() -> None:
    assert as_large(0) == (0,)
    assert all(9 < number < 100 and number % 10 == 0 for number in as_large(40))
    assert all(20 < number < 100 and number % 10 for number in as_large(46))
    assert all(99 < number < 1000 and number % 10 == 0 and number % 100 for number in as_large(350))


def test_sums_that_were_true_are_true_with_the_numbers_that_stand_for_others() -> None:
    found = list(relabelled([46, 18, 64], ["46 + 18 = 64"]))
    assert found
    assert all(one[46] + one[18] == one[64] for one in found)


def test_things_given_out_one_to_one_stay_so() -> None:
    for told in ("among: 10", "total: 10"):
        sets = sets_of(f"kind: share\ntitle: A bean for each cane\n{told}\neach: 1\nthings: beans\n")
        assert sets
        assert {one.fields.model_dump()["each"] for one in sets} == {1}


def test_a_purse_holds_no_coin_worth_more_than_those_of_the_lesson() -> None:
    """A class that has had coins to 10p in its hands is asked about no 20p."""
    pay = "kind: money\ntitle: Pay\nfind: ways\namount: 8\npurse: [10, 5, 2, 2, 1]\n"
    for year in (1, 2):
        for one in sets_of(pay, year):
            assert max(dict(one.fields)["purse"]) <= 10


def test_a_part_that_came_out_whole_comes_out_whole_under_no_title_of_the_old_part() -> None:
    sets = sets_of('kind: fraction\ntitle: A third of the nuts\nfind: part\nfraction: "1/3"\nof: 15\nthings: nuts\n')
    assert sets
    assert not [says for one in sets for answer in one.solution.answers if "/" in (says := answer.says)]
    assert {"third" in one.fields.title for one in sets} == {False}
