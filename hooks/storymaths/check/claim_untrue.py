"""Claims in words that do not hold: of numbers, shapes, units, times."""

from __future__ import annotations

from collections.abc import Iterator

from ..claims.find import find_false_claims
from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule

RULE = Rule(
    name="claim-untrue",
    says="What a page says in words of numbers, shapes, units and times is true, or is marked as a mistake to talk about.",
    why="A sentence is copied on to the board as readily as a sum.",
    source="Each class of claim names its own, in claims/; standing facts in site_data/facts.yaml.",
    wrong="A triangle has four sides, and 27 is even.",
    right="A triangle has three sides, and 27 is odd. Or, on purpose: [27 is even]{wrong}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each claim that does not hold. Questions, conditions and children's mistakes are left alone."""
    for page in collection.documents:
        for claim in find_false_claims(page.prose, collection.reference.facts):
            yield RULE.problem(
                page.place_in_prose(claim.start, claim.words),
                f'"{claim.words}" is not true ({claim.of}): {claim.so}.',
                f"correct it, or mark a mistake made on purpose: [{claim.words}]{{wrong}}",
            )
