"""Objective codes that are in no framework."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from ..parse.suggestion import did_you_mean
from .codes_named import codes_named

RULE = Rule(
    name="objective-unknown",
    says="An objective code is one of its framework's.",
    why="Coverage is worked out from codes; a wrong one claims what is not taught.",
    source="The published codes, with their documents, on the page Objectives.",
    wrong="england-content-domain: [2C44]",
    right="england-content-domain: [2C4]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each code, or framework, that is not known."""
    reference = collection.reference
    for named in codes_named(collection):
        framework = reference.frameworks.get(named.framework)
        if framework is None:
            yield RULE.problem(
                named.page.place(*named.loc[:-1], "[key]"),
                f'"{named.framework}" is not a framework.' + did_you_mean(named.framework, reference.frameworks),
                f"use one of {', '.join(reference.frameworks)}.",
            )
        elif (named.framework, named.code) not in reference.objectives:
            codes = [objective.code for objective in framework.objectives]
            yield RULE.problem(
                named.page.place(*named.loc),
                f'"{named.code}" is not a code in {named.framework}.' + did_you_mean(named.code, codes),
                "use a code from that framework, or correct the code.",
            )
