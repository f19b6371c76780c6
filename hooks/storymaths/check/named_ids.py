"""The ids that pages name, for the rules that look ids up."""

from __future__ import annotations

from collections.abc import Collection as Names
from collections.abc import Iterator

from ..model.collection import Collection
from ..model.page_fields import ListName
from ..model.problem import Problem
from ..model.rule import Rule
from ..parse.suggestion import did_you_mean


def not_listed(rule: Rule, collection: Collection, file: ListName, known: Names[str]) -> Iterator[Problem]:
    """A problem of ``rule`` for each id named that is not among those of ``site_data/<file>.yaml``."""
    for page in collection.documents:
        for _, loc, name in page.named(file):
            if name not in known:
                yield rule.problem(
                    page.place(*loc),
                    f'"{name}" is not in the list of {file}.' + did_you_mean(name, known),
                    f"use a name from Names to copy, in the authors' guide, or add one of your own in site_data/{file}.yaml: "
                    "make that file if you have none. The guide shows what an entry looks like.",
                )
