"""Sessions of a year that plays, with nothing set out to play with."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.rule import COMMON_PRACTICE, Rule
from ..model.session import Session

RULE = Rule(
    name="nothing-set-out",
    says="A session for Reception says what is set out for the week round it, unless it is a draft.",
    why="What was shown together is learnt in play, and an adult nearby needs to know what to say and what to see.",
    source=COMMON_PRACTICE,
    wrong="year: Reception, and no set_out:",
    right="set_out: with an area, what is put out, what to say and what to notice",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each session of such a year without anything set out."""
    for page in collection.of_kind(Session):
        limits = collection.reference.years.get(page.fields.year)
        if limits and limits.sets_out and not page.fields.set_out and page.fields.status != "draft":
            yield RULE.problem(
                page.place("year"),
                f"Nothing is set out for the week, and this is a session for {year_name(page.fields.year)}.",
                "add set_out: with an area such as small-world, and under it put_out:, say: and notice:.",
            )
