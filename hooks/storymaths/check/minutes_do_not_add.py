"""Steps that do not add up to the session."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="minutes-do-not-add",
    says="The minutes of the steps add up to the minutes of the session.",
    why="A session that says 50 minutes and takes 60 runs into playtime.",
    source=HOUSE_RULE,
    wrong="minutes: 50 … steps of 10, 15 and 20 minutes",
    right="minutes: 45 … steps of 10, 15 and 20 minutes",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each session whose steps take more or less than it says."""
    for page in collection.of_kind(Session):
        session = page.fields
        taken = sum(step.minutes for step in session.steps)
        if taken != session.minutes:
            yield RULE.problem(
                page.place("minutes"),
                f"The session says {session.minutes} minutes; its steps take {taken}.",
                f"change a step by {abs(taken - session.minutes)}, or write minutes: {taken}.",
            )
