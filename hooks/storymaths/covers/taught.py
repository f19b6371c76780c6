"""Which sessions teach which objective: taught, taken up again, or touched in a bend."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from ..model.document import Document
from ..model.session import Session

Key = tuple[str, str]
"""A framework's id and a code."""

How = Literal["taught", "again", "bend"]
"""Taught as the session's own, taken up again from the year before, or touched when the session bends to another year."""

SessionPage = Document[Session]


@dataclass(frozen=True)
class Coverage:
    """The sessions of a book, a series or a collection by objective, in three ways, in the order they were given."""

    sessions: tuple[SessionPage, ...]
    taught: Mapping[Key, Sequence[SessionPage]]
    revisited: Mapping[Key, Sequence[SessionPage]]
    bent: Mapping[Key, Sequence[SessionPage]]

    def how(self, key: Key) -> How | None:
        """The fullest way in which an objective is covered; None when it is not."""
        if key in self.taught:
            return "taught"
        if key in self.revisited:
            return "again"
        return "bend" if key in self.bent else None


def coverage_of(sessions: Iterable[SessionPage]) -> Coverage:
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
    return Coverage(told, taught, revisited, bent)


def _add(found: dict[Key, list[SessionPage]], page: SessionPage, objectives: Mapping[str, Sequence[str]]) -> None:
    for framework, codes in objectives.items():
        for code in codes:
            pages = found.setdefault((framework, code), [])
            if not pages or pages[-1] is not page:  # one session may bend to two years with one objective
                pages.append(page)
