"""Sentences that lose their end at ``#``, or fall apart at a comma."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from .faults import faults

RULE = Rule(
    name="text-cut",
    says="A sentence in the front matter is whole: it is not cut at # or at a comma within [ ].",
    why="What stands after # is a note that nobody reads, and a comma within [ ] begins a new entry: half the sentence is lost.",
    source="YAML 1.2.2, sections 6.6 (comments) and 7.4 (flow collections).",
    wrong="hear: [Five, because I counted them all.]",
    right='hear: ["Five, because I counted them all."]',
    since="0.2.0",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each sentence that is cut."""
    for fault in faults(collection, "cut"):
        what = "as a note, and left out" if fault.field == "#" else "as an entry of its own"
        yield RULE.problem(
            fault.place,
            f"“{fault.detail}” is cut at the {'sign #' if fault.field == '#' else 'comma'}: what follows is read {what}.",
            'put the whole sentence in quotes: "…".',
        )
