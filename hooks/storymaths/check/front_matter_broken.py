"""Front matter that is not there, is not closed, or is not YAML."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .faults import faults

RULE = Rule(
    name="front-matter-broken",
    says="Every page opens with front matter that can be read.",
    why="The build works from the front matter; a page without it would vanish from every list without a word.",
    source=HOUSE_RULE,
    wrong="title: Level at last: the lamp is lit",
    right='title: "Level at last: the lamp is lit"',
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each page whose front matter could not be read."""
    for fault in faults(collection, "broken"):
        yield RULE.problem(
            fault.place,
            f"The front matter could not be read: {fault.detail}.",
            fault.fix
            or "look just before this spot for a colon or # inside a text, or a comma inside a text within [ ] or { } (put "
            "the text in double quotes), a tab, or a line that does not line up with its neighbours.",
        )
