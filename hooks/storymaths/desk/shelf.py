"""The collection as its author sees it first: books with their pages, series, all else, each with its problems counted."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ..model.address import source_of
from ..model.collection import Collection
from ..model.problem import Problem
from ..publish.page_kinds.table import PAGE_KINDS


@dataclass(frozen=True, slots=True)
class Entry:
    """A page on the shelf."""

    source: str
    title: str
    kind: str
    """What a page of its kind is called."""
    place: int
    problems: int
    draft: bool = False


@dataclass(frozen=True, slots=True)
class Shelf:
    """A book, or whatever else stands together: its first page, where it has one of its own, and the others."""

    name: str
    title: str
    first: Entry | None
    entries: Sequence[Entry]

    @property
    def problems(self) -> int:
        """Of all its pages."""
        return sum(entry.problems for entry in (*self.entries, *((self.first,) if self.first else ())))


def shelves(collection: Collection, problems: Sequence[Problem]) -> list[Shelf]:
    """Every page of the collection: the books in order of their titles, then what belongs to no book."""
    found = _entries(collection, Counter(source_of(problem.place.path) for problem in problems))
    books = []
    for name, page in sorted(collection.books.items(), key=lambda one: one[1].fields.title.casefold()):
        folder = f"books/{name}/"
        own = [entry for source, entry in found.items() if source.startswith(folder) and source != page.source]
        books.append(Shelf(name, page.fields.title, found[page.source], sorted(own, key=_in_order)))
    shown = {entry.source for shelf in books for entry in (*shelf.entries, shelf.first) if entry}
    series = [entry for entry in found.values() if entry.kind == PAGE_KINDS["series"].names.one]
    rest = [entry for entry in found.values() if entry.source not in shown and entry not in series]
    others = (("Series", series), ("Other pages", sorted(rest, key=_in_order)))
    return [*books, *(Shelf("", title, None, entries) for title, entries in others if entries)]


def _entries(collection: Collection, problems: Mapping[str, int]) -> Mapping[str, Entry]:
    read = [
        Entry(
            page.source,
            page.fields.title,
            PAGE_KINDS[page.fields.kind].names.one,
            page.fields.place,
            problems[page.source],
            page.fields.status == "draft",
        )
        for page in collection.documents
    ]
    broken = [
        Entry(page.source, str(page.raw.get("title") or page.source), _kind_of(page.raw), 99, problems[page.source])
        for page in collection.unread
    ]
    return {entry.source: entry for entry in (*read, *broken)}


def _kind_of(raw: Mapping[str, object]) -> str:
    kind = PAGE_KINDS.get(str(raw.get("kind")))
    return kind.names.one if kind else "page"


def _in_order(entry: Entry) -> tuple[int, int, str]:
    kinds = [kind.names.one for kind in PAGE_KINDS.values()]
    return kinds.index(entry.kind) if entry.kind in kinds else len(kinds), entry.place, entry.source
