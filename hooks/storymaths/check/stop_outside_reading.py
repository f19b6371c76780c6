"""Stops on pages that are not being read, or out of order."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="stop-outside-reading",
    says="A stop is on one of the pages being read, and stops come in the order of the pages.",
    why="The adult reads on until a stop; one on another page is never reached.",
    source=HOUSE_RULE,
    wrong="pages: 4-7 … stops: [{page: 8, …}]",
    right="pages: 4-8 … stops: [{page: 8, …}]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each stop outside its reading, or before the stop above it."""
    for page in collection.of_kind(Session):
        for row, reading in enumerate(page.fields.reads):
            reached = reading.pages.first
            for index, stop in enumerate(reading.stops):
                place = ("reads", row, "stops", index, "page")
                if stop.page not in reading.pages:
                    yield RULE.problem(
                        page.place(*place),
                        f"The stop on page {stop.page} is not in what is read, {reading.pages}.",
                        "move the stop, or read that page too.",
                    )
                    continue
                if stop.page < reached:
                    yield RULE.problem(
                        page.place(*place),
                        f"The stop on page {stop.page} comes after a stop on page {reached}.",
                        "put the stops in the order the pages are read.",
                    )
                reached = max(reached, stop.page)
