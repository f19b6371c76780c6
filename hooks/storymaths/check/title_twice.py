"""Two pages with one title."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.problem import Problem
from ..model.rule import Rule

RULE = Rule(
    name="title-twice",
    says="No two pages have the same title.",
    why="In a list of links, or read out by a screen reader, they could not be told apart.",
    source="WCAG 2.2, success criterion 2.4.2 Page titled (level A).",
    wrong="two sessions with title: Share it out",
    right="title: Share the shells, and title: Share the lights",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each page whose title another page, earlier in the order of paths, already has."""
    first: dict[str, Document[PageFields]] = {}
    for page in collection.documents:
        title = " ".join(page.fields.title.lower().split())
        if title in first:
            yield RULE.problem(
                page.place("title"),
                f'"{page.fields.title}" is also the title of {first[title].path}.',
                "give this page a title of its own.",
            )
        else:
            first[title] = page
