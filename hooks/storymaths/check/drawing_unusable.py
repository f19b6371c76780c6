"""Drawings that are broken, or do more than show themselves."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .faults import faults

RULE = Rule(
    name="drawing-unusable",
    says="A picture can be used as it is: well formed, with a size, and with nothing in it that runs, moves or loads.",
    why="A drawing goes on to pages, cards and the class screen; one with a script or a link in it takes that along.",
    source=HOUSE_RULE,
    wrong='<svg onload="…">',
    right="an <svg> with a viewBox, shapes and their colours",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each thing that makes a picture unusable."""
    for fault in faults(collection, "drawing"):
        yield RULE.problem(
            fault.place,
            f"This picture cannot be used: {fault.detail}.",
            "take that out in a drawing program (save as plain SVG), or draw it again.",
        )
