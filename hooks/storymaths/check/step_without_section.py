"""Steps and the sections of the body that tell them must agree."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session
from ..parse.body import words_of
from ..parse.suggestion import nearest

RULE = Rule(
    name="step-without-section",
    says="Each step has a section in the body, under a heading of the same name, in the same order.",
    why="The minutes stand beside the heading; without its section a step is a name and no lesson.",
    source=HOUSE_RULE,
    wrong="steps: [{name: Act it out, …}] … ## Acting it out",
    right="steps: [{name: Act it out, …}] … ## Act it out",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each step without a section, section without a step, or pair out of order."""
    for page in collection.of_kind(Session):
        found = {section.heading.words: section.heading for section in page.content.sections}
        headings = [section.heading.words for section in page.content.sections]
        names = [words_of(step.name) for step in page.fields.steps]
        if headings == names or not all(fence.closed for fence in page.content.activities):
            continue  # an activity that is not closed swallows the sections after it
        renamed = {
            name: near
            for name in names
            if name not in headings and (near := nearest(name, [each for each in headings if each not in names]))
        }
        for name, heading in renamed.items():
            yield RULE.problem(
                page.place_on_line(found[heading].line),
                f'The heading is "{heading}"; the step is called "{name}".',
                "give the two the same name.",
            )
        for index, name in enumerate(names):
            if name not in headings and name not in renamed:
                yield RULE.problem(
                    page.place("steps", index, "name"),
                    f'No section of the body is called "{name}".',
                    f'write "## {name}" above what happens in this step.',
                )
        for heading in headings:
            if heading not in names and heading not in renamed.values():
                yield RULE.problem(
                    page.place_on_line(found[heading].line),
                    f'The section "{heading}" is not one of the steps.',
                    "add it to steps with its minutes, or make it a smaller heading (###).",
                )
        if sorted(headings) == sorted(names):
            yield RULE.problem(
                page.place_on_line(found[headings[0]].line),
                "The sections are not in the order of the steps.",
                "put the sections of the body in the order of the steps.",
            )
