"""Every objective code a session names: in what role, for which year, and where it stands."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from ..model.collection import Collection
from ..model.document import Document, Loc
from ..model.session import Session


@dataclass(frozen=True, slots=True)
class NamedCode:
    """A code as a session names it."""

    page: Document[Session]
    role: Literal["taught", "revisited", "bend"]
    year: int
    """The year the session, or its bend, is for."""
    framework: str
    code: str
    loc: Loc


def codes_named(collection: Collection) -> Iterator[NamedCode]:
    """All codes of all sessions."""
    for page in collection.of_kind(Session):
        session = page.fields
        for framework, codes in session.objectives.items():
            for index, code in enumerate(codes):
                yield NamedCode(page, "taught", session.year, framework, code, ("objectives", framework, index))
        for framework, codes in session.revisits.items():
            for index, code in enumerate(codes):
                yield NamedCode(page, "revisited", session.year, framework, code, ("revisits", framework, index))
        for year, bend in session.bends.items():
            for framework, codes in bend.objectives.items():
                for index, code in enumerate(codes):
                    loc: Loc = ("bends", "Reception" if year == 0 else year, "objectives", framework, index)
                    yield NamedCode(page, "bend", year, framework, code, loc)
