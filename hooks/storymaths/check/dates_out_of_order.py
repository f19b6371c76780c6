"""Pages whose history cannot have happened in that order."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.dates import Dated
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="dates-out-of-order",
    says="A page that has changed says when it was published, and its changes come after that day, newest last.",
    why="Readers of the feed are told of the newest change, and the sitemap gives its day.",
    source=HOUSE_RULE,
    wrong="published: 2027-01-11, changed: [{date: 2026-12-01, what: One more question.}]",
    right="published: 2026-11-25, changed: [{date: 2026-12-01, what: One more question.}]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each change without a day of publishing, or dated before what it follows."""
    for page in collection.documents:
        fields = page.fields
        if not isinstance(fields, Dated) or not fields.changed:
            continue
        if fields.published is None:
            yield RULE.problem(
                page.place("changed"),
                "The page says how it changed, but not when it was published.",
                "add published: with the day it first stood on the site.",
            )
        before, event = fields.published, "the page was published"
        for index, change in enumerate(fields.changed):
            if before is not None and change.date < before:
                yield RULE.problem(
                    page.place("changed", index, "date"),
                    f"This change is dated {change.date}, before {event} on {before}.",
                    "correct the dates; changes stand in the order they were made, the newest last.",
                )
            before, event = change.date, "the change above it"
