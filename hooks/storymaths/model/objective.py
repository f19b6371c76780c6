"""Curriculum frameworks, their objectives, and the parts of these. A year is an attribute of an objective, not its name."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Annotated, Literal

from pydantic import Field

from .fields import Day, Id, Strict, Text, Year

ALL = "all"
"""What an author writes for every part of an objective."""


class Source(Strict):
    """A published document a fact was taken from."""

    title: Text
    publisher: Text
    date: Text
    reference: Text | None = None


class Part(Strict):
    """One of the things an objective's own words list, which can be taught while the others are not."""

    id: Id
    says: Text
    asked: bool = True
    """False where it is in doubt that the document asks for it: the objective counts as taught without it."""
    trace: tuple[Text, ...] = ()
    """Words and signs of which one must stand in a session that teaches it; none where that is not certain."""
    practised_by: tuple[Text, ...] = ()
    """What an activity has that surely practises it, as in ``covers/marks.py``."""

    @property
    def name(self) -> str:
        """Its id as words: ``tens back``."""
        return self.id.replace("-", " ")


class Objective(Strict):
    """One thing to be learnt: the official code, and our own short words for it."""

    code: Text
    year: Year
    strand: Text
    says: Text
    follows: tuple[str, ...] = ()
    """Codes of the same framework that come before."""
    replaced_by: str | None = None
    """``framework:code`` of the objective that takes its place in a later curriculum."""
    letter_from: Literal["seen", "order", "unsure"] = "seen"
    """How the closing letter of the code was tied to its statement: seen beside it, by the order of
    the statements, or not settled between two copies."""
    own_label: bool = False
    """True where the document gives no code and the label is ours."""
    doubt: Text | None = None
    """What of its parts could not be settled, in a sentence."""
    parts: tuple[Part, ...] = ()
    """What its own words list; none where it is one thing, or was not split."""

    @property
    def has_parts(self) -> bool:
        """Whether a session must say which of it is taught."""
        return len(self.parts) > 1

    def parts_named(self, ids: Sequence[str]) -> tuple[Part, ...]:
        """Its parts among ``ids``, in its own order; every one for ``all``, and where it has only one."""
        every = not self.has_parts or ALL in ids
        return tuple(part for part in self.parts if every or part.id in ids)


class Framework(Strict):
    """A curriculum document: when it is in force, and its objectives."""

    id: Id
    name: Text
    short_name: Text
    status: Literal["statutory", "test-framework", "non-statutory", "announced"]
    standing: Text
    """The same as pages say it, in whole sentences."""
    taught_from: Day
    taught_until: Day | None = None
    expected_until: Day | None = None
    """When it is expected to be replaced; a plan, not a fact."""
    replaced_by: Id | None = None
    revised: Day
    """The day a code, a year or our words for it last changed in this file."""
    sources: Annotated[tuple[Source, ...], Field(min_length=1)]
    strands: Mapping[str, Text]
    objectives: tuple[Objective, ...]

    @property
    def rests_on_law(self) -> bool:
        """Whether what its objectives stand for is statutory, be it by another document."""
        return self.status in ("statutory", "test-framework")
