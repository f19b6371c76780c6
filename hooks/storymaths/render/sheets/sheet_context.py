"""What the sheets of a page are made from: the collection, the page's activities worked out, and the drawings."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from hashlib import sha256
from typing import Any

from ...activities.bending import Version
from ...activities.on_pages import PageActivity
from ...activities.worked import AnyWorked
from ...model.activity import CastMember, Figure, Shown, Solution
from ...model.body import Block, Fence
from ...model.collection import Collection
from ...model.document import Document
from ...model.page_fields import PageFields
from ..figures.table import draw
from .pictures import for_paper, least_letters, standing_alone
from .words import breakable

Drawings = Callable[[str], str | None]
"""The text of a drawing by its source inside ``content/``; none if there is no such file."""


@dataclass(frozen=True, slots=True)
class SheetActivity:
    """An activity of a page, as it is for each year that has a version."""

    title: str
    kind: str
    year: int
    """The year it is written for."""
    fact: str
    """The fact of the cast it turns on; may be empty."""
    by_year: Mapping[int, Solution]
    """Its solution for every year that has its own, the author's among them."""
    titles: Mapping[int, str]
    """What it is called in those years."""
    same: frozenset[int] = frozenset()
    """The years it serves as it is: they have no sheet of their own."""
    aloud: frozenset[int] = frozenset()
    """The years in which nothing of it is written."""
    others: tuple[Version, ...] = ()
    """Further sets of numbers for its own year."""

    @property
    def own(self) -> Solution:
        """As its author wrote it."""
        return self.by_year[self.year]

    def solution_in(self, year: int) -> Solution | None:
        """As it is done in a year; None where it is not."""
        return self.own if year in self.same else self.by_year.get(year)


@dataclass(frozen=True, slots=True)
class SheetContext:
    """Where sheets are made."""

    collection: Collection
    activities_of: Callable[[Document[PageFields]], tuple[PageActivity, ...]]
    """Those of a page, worked out."""
    drawings: Drawings

    @property
    def children(self) -> int:
        """The class that paper is counted for."""
        return self.collection.reference.limits.class_size

    def activities(self, page: Document[PageFields]) -> list[SheetActivity]:
        """The activities of a page that could be worked out."""
        return list(self.activities_by_line(page).values())

    def activities_by_line(self, page: Document[PageFields]) -> dict[int, SheetActivity]:
        """The same, by the line on which each stands."""
        found = {}
        for activity in self.activities_of(page):
            worked = activity.worked.done
            if worked is not None:
                found[activity.fence.line] = replace(_sheet_activity(worked), others=activity.worked.other_sets)
        return found

    def without_activities(self, page: Document[PageFields], blocks: Sequence[Block]) -> Iterator[Block]:
        """Blocks of a page, activities left out."""
        lines = {activity.fence.line for activity in self.activities_of(page)}
        return (block for block in blocks if not (isinstance(block, Fence) and block.line in lines))


def _sheet_activity(worked: AnyWorked) -> SheetActivity:
    own, fields = worked.context.year.year, worked.fields
    others = {year: version for year, version in worked.versions.items() if year != own}
    changed = {year: version for year, version in others.items() if not version.same}
    return SheetActivity(
        fields.title,
        worked.kind.name,
        own,
        fields.fact or "",
        {own: worked.solution} | {year: version.solution for year, version in changed.items()},
        {own: fields.title} | {year: version.fields.title for year, version in changed.items()},
        same=frozenset(others.keys() - changed.keys()),
        aloud=frozenset(year for year, version in others.items() if not version.written),
    )


@dataclass(slots=True)
class SheetPictures:
    """The pictures of one sheet, gathered while it is made; each is kept once."""

    drawings: Drawings
    kept: dict[str, str] = field(default_factory=dict)

    def add(self, source: str) -> str:
        """The name parts know a drawing by; empty for one that is not there or that cannot be used as it is."""
        if source and source not in self.kept:
            svg = self.drawings(source)
            if svg is not None and source.endswith(".svg"):
                svg = for_paper(svg)
            if svg is None:
                return ""
            self.kept[source] = svg
        return source

    def add_figure(self, figure: Figure) -> str:
        """The name of a figure drawn, the same for the same drawing in every sheet."""
        drawn = standing_alone(draw(figure.data))
        name = f"figure {sha256(drawn.encode()).hexdigest()[:16]}"
        self.kept[name] = drawn
        return name

    def figures(self, figures: tuple[Figure, ...]) -> Iterator[dict[str, Any]]:
        """Figures as parts hold them: the drawing, its words, and how high its least letters are beside its width."""
        for figure in figures:
            name = self.add_figure(figure)
            yield {"picture": name, "alt": figure.alt, "letters": least_letters(self.kept[name])}

    def characters(self, characters: tuple[CastMember, ...], shows: Sequence[Shown]) -> list[dict[str, str | int]]:
        """Characters as parts hold them: name, drawing, and the number each shows."""
        return [
            {
                "name": " ".join(map(breakable, character.name.split(" "))),
                "picture": self.add(character.picture),
                "alt": character.alt,
                "notches": character.notches,
                "number": shows[place].says.replace(" ", "\u00a0") if place < len(shows) else "",
            }
            for place, character in enumerate(characters)
        ]
