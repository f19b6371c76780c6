"""Pictures that say nothing to those who cannot see them."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule

RULE = Rule(
    name="picture-without-words",
    says="Every picture has words that do the same job.",
    why="A child who cannot see the picture is asked the same question about it.",
    source="WCAG 2.2, success criterion 1.1.1 Non-text content (level A).",
    wrong="![](scenes/page-3.svg)",
    right="![The lift hangs level: otter and mole on one side, heron on the other](scenes/page-3.svg)",
)
_MARKDOWN = re.compile(r"!\[\s*\](?:\(|\[)")
_HTML = re.compile(r"<img\b(?![^>]*\balt\s*=\s*[\"']?[^\"'\s>])[^>]*>", re.IGNORECASE)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each picture in a body without alternative text."""
    for page in collection.documents:
        if "![" not in page.body and "<img" not in page.body:
            continue
        for pattern in (_MARKDOWN, _HTML):
            for nth, match in enumerate(pattern.finditer(page.body)):
                yield RULE.problem(
                    page.locator.place(("[body]",), match.group(), nth if pattern is _MARKDOWN else 0),
                    "This picture has no words for those who cannot see it.",
                    "write what it shows between the square brackets: ![what it shows](picture.svg)",
                )
