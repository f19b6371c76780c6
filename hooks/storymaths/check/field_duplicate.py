"""Keys written twice in one place."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from .faults import faults

RULE = Rule(
    name="field-duplicate",
    says="No field is written twice in one place.",
    why="Only the last would count, and the first would be lost without a word.",
    source="YAML 1.2.2, section 3.2.1.1: the keys of a mapping are unique.",
    wrong="minutes: 50 … minutes: 45",
    right="minutes: 50",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each second writing of a key."""
    for fault in faults(collection, "duplicate"):
        yield RULE.problem(
            fault.place, f'"{fault.field}" is already given above.', "keep one of the two and take the other out."
        )
