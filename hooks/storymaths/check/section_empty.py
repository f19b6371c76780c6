"""Headings with nothing under them."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..model.body import Heading
from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule

RULE = Rule(
    name="section-empty",
    says="Something stands under every heading, unless the page is a draft.",
    why="A step with its minutes and nothing to do in them is found in front of the class.",
    source=HOUSE_RULE,
    wrong="## Act it out … ## Try it and record",
    right="## Act it out … Two children hold the rope …",
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each heading that another of its level or a higher one, or the end of the page, follows at once."""
    for page in collection.documents:
        if page.fields.status == "draft":
            continue
        for block, after in pairwise((*page.content.blocks, None)):
            ends = after is None or (
                isinstance(after, Heading) and isinstance(block, Heading) and after.level <= block.level
            )
            if isinstance(block, Heading) and ends:
                yield RULE.problem(
                    page.place_on_line(block.line),
                    f'Nothing stands under the heading "{block.words}".',
                    "write what happens there, or take the heading out.",
                )
