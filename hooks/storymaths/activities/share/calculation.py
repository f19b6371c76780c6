"""How a sharing is calculated in a year: the number sentence to fill, the steps that fill it, the tables leaned on."""

from __future__ import annotations

from collections.abc import Iterator

from ...model.demands import Operation, operation
from ...model.year import YearLimits
from ..sentences import Sentence
from ..tables_used import table_of
from .tasks import (
    EachTask,
    Groups,
    GroupsTask,
    InGroups,
    Parts,
    PartsTask,
    ShareAnswer,
    ShareTask,
    TotalTask,
    WaysTask,
)

_COUNTED_OUT = 20
"""Up to so many things can be dealt out or added up, without a table."""
_MOST_ADDED = 6
"""So many equal groups are still written as an addition."""
MOST_COUNTED = 12
"""So many steps of counting are written out."""


def in_groups(task: ShareTask, value: ShareAnswer) -> InGroups:
    """An answer as equal groups; shares in parts have a group for each part."""
    if not isinstance(value, Parts):
        return value
    assert isinstance(task, PartsTask), "only it is shared in parts"
    groups = sum(task.parts.values())
    return Groups(groups, sum(value.gets.values()) // groups, value.left)


def count_shared(one: InGroups) -> int:
    """What is in the groups."""
    return one.groups * one.each


def count_all(one: InGroups) -> int:
    """All of it, with what is left over."""
    return count_shared(one) + one.left


def write_sentence(task: ShareTask, one: InGroups, year: YearLimits) -> Sentence:
    """The number sentence pupils fill, in the signs of the year; empty where it has none."""
    if not year.knows("×"):
        return (*_sum(one), None) if isinstance(task, TotalTask) and _is_added(one, year) else ()
    rest: Sentence = ("+", None) if one.left else ()
    divided = year.knows("÷") and not one.left
    match task:
        case EachTask():
            return (
                (count_all(one), "÷", one.groups, "=", None)
                if divided
                else (count_all(one), "=", one.groups, "×", None, *rest)
            )
        case GroupsTask():
            return (
                (count_all(one), "÷", one.each, "=", None)
                if divided
                else (count_all(one), "=", None, "×", one.each, *rest)
            )
        case TotalTask():
            return (one.groups, "×", one.each, "=", None)
        case WaysTask():
            return (count_all(one), "=", None, "×", None, *rest)
        case PartsTask():
            return (count_all(one), "=", None, *(("+", None) * (len(task.parts) - 1)), *rest)
        case _:
            return ()


def _sum(one: InGroups) -> Sentence:
    return (one.each, *(("+", one.each) * (one.groups - 1)), "=")


def _is_added(one: InGroups, year: YearLimits) -> bool:
    return year.knows("+") and 2 <= one.groups <= _MOST_ADDED and count_shared(one) <= year.largest_calculated


def find_steps(task: ShareTask, one: InGroups, year: YearLimits) -> Iterator[Operation]:
    """The calculations of an answer as they are written down; none where it is dealt out or counted."""
    if not one.each:
        return
    if not year.knows("×"):
        if _is_added(one, year):
            yield operation("+", *([one.each] * one.groups), count_shared(one))
        return
    product = operation("×", one.groups, one.each, count_shared(one))
    if isinstance(task, PartsTask):
        yield from _steps_in_parts(task, one, year)
    elif one.left:
        yield from (product, operation("−", count_all(one), count_shared(one), one.left))
    elif isinstance(task, (TotalTask, WaysTask)):
        yield product
    else:
        if year.knows("÷"):
            by, result = (one.groups, one.each) if shares_among(task) else (one.each, one.groups)
            yield operation("÷", count_shared(one), by, result)
        yield product


def _steps_in_parts(task: PartsTask, one: InGroups, year: YearLimits) -> Iterator[Operation]:
    if one.left:
        yield operation("−", count_all(one), one.left, count_shared(one))
    yield operation("+", *task.parts.values(), one.groups)
    if year.knows("÷"):
        yield operation("÷", count_shared(one), one.groups, one.each)
    yield from (operation("×", part, one.each, part * one.each) for part in task.parts.values())


def shares_among(task: ShareTask) -> bool:
    """Whether it is known how many share, and not how many go into a group."""
    match task:
        case EachTask() | PartsTask():
            return True
        case GroupsTask() | TotalTask() | WaysTask():
            return False
        case _:
            return task.among is not None


def find_unwritten_steps(one: InGroups, year: YearLimits) -> Iterator[Operation]:
    """The last step of adding groups in the head, where they are neither multiplied, added in writing nor counted."""
    if year.knows("×") or one.groups < 2 or _is_added(one, year):
        return
    if not {one.groups, one.each} & set(year.practice.share.counts_in):
        yield operation("+", count_all(one) - one.each, one.each, count_all(one))


def count_in_steps(one: InGroups, year: YearLimits) -> tuple[int, ...]:
    """The numbers counted aloud, one a group, or the first and the last where they are many.

    None where groups are added, multiplied or only dealt out.
    """
    if not one.each or not year.knows("+") or year.knows("×") or _is_added(one, year):
        return ()
    aloud = range(one.each, count_shared(one) + 1, one.each)
    return tuple(aloud) if one.groups <= MOST_COUNTED else (aloud[0], aloud[-1])


def find_tables(one: InGroups, year: YearLimits) -> frozenset[int]:
    """The tables leaned on: none before ×, and none for what can be counted out."""
    if not year.knows("×") or count_all(one) <= _COUNTED_OUT:
        return frozenset()
    return table_of(one.groups, one.each, year)
