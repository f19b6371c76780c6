"""What a plan needs, added up without a browser, and its address."""

from __future__ import annotations

import json
from math import ceil
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.scripts.run import run

MATERIALS = [["tub", "tubs", 1], ["strip", "strips", 0]]
CLASS, GROUP, PAIR, CHILD = range(4)


def an_idea(group_size: int, *needed: int) -> list[Any]:
    return ["A title", "a-book", 1, 45, group_size, list(needed)]


def add_up(ideas: list[list[Any]], children: int) -> dict[str, dict[str, Any]]:
    return {sum_["name"]: sum_ for sum_ in json.loads(run("plan/sums.js", "addUp", MATERIALS, ideas, children))}


def test_what_comes_back_is_counted_once_and_what_is_used_up_each_time() -> None:
    ideas = [an_idea(4, 0, 1, GROUP, 1, 2, CHILD), an_idea(3, 0, 1, GROUP, 1, 1, PAIR)]
    found = add_up(ideas, 30)
    # 30 children are 8 groups of four or ten of three; 15 pairs.
    assert (found["tubs"]["each"], found["tubs"]["all"], found["tubs"]["enough"]) == ([8, 10], 18, 10)
    assert (found["strips"]["each"], found["strips"]["all"], found["strips"]["enough"]) == ([60, 15], 75, 75)


def test_one_is_called_one() -> None:
    assert list(add_up([an_idea(4, 0, 1, CLASS)], 30)) == ["tub"]


@given(st.integers(1, 60), st.integers(1, 9), st.integers(1, 6))
@settings(deadline=None, max_examples=40)
def test_a_part_of_a_pair_or_group_counts_whole(children: int, count: int, group: int) -> None:
    for per, size in ((CLASS, children), (GROUP, group), (PAIR, 2), (CHILD, 1)):
        (found,) = add_up([an_idea(group, 0, count, per)], children).values()
        assert found["all"] == count * ceil(children / size)


def test_the_address_of_a_plan_leads_back_to_its_ideas() -> None:
    names = ["books/a-book/session-1", "books/café & bar/home-1", "any-book/a"]
    address = json.loads(run("plan/address.js", "addressOf", names))
    assert address == "plan.html?plan=a-book/session-1,caf%C3%A9%20%26%20bar/home-1,/any-book/a"
    decoded = "a-book/session-1,café & bar/home-1,/any-book/a"
    assert json.loads(run("plan/address.js", "namesIn", decoded)) == names
