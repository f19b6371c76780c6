"""Books on school days: as few weekends inside books as any laying has, found a second way by trying them all."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st
from storymaths.scripts.run import run


def lay(needed: Sequence[int], weeks: Sequence[int]) -> list[int]:
    found: list[int] = json.loads(run("weeks/lay.js", "lay", needed, weeks))
    return found


def every_laying(needed: Sequence[int], days: int, first: int = 0) -> Iterator[list[int]]:
    """Each way to put books on days in order: the first day of every book."""
    if not needed:
        yield []
        return
    for start in range(first, days - needed[0] + 1):
        for rest in every_laying(needed[1:], days, start + needed[0]):
            yield [start, *rest]


def worth(starts: Sequence[int], needed: Sequence[int], weeks: Sequence[int]) -> tuple[int, int, list[int]]:
    """Weekends inside books, the last day, and the first days: what is to be small, first things first."""
    ends = [start + days - 1 for start, days in zip(starts, needed, strict=True)]
    return sum(weeks[end] - weeks[start] for start, end in zip(starts, ends, strict=True)), ends[-1], list(starts)


@st.composite
def layings(draw: st.DrawFn) -> tuple[list[int], list[int]]:
    needed = draw(st.lists(st.integers(1, 4), min_size=1, max_size=3))
    days = draw(st.integers(sum(needed), 12))
    steps = draw(st.lists(st.sampled_from([0, 0, 0, 1, 1, 2]), min_size=days, max_size=days))
    return needed, [sum(steps[: n + 1]) for n in range(days)]


@given(layings())
def test_no_laying_is_better(case: tuple[list[int], list[int]]) -> None:
    needed, weeks = case
    best = min(worth(starts, needed, weeks) for starts in every_laying(needed, len(weeks)))
    assert worth(lay(needed, weeks), needed, weeks) == best


@pytest.mark.parametrize(
    ("needed", "weeks", "starts"),
    [
        ([4, 4], [0] * 4 + [1] * 4, [0, 4]),
        ([4, 4], [0] * 5 + [1] * 5, [0, 5]),  # the Friday is left free
        ([4], [0] * 2 + [1] * 4, [2]),  # it begins on a Wednesday: better the Monday after
        ([5], [0] * 4 + [1] * 4, [0]),  # one weekend cannot be helped, so it begins at once
        ([5], [0] + [1] * 3 + [2] * 4, [1]),  # one weekend and not two, though it begins a day later
        ([10], [0] * 5 + [1] * 5, [0]),  # ten days
        ([2, 1], [0] * 3, [0, 2]),
    ],
)
def test_weeks_as_a_teacher_knows_them(needed: list[int], weeks: list[int], starts: list[int]) -> None:
    assert lay(needed, weeks) == starts


def test_at_once_leaves_no_day_free() -> None:
    assert json.loads(run("weeks/lay.js", "atOnce", [4, 2, 3])) == [0, 4, 6]
