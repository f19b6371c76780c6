"""Fields whose value is of the wrong sort."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .faults import faults

RULE = Rule(
    name="field-mistyped",
    says="Every field holds the sort of value it is for.",
    why="Minutes are added, years compared and pages looked up: words in their place cannot be.",
    source=HOUSE_RULE,
    wrong="minutes: fifty",
    right="minutes: 50",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each value that is not of its field's sort."""
    for fault in faults(collection, "mistyped"):
        yield RULE.problem(
            fault.place, f'"{fault.field}" {fault.detail}.', fault.fix or "change the value to what the field is for."
        )
