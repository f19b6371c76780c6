"""Names of cautions that are not in the list."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .named_ids import not_listed

RULE = Rule(
    name="caution-unknown",
    says="A caution that is named is on the list of risks.",
    why="The standard line printed beside a note comes from the list.",
    source=HOUSE_RULE,
    wrong="risk: small-part",
    right="risk: small-parts",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each name that is not in the list."""
    return not_listed(RULE, collection, "cautions", collection.reference.cautions)
