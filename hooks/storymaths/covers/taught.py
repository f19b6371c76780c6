"""Which sessions teach which objective, and which parts of it: taught, taken up again, or touched in a bend."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from ..model.document import Document
from ..model.fields import Claims
from ..model.objective import Part
from ..model.reference import Reference
from ..model.session import Session

Key = tuple[str, str]
"""A framework's id and a code."""

How = Literal["taught", "part", "again", "bend"]
"""Every part taught by some session as its own, or only some; taken up again in a later session or year; or touched when a
session bends to another year."""

SessionPage = Document[Session]


@dataclass(frozen=True)
class Coverage:
    """The sessions of a book, a series or a collection by objective, in three ways, in the order they were given."""

    sessions: tuple[SessionPage, ...]
    taught: Mapping[Key, Sequence[SessionPage]]
    """Sessions that teach an objective or a part of it as their own."""
    revisited: Mapping[Key, Sequence[SessionPage]]
    bent: Mapping[Key, Sequence[SessionPage]]
    parts: Mapping[Key, Mapping[str, Sequence[SessionPage]]]
    """Of objectives that have parts, the sessions that teach each part, by its id in the objective's own order."""
    missing: Mapping[Key, tuple[Part, ...]]
    """Of objectives taught in part, the parts that are asked for and that no session teaches."""

    def how(self, key: Key) -> How | None:
        """The fullest way in which an objective is covered; None when it is not."""
        if key in self.taught:
            return "part" if key in self.missing else "taught"
        if key in self.revisited:
            return "again"
        return "bend" if key in self.bent else None


def coverage_of(sessions: Iterable[SessionPage], reference: Reference) -> Coverage:
    """What some sessions cover."""
    told = tuple(sessions)
    taught: dict[Key, list[SessionPage]] = {}
    revisited: dict[Key, list[SessionPage]] = {}
    bent: dict[Key, list[SessionPage]] = {}
    for page in told:
        _add(taught, page, page.fields.objectives)
        _add(revisited, page, page.fields.revisits)
        for bend in page.fields.bends.values():
            _add(bent, page, bend.objectives)
    parts = {key: _by_part(key, pages, reference) for key, pages in taught.items() if _has_parts(key, reference)}
    missing = {
        key: left
        for key, found in parts.items()
        if (left := tuple(part for part in reference.objectives[key].parts if part.asked and part.id not in found))
    }
    return Coverage(told, taught, revisited, bent, parts, missing)


def parts_taught(page: SessionPage, key: Key, reference: Reference) -> tuple[Part, ...]:
    """The parts of an objective that a session says it teaches as its own."""
    framework, code = key
    named = [claim for claim in page.fields.objectives.get(framework, ()) if claim.code == code]
    return reference.objectives[key].parts_named([part for claim in named for part in claim.parts])


def _has_parts(key: Key, reference: Reference) -> bool:
    return key in reference.objectives and reference.objectives[key].has_parts


def _by_part(key: Key, pages: Sequence[SessionPage], reference: Reference) -> dict[str, list[SessionPage]]:
    """Of the sessions that name an objective, those that teach each of its parts; parts none teaches are left out."""
    taught = [(page, parts_taught(page, key, reference)) for page in pages]
    found = {part.id: [page for page, parts in taught if part in parts] for part in reference.objectives[key].parts}
    return {part: sessions for part, sessions in found.items() if sessions}


def _add(found: dict[Key, list[SessionPage]], page: SessionPage, objectives: Claims) -> None:
    for framework, claims in objectives.items():
        for claim in claims:
            pages = found.setdefault((framework, claim.code), [])
            if not pages or pages[-1] is not page:  # one session may bend to two years with one objective
                pages.append(page)
