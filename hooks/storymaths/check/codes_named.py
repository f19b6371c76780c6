"""Every objective code a session names: in what role, for which year, which parts of it, and where it stands."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from ..model.collection import Collection
from ..model.document import Document, Loc
from ..model.fields import Claims
from ..model.session import Session

Role = Literal["taught", "revisited", "bend"]


@dataclass(frozen=True, slots=True)
class NamedCode:
    """A code as a session names it."""

    page: Document[Session]
    role: Role
    year: int
    """The year the session, or its bend, is for."""
    framework: str
    code: str
    parts: tuple[str, ...]
    """Ids of parts as written, or ``all``; empty where none is named."""
    loc: Loc


def codes_named(collection: Collection) -> Iterator[NamedCode]:
    """All codes of all sessions."""
    for page in collection.of_kind(Session):
        session = page.fields
        yield from _in(page, "taught", session.year, session.objectives, ("objectives",))
        yield from _in(page, "revisited", session.year, session.revisits, ("revisits",))
        for year, bend in session.bends.items():
            loc: Loc = ("bends", "Reception" if year == 0 else year, "objectives")
            yield from _in(page, "bend", year, bend.objectives, loc)


def _in(page: Document[Session], role: Role, year: int, claims: Claims, loc: Loc) -> Iterator[NamedCode]:
    for framework, listed in claims.items():
        for index, claim in enumerate(listed):
            yield NamedCode(page, role, year, framework, claim.code, claim.parts, (*loc, framework, index))
