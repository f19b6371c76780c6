"""Signs that are not seen, or are not what they look like."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .faults import faults

RULE = Rule(
    name="letter-misleading",
    says="A page holds no invisible sign, none that turns the direction of words round, and none that only looks like another.",
    why="A word with such a sign in it looks right and is found by nobody; words turned round can say one thing and do another.",
    source=HOUSE_RULE,
    wrong="mi\\u200bnus, with a space of no width in it",
    right="minus",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each such sign, the first of its sort on a page."""
    for fault in faults(collection, "letter"):
        detail = fault.detail[0].upper() + fault.detail[1:]
        yield RULE.problem(fault.place, f"{detail}.", "take it out, or type the word again by hand.")
