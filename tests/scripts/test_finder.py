"""The finder's sums without a browser: what fits, what is left, what is near, and how words are found in text."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.scripts.run import run


def called(module: str, function: str, *given: object) -> object:
    return json.loads(run(module, function, *given))


@pytest.mark.parametrize(
    ("text", "word", "stands"),
    [
        ("a bear", "be", True),
        ("amber", "be", False),
        ("amber bear", "be", True),
        ("été", "t", False),
        ("(bear", "be", True),
    ],
)
def test_a_word_stands_where_it_begins(text: str, word: str, stands: bool) -> None:
    assert called("finder/words.js", "standsIn", text, word) is stands


def test_text_is_cut_where_words_begin() -> None:
    cut = called("finder/words.js", "cutAt", "Two boats, a Boat. (b*)", ["boat", "(b*"])
    assert cut == {
        "at": 4,
        "pieces": [
            ["Two ", False],
            ["boat", True],
            ["s, a ", False],
            ["Boat", True],
            [". ", False],
            ["(b*", True],
            [")", False],
        ],
    }


def by_tables(one: str, two: str) -> int:
    """Levenshtein's distance as it is defined, by recursion over a table."""
    known: dict[tuple[int, int], int] = {}

    def far(i: int, j: int) -> int:
        if not i or not j:
            return i + j
        if (i, j) not in known:
            changed = far(i - 1, j - 1) + (one[i - 1] != two[j - 1])
            known[i, j] = min(far(i - 1, j) + 1, far(i, j - 1) + 1, changed)
        return known[i, j]

    return far(len(one), len(two))


@given(st.text("abc", max_size=7), st.text("abc", max_size=7))
@settings(deadline=None)
def test_how_far_words_are_apart(one: str, two: str) -> None:
    expected = by_tables(one, two) if abs(len(one) - len(two)) <= 2 else 9
    assert called("finder/words.js", "distance", one, two) == expected


def counted(facets: Sequence[int], rows: Sequence[Sequence[int]], chosen: Sequence[int]) -> dict[str, Any]:
    """What the finder counts for rows that have values, each of a facet."""
    first, has = [0], list[int]()
    for row in rows:
        has += row
        first.append(len(has))
    data = {"values": [{"facet": facet} for facet in facets], "first": first, "has": has, "ideas": [0] * len(rows)}
    told: dict[str, Any] = json.loads(run("finder/count.js", "count", data, chosen, None))
    return {name: list(found.values()) if isinstance(found, dict) else found for name, found in told.items()}


@given(st.data())
@settings(deadline=None, max_examples=60)
def test_what_is_counted_is_what_choosing_would_find(data: st.DataObject) -> None:
    """Every number is found again by the rule itself: a row fits when it has a chosen value of each facet that has one."""
    facets = data.draw(st.lists(st.integers(0, 2), min_size=1, max_size=6))
    values = range(len(facets))
    rows = data.draw(st.lists(st.lists(st.sampled_from(list(values)), unique=True), max_size=6))
    chosen = data.draw(st.lists(st.integers(0, 1), min_size=len(facets), max_size=len(facets)))

    def lacking(row: Sequence[int], wanted: Sequence[int]) -> set[int]:
        return {facets[v] for v in values if wanted[v]} - {facets[v] for v in row if wanted[v]}

    told = counted(facets, rows, chosen)
    fitting = [n for n, row in enumerate(rows) if not lacking(row, chosen)]
    assert told["fitting"] == fitting
    assert told["left"] == [sum(value in rows[n] for n in fitting) for value in values]
    joining = [sum(value in row and lacking(row, chosen) == {facets[value]} for row in rows) for value in values]
    assert told["more"] == joining
    fewest = min((len(lacking(row, chosen)) for row in rows), default=0)
    near = [n for n, row in enumerate(rows) if len(lacking(row, chosen)) == fewest] if not fitting else []
    assert [row for row, _ in told["near"]] == near
