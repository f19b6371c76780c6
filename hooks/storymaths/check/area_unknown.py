"""Names of areas that are not in the list."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .named_ids import not_listed

RULE = Rule(
    name="area-unknown",
    says="An area where things are set out is on the list of areas.",
    why="Its name is printed on the page and on the card that stands there.",
    source=HOUSE_RULE,
    wrong="area: outdoor",
    right="area: outdoors",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each name that is not in the list."""
    return not_listed(RULE, collection, "areas", collection.reference.areas)
