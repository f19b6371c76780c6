"""Pages that do not say, in a word we know, what they are."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.suggestion import did_you_mean
from .faults import faults

RULE = Rule(
    name="kind-unknown",
    says="Every page says what kind it is: book, story, session, home, series or page.",
    why="The kind decides which fields a page has and how it is shown.",
    source=HOUSE_RULE,
    wrong="kind: lesson",
    right="kind: session",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each page without a known kind."""
    for fault in faults(collection, "kind"):
        named = f'"{fault.detail}" is not a kind of page.' if fault.detail else "The page does not say its kind."
        yield RULE.problem(
            fault.place,
            named + did_you_mean(fault.detail, fault.known),
            f"write kind: and one of {', '.join(fault.known)}.",
        )
