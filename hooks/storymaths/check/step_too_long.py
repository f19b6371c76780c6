"""Steps of a session that take longer than a day of a plan has minutes for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from ..model.document import Document
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="step-too-long",
    says="In a plan of the weeks, each step of a session fits into the minutes of a day.",
    why="A session is split between two days at the end of a step; in the middle of one, nobody would know where to stop.",
    source=HOUSE_RULE,
    wrong="storymaths plan … --minutes 15, where a step takes 19 minutes",
    right="storymaths plan … --minutes 20",
)


def problems_in(sessions: Iterable[Document[Session]], minutes: int) -> Iterator[Problem]:
    """A problem for each step longer than a day. Kept when a plan is asked for, not on pages."""
    pages = list(sessions)
    longest = max((step.minutes for page in pages for step in page.fields.steps), default=0)
    for page in pages:
        for index, step in enumerate(page.fields.steps):
            if step.minutes > minutes:
                yield RULE.problem(
                    page.place("steps", index, "minutes"),
                    f'The step "{step.name}" takes {step.minutes} minutes, and a day of this plan has {minutes}.',
                    f"plan with {longest} minutes a day or more, or make two steps of it.",
                )
