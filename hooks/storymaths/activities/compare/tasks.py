"""The task of a comparison, and what an answer to it is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal, Self

from pydantic import Field

from ...model.fields import Text
from ..kind import ActivityFields
from .completed import Completed, Filling
from .statement import Statement

Sign = Literal["=", "≠", "<", ">"]
_ALL: tuple[Sign, ...] = ("<", "=", ">")


class CompareTask(ActivityFields):
    """Statements to judge or to complete, each in its own line."""

    statements: Annotated[tuple[Text, ...], Field(min_length=1, max_length=20)]
    """Each compares sides that are sums of numbers, amounts or characters: ``6 + 3 = 5 + 4`` to be judged,
    ``6 + 3 ? 8`` with the sign missing, ``6 + 3 = ___ + 4`` with a number missing."""
    signs: Annotated[tuple[Sign, ...], Field(min_length=2)] = _ALL
    """The signs to choose from where one is missing."""
    unit: str | None = None
    """The unit of the fact that characters stand for; the book's own if not stated."""

    def with_statements(self, statements: tuple[str, ...]) -> Self:
        """The task with other lines."""
        return self.model_copy(update={"statements": statements})

    def with_signs(self, signs: tuple[Sign, ...]) -> Self:
        """The task with other signs to choose from."""
        return self.model_copy(update={"signs": signs})


@dataclass(frozen=True, slots=True)
class Comparison:
    """A true line: which, as it is when completed, and what fills its gap."""

    line: int
    """From 1."""
    statement: Completed
    fill: Filling | Sign | Literal["true"]
    """The number or the sign that was missing; ``true`` where none was."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of one statement: its true completions, or the false statement."""

    statement: Statement
    found: tuple[Comparison, ...]
    false: Completed | None = None

    @property
    def completed(self) -> tuple[Completed, ...]:
        """All that was worked out on both sides."""
        return (*(one.statement for one in self.found), *((self.false,) if self.false else ()))
