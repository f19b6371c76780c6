"""Sessions that keep a class together for longer than its year can."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.rule import COMMON_PRACTICE, Rule
from ..model.session import Session

RULE = Rule(
    name="together-too-long",
    says="A session for Reception keeps the class together for fifteen minutes at most, unless it is a draft.",
    why="Four-year-olds learn in play; what is longer than that goes into what is set out for the week.",
    source=COMMON_PRACTICE,
    wrong="year: Reception and minutes: 45",
    right="year: Reception, minutes: 15 and set_out:",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each session that is longer than its year's longest."""
    for page in collection.of_kind(Session):
        session = page.fields
        limits = collection.reference.years.get(session.year)
        longest = limits and limits.longest_together
        if longest and session.minutes > longest and session.status != "draft":
            yield RULE.problem(
                page.place("minutes"),
                f"The session takes {session.minutes} minutes, and {year_name(session.year)} sits together for {longest} at most.",
                f"make it {longest} minutes or fewer, and put the rest under set_out: for the week.",
            )
