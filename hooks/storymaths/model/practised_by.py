"""``site_data/practised.yaml``: what an activity has that practises an objective, or is of a concept."""

from __future__ import annotations

from collections.abc import Mapping, Set
from typing import Annotated

from pydantic import AfterValidator, Field

from .fields import Id, Strict, Text

_AND = " & "


def _one_space(line: str) -> str:
    if any(not mark or mark != mark.strip() for mark in line.split(_AND)):
        raise ValueError("should be marks with & between them, such as balance & to 10")
    return line


Marks = Annotated[Text, AfterValidator(_one_space)]
"""Marks of an activity with ``&`` between them: all of them are needed."""
Ways = Annotated[tuple[Marks, ...], Field(min_length=1)]
"""Any one of these is enough."""


class PractisedBy(Strict):
    """The whole file."""

    source: Text
    bodies: tuple[Text, ...]
    """Things that belong to a body, whose numbers are never changed."""
    objectives: Mapping[Id, Mapping[str, Ways]]
    """By framework and code."""
    concepts: Mapping[Id, Ways]

    def practises(self, key: tuple[str, str], marks: Set[str]) -> bool:
        """Whether an activity with these marks practises an objective, by framework and code."""
        return any(_holds(way, marks) for way in self.ways(key))

    def is_of(self, concept: str, marks: Set[str]) -> bool:
        """Whether an activity with these marks is of a concept."""
        return any(_holds(way, marks) for way in self.concepts.get(concept, ()))

    def ways(self, key: tuple[str, str]) -> tuple[str, ...]:
        """What practises an objective; none where no activity does."""
        framework, code = key
        return self.objectives.get(framework, {}).get(code, ())


def _holds(way: str, marks: Set[str]) -> bool:
    return all(mark in marks for mark in way.split(_AND))
