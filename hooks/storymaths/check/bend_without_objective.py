"""Bends that name no objective of the year they bend to, or bend to the page's own year."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from ..model.collection import Collection
from ..model.document import Document
from ..model.fields import year_name
from ..model.home import Home
from ..model.problem import Problem
from ..model.reference import Reference
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session

RULE = Rule(
    name="bend-without-objective",
    says="A bend to another year names at least one objective of that year, where the year has any of the page's ideas.",
    why="Without one there is no telling what the other year would learn from it.",
    source=HOUSE_RULE,
    wrong="bends: {3: {objectives: {}, …}}",
    right="bends: {3: {objectives: {england-ready-to-progress: [3AS-3]}, …}}",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each bend to the year a page is already for, and for a session's with no objective at all."""
    pages: tuple[Document[Session] | Document[Home], ...] = (*collection.of_kind(Session), *collection.of_kind(Home))
    for page in pages:
        if page.fields.year in page.fields.bends:
            year = page.fields.year
            yield RULE.problem(
                page.place("bends", year or "Reception", "[key]"),
                f"The page is for {year_name(year)} already, so it cannot bend to it.",
                "name the year below or above.",
            )
    for page in collection.of_kind(Session):
        for year, bend in page.fields.bends.items():
            named = year == page.fields.year or any(bend.objectives.values())
            if not named and _has_any(collection.reference, page.fields.concepts, year):
                yield RULE.problem(
                    page.place("bends", year or "Reception"),
                    f"The bend to {year_name(year)} names no objective of {year_name(year)}.",
                    f"add objectives: with a code of {year_name(year)}.",
                )


def _has_any(reference: Reference, concepts: Sequence[str], year: int) -> bool:
    """Whether a curriculum asks anything of the year that belongs to one of these ideas."""
    known = (reference.concepts[one].objectives for one in concepts if one in reference.concepts)
    codes = ((framework, code) for listed in known for framework, of in listed.items() for code in of)
    return any(pair in reference.objectives and reference.objectives[pair].year == year for pair in codes)
