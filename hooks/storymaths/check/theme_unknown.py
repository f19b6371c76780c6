"""Names of themes that are not in the list."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .named_ids import not_listed

RULE = Rule(
    name="theme-unknown",
    says="A theme that is named is on the list of what stories are about.",
    why="Pages are found by their themes; one that is not listed is found by nobody.",
    source=HOUSE_RULE,
    wrong="themes: [fairnes]",
    right="themes: [fairness]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each name that is not in the list."""
    return not_listed(RULE, collection, "themes", collection.reference.themes)
