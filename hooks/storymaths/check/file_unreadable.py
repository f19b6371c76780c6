"""Files that are not what content is made of, or cannot be worked on."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .faults import faults

RULE = Rule(
    name="file-unreadable",
    says="content/ holds plain files of a fair size: pages that are UTF-8 text, and pictures.",
    why="What cannot be read is not checked, and a link or a huge file takes the build somewhere nobody meant.",
    source=HOUSE_RULE,
    wrong="a page of 50 MB; a link to /etc",
    right="pages and pictures, each a file of its own",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each file that could not be read as what it is for."""
    for fault in faults(collection, "file"):
        yield RULE.problem(
            fault.place,
            f"This file could not be used: {fault.detail}.",
            "put a file of the right sort and size here, or take it out.",
        )
