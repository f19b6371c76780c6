"""Home pages that take too much reading."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.home import Home
from ..model.problem import Problem
from ..model.rule import Rule
from ..parse.reading_level import reading_grade

RULE = Rule(
    name="home-too-hard",
    says="A home page reads at or under the grade in site_data/limits.yaml, with a grade of slack.",
    why="A parent reads it with one eye on the pan.",
    source="Flesch–Kincaid grade: Kincaid and others, Research Branch Report 8-75 (US Navy, 1975). The limit is ours.",
    wrong="Subsequently endeavour to establish equivalence between the respective receptacles.",
    right="Now try to make both cups the same.",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each home page above the limit and its slack."""
    limits = collection.reference.limits
    for page in collection.of_kind(Home):
        home = page.fields
        said = [home.summary, home.say_first, home.if_hard, home.if_easy, home.stop_when, home.what_it_is_for]
        said += [part for question in home.ask for part in (question.ask, question.hear)]
        grade = reading_grade("\n\n".join([*said, page.body]))
        if grade is not None and grade > limits.home_reading_grade + limits.home_reading_slack:
            yield RULE.problem(
                page.place("[body]"),
                f"The page reads at grade {grade:.1f}; the limit is {limits.home_reading_grade:g} "
                f"and {limits.home_reading_slack:g} of slack (Flesch–Kincaid).",
                "make the sentences shorter, and choose shorter words.",
            )
