"""Names of concepts that are not in the list."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .named_ids import not_listed

RULE = Rule(
    name="concept-unknown",
    says="A concept that is named is on the list of ideas.",
    why="Pages are found by their concepts; one that is not in the tree is found by nobody.",
    source=HOUSE_RULE,
    wrong="concepts: [equalitty]",
    right="concepts: [equality]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each name that is not in the list."""
    return not_listed(RULE, collection, "concepts", collection.reference.concepts)
