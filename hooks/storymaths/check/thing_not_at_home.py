"""Home activities that need what homes do not have."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="thing-not-at-home",
    says="A home activity uses what most kitchens have.",
    why="A parent at the table will not order a balance for ten minutes of maths.",
    source=HOUSE_RULE,
    wrong="things: [{item: bucket-balance}]",
    right="things: [{item: coat-hanger}]",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each thing of a home activity that is not a household thing."""
    for page in collection.at_home:
        for index, thing in enumerate(page.fields.things):
            material = collection.reference.materials.get(thing.item)
            if material and not material.household:
                yield RULE.problem(
                    page.place("things", index, "item"),
                    f"Most homes have no {material.name}.",
                    f"use {material.at_home} instead." if material.at_home else "use something from the kitchen.",
                )
