"""Sessions that turn back to earlier pages without saying so."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="reading-backwards",
    says="Within a session the pages go forward, unless a reading says going_back: true.",
    why="A page number typed wrong looks like turning back; saying so shows it is meant.",
    source=HOUSE_RULE,
    wrong="reads: [{pages: 6-9}, {pages: 2-5}]",
    right="reads: [{pages: 6-9}, {pages: 2-5, going_back: true}]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each reading that starts before the one above it ended."""
    for page in collection.of_kind(Session):
        reads = page.fields.reads
        for index in range(1, len(reads)):
            before, here = reads[index - 1].pages, reads[index].pages
            if here.first <= before.last and not reads[index].going_back:
                yield RULE.problem(
                    page.place("reads", index, "pages"),
                    f"After {before} the session reads {here}: it turns back.",
                    "correct the pages, or add going_back: true to this reading.",
                )
