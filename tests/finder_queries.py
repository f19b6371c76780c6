"""What the finder shows for the questions of ``scripts/finder_queries.yaml``, and whether it is right by what authors wrote."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from project import ROOT
from storymaths.model.collection import Collection
from storymaths.publish.finder_columns import finder_columns
from storymaths.publish.finder_words import questions
from storymaths.publish.ideas import Idea, ideas
from storymaths.render.site import Site
from storymaths.scripts.run import run
from yaml_files import read_yaml

QUERIES: Sequence[Mapping[str, Any]] = read_yaml(ROOT / "tests" / "scripts" / "finder_queries.yaml")
FIRST = 3


class Finder:
    """The finder of a collection, as its scripts answer without a page."""

    def __init__(self, collection: Collection) -> None:
        site = Site(collection)
        self.tree = collection.reference.concepts
        self.ideas = list(ideas(collection))
        self._columns, self._questions = finder_columns(site), questions(site)

    def find(self, asked: str) -> dict[str, Any]:
        """What ``finder/whole.js`` gives."""
        found: dict[str, Any] = json.loads(run("finder/whole.js", "find", self._columns, self._questions, asked))
        return found

    def titles(self, rows: Sequence[int]) -> list[str]:
        """Of some rows."""
        return [self.ideas[row].fields.title for row in rows]

    def judge(self, query: Mapping[str, Any]) -> Judged:
        """Whether what comes first is what was asked for."""
        found = self.find(query["asks"])
        right = {row for row, idea in enumerate(self.ideas) if self._fits(idea, query)}
        first = set(found["rows"][:FIRST])
        if not right:
            return Judged(found, not first, not first)
        return Judged(found, bool(first & right), first <= right)

    def _fits(self, idea: Idea, query: Mapping[str, Any]) -> bool:
        named = {*idea.page.concepts, *idea.themes}
        named |= {wider for name in named & {*self.tree} if (wider := self.tree[name].under)}
        meant = {*query.get("concepts", ()), *query.get("themes", ())}
        minutes = idea.planned.minutes if idea.planned else 0
        years = {idea.fields.best_year, *idea.fields.other_years}
        return (
            (not meant or bool(named & meant))
            and (not query.get("years") or bool(years & {*query["years"]}))
            and (not query.get("kinds") or idea.fields.kind_name() in query["kinds"])
            and (not query.get("minutes") or 0 < minutes <= query["minutes"])
        )


@dataclass(frozen=True)
class Judged:
    """What was found, whether the right idea is in the first three, and whether nothing else is."""

    found: Mapping[str, Any]
    has_the_right: bool
    has_no_other: bool
