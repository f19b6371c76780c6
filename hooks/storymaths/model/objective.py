"""Curriculum frameworks and their objectives. A year is an attribute of an objective, not its name."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal

from pydantic import Field

from .fields import Day, Id, Strict, Text, Year


class Source(Strict):
    """A published document a fact was taken from."""

    title: Text
    publisher: Text
    date: Text
    reference: Text | None = None


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


class Framework(Strict):
    """A curriculum document: when it is in force, and its objectives."""

    id: Id
    name: Text
    short_name: Text
    status: Literal["statutory", "non-statutory", "announced"]
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
