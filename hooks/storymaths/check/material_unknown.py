"""Names of materials that are not in the list."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .named_ids import not_listed

RULE = Rule(
    name="material-unknown",
    says="A material that is named is on the list of things.",
    why="Sizes, allergens and what to use at home come from the list; a thing that is not in it is not thought through.",
    source=HOUSE_RULE,
    wrong="item: bucket-balence",
    right="item: bucket-balance",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each name that is not in the list."""
    return not_listed(RULE, collection, "materials", collection.reference.materials)
