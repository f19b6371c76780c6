"""Names of words that are not in the list."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .named_ids import not_listed

RULE = Rule(
    name="word-unknown",
    says="A word that is named is a word in the word bank.",
    why="A word is shown with what it means; one that is not in the word bank has no meaning to show.",
    source=HOUSE_RULE,
    wrong="new: [equall]",
    right="new: [equal]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each name that is not in the list."""
    return not_listed(RULE, collection, "words", collection.reference.words)
