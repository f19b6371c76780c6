"""Sums of the numbers a reader finds in a book, each worked out a second way by Python's own arithmetic.

The sentences are held to the numbers that stand in them, and every sum in them to being true; that is read here by
``int`` and ``sum`` alone, not by the program's reader of sums.
"""

from __future__ import annotations

import json
import re
from collections.abc import Sequence
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from py_mini_racer import MiniRacer
from storymaths.model.any_book import NUMBERS_OF, SumName
from storymaths.scripts.join import joined

NOUNS = [("apple", "apples"), ("friend", "friends")]
ENGINE = MiniRacer()
ENGINE.eval(f"globalThis.sums = {joined('any-book/sums.js')}")
_SUM = re.compile(r"(\d+(?: [+−] \d+)+) = (\d+)")


def work_out(name: SumName, numbers: Sequence[int], nouns: Sequence[tuple[str, str]] = NOUNS) -> list[str]:
    asked = ", ".join(json.dumps(value) for value in (name, list(numbers), nouns))
    told: list[str] = json.loads(str(ENGINE.eval(f"JSON.stringify(sums.workOut({asked}))")))
    return told


def numbers_in(text: str) -> list[int]:
    return [int(number) for number in re.findall(r"\d+", text)]


@given(st.data())
@settings(max_examples=200)
def test_every_sum_that_is_said_is_true(data: st.DataObject) -> None:
    name = data.draw(st.sampled_from(get_args(SumName)))
    fewest, most = NUMBERS_OF[name]
    numbers = data.draw(st.lists(st.integers(1, 12), min_size=fewest, max_size=most))
    told = " ".join(work_out(name, numbers))
    assert told
    assert "undefined" not in told
    assert not re.search(r"\b1 (apples|friends|hours|ways)\b", told)
    for left, right in _SUM.findall(told):
        terms = re.findall(r"(?:^|([+−]) )(\d+)", left)
        assert sum(-int(number) if sign == "−" else int(number) for sign, number in terms) == int(right), told


@given(st.integers(1, 40), st.integers(1, 10))
@settings(max_examples=100)
def test_shares_are_those_of_divmod(things: int, friends: int) -> None:
    each, left = divmod(things, friends)
    first = work_out("share", (things, friends))[0]
    if each:
        assert numbers_in(first) == [each, friends, *([left] if left else [])]
    else:
        assert numbers_in(first) == [friends - things]


@pytest.mark.parametrize(
    ("name", "numbers", "first"),
    [
        ("there-and-back", (6,), "6 apples there and 6 back: 12 in all."),
        ("difference", (3, 8), "5 apples more."),
        ("difference", (8, 7), "1 apple fewer."),
        ("difference", (4, 4), "It is 4 apples both times: the same."),
        ("share", (13, 4), "3 apples for each of the 4 friends. 1 apple is left over."),
        ("share", (2, 5), "There are not enough for one each: 3 more would do it."),
        ("gather", (1, 2, 3), "6 apples in the end."),
        ("hidden", (10, 10), "None are hidden."),
        ("hidden", (4, 5), "You can see more than there are in all. Count once more: 5 is more than 4."),
        ("longer", (2, 3, 4), "14 apples in the end."),
        ("lots", (4, 2), "8 friends in all."),
        ("order", (9, 2, 5), "The fewest first: 2, 5, 9."),
        ("halfway", (25,), "Page 13 is the middle one."),
        ("halfway", (24,), "The middle is between page 12 and page 13."),
        ("refrain", (3, 10), "Number 10 is the same as number 1."),
    ],
)
def test_the_answer_comes_first(name: SumName, numbers: tuple[int, ...], first: str) -> None:
    assert work_out(name, numbers)[0] == first


@pytest.mark.parametrize(("start", "end"), [(start, end) for start in (1, 7, 11, 12) for end in range(1, 13)])
def test_hours_are_counted_on_the_clock(start: int, end: int) -> None:
    first, counted = work_out("hours", (start, end))
    passed = numbers_in(counted.partition(":")[2])
    assert numbers_in(first)[0] == len(passed) == ((end - start) % 12 or 12)
    assert passed[-1] == end
    assert all(after == before % 12 + 1 for before, after in zip([start, *passed], passed, strict=False))


def test_all_ways_in_two_places_are_named_once() -> None:
    first, ways = work_out("two-places", (5,))
    pairs = re.findall(r"(\d+) and (\d+)", ways)
    assert numbers_in(first) == [6]
    assert {(int(here), int(there)) for here, there in pairs} == {(here, 5 - here) for here in range(6)}
    assert len(pairs) == 6
