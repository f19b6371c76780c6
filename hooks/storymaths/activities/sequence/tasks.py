"""The tasks of a row of numbers and of a repeating pattern, one schema each, and what their answers are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any, ClassVar, Literal, Self

from pydantic import Field, model_validator

from ...model.activity import GAP
from ...model.fields import Text
from ...model.plain import Plain, as_plain
from ..kind import ActivityFields, Exact

Place = Annotated[int, Field(ge=1, le=1_000_000, strict=True)]
Places = Annotated[tuple[Place, ...], Field(min_length=1, max_length=12)]
Term = Exact | Literal["___"]
Known = Mapping[int, Fraction]
"""Terms by their place, which is counted from 1."""


class RowFields(ActivityFields):
    """Numbers in a row."""

    terms: Annotated[tuple[Term, ...], Field(min_length=1, max_length=24)]
    """Numbers in a row; ``___`` for a gap."""
    rule: Literal["step", "growing", "times"] = "step"
    """What numbers do: equal steps; steps that grow by the same each time; so many times the one before."""
    step: Exact | None = None
    """The step, below nought when counting back. Needed only where one term is known."""
    fractions: bool = False
    """Whether numbers that are not whole are written as fractions; so where a term is, such as ``1 5/8``."""

    @model_validator(mode="before")
    @classmethod
    def _as_typed(cls, raw: Any) -> Any:
        """The form that the terms are typed in."""
        terms = raw.get("terms") if isinstance(raw, Mapping) else None
        typed = isinstance(terms, (list, tuple)) and any(isinstance(term, str) and "/" in term for term in terms)
        return {"fractions": True, **raw} if typed else raw

    @property
    def decimals(self) -> int:
        """How many decimal places numbers may be written with."""
        return 0 if self.fractions else 3

    @property
    def known(self) -> dict[int, Fraction]:
        """The terms that are shown, by their place."""
        return {place: term for place, term in enumerate(self.terms, 1) if isinstance(term, Fraction)}

    @property
    def gaps(self) -> list[int]:
        """The places of its gaps."""
        return [place for place, term in enumerate(self.terms, 1) if not isinstance(term, Fraction)]

    def with_terms(self, terms: tuple[Term, ...], step: Fraction | None) -> Self:
        """The task with other numbers; the step is stated where it was."""
        return self.model_copy(update={"terms": terms, "step": None if self.step is None else step})


class GapsTask(RowFields):
    """``terms`` with gaps: which numbers are missing."""

    task_name: ClassVar[str] = "gaps"


class PlacesTask(RowFields):
    """``terms`` and ``places``: which number comes there."""

    task_name: ClassVar[str] = "places"
    places: Places
    """Places asked about, the first being 1."""


class SaidTask(RowFields):
    """``terms`` and ``said``: which of these are said in the count, if it goes on."""

    task_name: ClassVar[str] = "said"
    said: Annotated[tuple[Exact, ...], Field(min_length=1, max_length=24)]
    """Numbers asked about."""

    def with_said(self, said: tuple[Fraction, ...]) -> Self:
        """The task about other numbers."""
        return self.model_copy(update={"said": said})


class MistakeTask(RowFields):
    """``terms`` and ``mistake``: which number is wrong, and what it should be."""

    task_name: ClassVar[str] = "mistake"
    mistake: bool
    """That one term is wrong, and is to be found and put right."""


class PatternFields(ActivityFields):
    """Things that repeat."""

    pattern: Annotated[tuple[Text, ...], Field(min_length=1, max_length=40)]
    """Things that repeat, by a character's id or any word; ``___`` for a gap."""


class UnitTask(PatternFields):
    """A ``pattern`` without gaps: what comes over and over."""

    task_name: ClassVar[str] = "unit"


class PatternGapsTask(PatternFields):
    """A ``pattern`` with gaps: what is missing."""

    task_name: ClassVar[str] = "pattern-gaps"


class PatternPlacesTask(PatternFields):
    """A ``pattern`` and ``places``: what comes there."""

    task_name: ClassVar[str] = "pattern-places"
    places: Places
    """Which places are asked for, such as 8 for the eighth."""

    def with_places(self, places: tuple[int, ...]) -> Self:
        """The task about other places."""
        return self.model_copy(update={"places": places})


class PatternMistakeTask(PatternFields):
    """A ``pattern`` and ``mistake``: what is out of place, and what should be there."""

    task_name: ClassVar[str] = "pattern-mistake"
    mistake: bool
    """true where one of the pattern is wrong and is to be found."""


RowTask = GapsTask | PlacesTask | SaidTask | MistakeTask
PatternTask = UnitTask | PatternGapsTask | PatternPlacesTask | PatternMistakeTask
SequenceTask = RowTask | PatternTask


def schema_for(raw: Mapping[str, Any]) -> type[SequenceTask]:
    """Told by whether there is a pattern, and by what is asked of it."""
    mistake = raw.get("mistake", False) is not False
    if "pattern" in raw:
        if "places" in raw or mistake:
            return PatternPlacesTask if "places" in raw else PatternMistakeTask
        return PatternGapsTask if isinstance(raw["pattern"], list) and GAP in raw["pattern"] else UnitTask
    if "places" in raw or "said" in raw:
        return PlacesTask if "places" in raw else SaidTask
    return MistakeTask if mistake else GapsTask


@dataclass(frozen=True, slots=True)
class FilledRow:
    """The whole row, and what stands in its gaps."""

    terms: tuple[Fraction, ...]
    gaps: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class TermAt:
    """The number at a place."""

    place: int
    term: Fraction


@dataclass(frozen=True, slots=True)
class SaidNumber:
    """A number that is said in a count, and where."""

    said: Fraction
    place: int


@dataclass(frozen=True, slots=True)
class FilledPattern:
    """The whole pattern, what stands in its gaps, and its unit."""

    terms: tuple[str, ...]
    gaps: tuple[str, ...]
    unit: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RepeatingUnit:
    """What comes over and over."""

    unit: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class ThingAt:
    """What comes at a place of a pattern."""

    place: int
    term: str
    unit: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Mistake:
    """What is wrong at a place, and what should be there: a number of a row, or a thing of a pattern."""

    place: int
    here: Fraction | str
    should_be: Fraction | str

    def as_plain(self) -> Plain:
        """As it is documented, with a key that is no name in the language this is written in."""
        return {"place": self.place, "is": as_plain(self.here), "should_be": as_plain(self.should_be)}


RowAnswer = FilledRow | TermAt | SaidNumber | Mistake
PatternAnswer = FilledPattern | RepeatingUnit | ThingAt | Mistake
SequenceAnswer = RowAnswer | PatternAnswer
