"""Fields a page must have and has not."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .faults import faults

RULE = Rule(
    name="field-missing",
    says="Every field a page needs is there.",
    why="A teacher plans from the page; a gap in it is found in front of the class.",
    source=HOUSE_RULE,
    wrong="exit_question: {ask: Which basket is heavier?}",
    right="exit_question: {ask: Which basket is heavier?, answer: The left one.}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each needed field that is not there, at what should hold it."""
    for fault in faults(collection, "missing"):
        inside = fault.detail.rpartition(".")[0]
        where = f' in "{inside}"' if inside else ""
        yield RULE.problem(
            fault.place,
            f'The field "{fault.field}" is missing{where}.',
            f'add a line "{fault.field}:" with its value.',
        )
