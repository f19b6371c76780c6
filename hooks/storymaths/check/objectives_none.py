"""Sessions that name no objective."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="objectives-none",
    says="A session names at least one objective it teaches, unless it is a draft.",
    why="Coverage, plans and the finder go by objectives; a session without any is found and counted by nobody.",
    source=HOUSE_RULE,
    wrong="objectives: {}",
    right="objectives: {england-content-domain: [2C3: [missing-number]]}",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each session without an objective."""
    for page in collection.of_kind(Session):
        if page.fields.status == "ready" and not any(page.fields.objectives.values()):
            yield RULE.problem(
                page.place("objectives"),
                "This session names no objective.",
                "choose one from the site's page Objectives and write its code, as in england-content-domain: [2C3].",
            )
