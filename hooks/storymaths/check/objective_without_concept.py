"""Objectives of a curriculum that no concept teaches."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="objective-without-concept",
    says="Every objective of a curriculum is taught by a concept.",
    why="Teachers look for an idea; an objective that belongs to none cannot be found, and its gap is not seen.",
    source=HOUSE_RULE,
    wrong="an objective 2C12 in site_data/curricula/, and no concept with england-content-domain: [2C12]",
    right="objectives: {england-content-domain: [2C12]}, under the concept it belongs to",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each objective that stands in no concept's list."""
    reference = collection.reference
    taught = {
        (framework, code)
        for concept in reference.concepts.values()
        for framework, codes in concept.objectives.items()
        for code in codes
    }
    for framework in reference.frameworks.values():
        for index, objective in enumerate(framework.objectives):
            if (framework.id, objective.code) not in taught:
                yield RULE.problem(
                    reference.locators[f"curricula/{framework.id}.yaml"].place(("objectives", index)),
                    f"No concept teaches {objective.code}, “{objective.says}”.",
                    f"name it with the idea that teaches it, in site_data/concepts.yaml (make that file if you have none), as in "
                    f"concepts: [{{id: counting, objectives: {{{framework.id}: [{objective.code}]}}}}].",
                )
