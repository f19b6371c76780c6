"""An author's own words for a task: kept in a version for another year, unless they name numbers that changed."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace
from typing import TypeVar

from ..model.activity import Context, Solution
from .author_demands import read_demands
from .kind import ActivityFields
from .saying import written

F = TypeVar("F", bound=ActivityFields)
_NUMBER = re.compile(
    r"\d[\d,]*|\b(?:eleven|twelve|\w+teen|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|thousand)\b",
    re.IGNORECASE,
)
"""Small numbers in words, as in "which three friends", say how the task is done and are kept."""


def without_stale_words(
    fields: F, context: Context, versions: Iterable[tuple[F, Context, str]]
) -> Iterator[tuple[F, Context, str]]:
    """The versions; one with other numbers asks in the kind's words where the author's would be untrue."""
    if not (fields.ask and _NUMBER.search(fields.ask)):
        yield from versions
        return
    for changed, there, why in versions:
        same = changed == fields and there.characters == context.characters
        yield (changed if same else changed.model_copy(update={"ask": None})), there, why


def stale_number(words: str, solution: Solution) -> str:
    """A number that words of the author name and a task does not have; empty where there is none."""
    met = {written(number, 3).replace(",", "") for number in solution.demands.numbers}
    found = (match.group().rstrip(",") for match in _NUMBER.finditer(words))
    return next((number for number in found if number.replace(",", "") not in met), "")


def in_own_words(fields: ActivityFields, solution: Solution) -> Solution:
    """The solution with the author's own words for the task, where there are any, and what they demand."""
    if not fields.own_words:
        return solution
    task = replace(solution.task, ask=fields.ask or solution.task.ask)
    return replace(solution, task=task, demands=solution.demands | read_demands(fields.own_words))
