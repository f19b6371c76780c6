"""The tasks of number bonds, one schema each, and a bond."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal, Self

from pydantic import Field

from ...model.fields import Id, Text
from ..kind import ActivityFields

Number = Annotated[int, Field(ge=0, le=10_000_000, strict=True)]
HowMany = Annotated[int, Field(ge=2, le=5, strict=True)]


class BondsFields(ActivityFields):
    """What every task may say."""

    things: Text | None = None
    """What is split, such as shells, in words."""


class CastTask(BondsFields):
    """A ``fact``: which characters make the whole, the parts being their numbers."""

    task_name: ClassVar[str] = "cast"
    fact: Text
    whole: Number | Id
    """The whole; a character's id stands for its fact."""
    parts: HowMany = 2
    """How many parts."""

    def with_whole(self, whole: int) -> Self:
        """The task with another whole, unless it is that of a character."""
        return self if isinstance(self.whole, str) else self.model_copy(update={"whole": whole})


class WholeTask(BondsFields):
    """``known`` parts and no whole: what they make."""

    task_name: ClassVar[str] = "whole"
    known: Annotated[tuple[Number, ...], Field(min_length=2, max_length=5)]
    """Parts that are given; a cast holds them in its order, the first character the first part."""

    def with_known(self, known: tuple[int, ...]) -> Self:
        """The task with other parts."""
        return self.model_copy(update={"known": known})


class SplitFields(BondsFields):
    """A whole to be split; characters in a cast without a fact hold the parts."""

    whole: Number
    """The number that is split."""
    parts: HowMany = 2
    """How many parts."""
    smallest: Number = 0
    """The least a part may be."""
    largest: Number | None = None
    """The most a part may be; if not stated, the whole."""
    step: Annotated[int, Field(ge=1, le=1_000_000, strict=True)] = 1
    """Parts are multiples of this: 10 for tens."""
    different: bool = False
    """Whether no two parts may be the same."""
    order: Literal["same", "counts"] = "same"
    """Whether 3 and 4 is another way than 4 and 3. Where characters hold the parts, it always counts."""


class SplitTask(SplitFields):
    """A ``whole``: every way of splitting it."""

    task_name: ClassVar[str] = "split"

    def with_whole(self, whole: int, step: int) -> Self:
        """Another whole in other steps; the least and the most a part may be keep their place in it."""
        largest = self.largest
        if largest is not None:
            largest = max(step, largest * whole // self.whole // step * step)
        smallest = self.smallest // self.step * step
        return self.model_copy(update={"whole": whole, "step": step, "smallest": smallest, "largest": largest})


class MissingTask(SplitFields):
    """A ``whole`` and some ``known`` parts: the others."""

    task_name: ClassVar[str] = "missing"
    known: Annotated[tuple[Number, ...], Field(min_length=1, max_length=5)]
    """The parts that are given."""

    def with_known(self, known: tuple[int, ...], whole: int) -> Self:
        """The task with other numbers."""
        return self.model_copy(update={"known": known, "whole": whole})

    def times(self, factor: int) -> Self:
        """The task with everything so many times as much."""
        largest = None if self.largest is None else self.largest * factor
        update = {"step": self.step * factor, "smallest": self.smallest * factor, "largest": largest}
        return self.with_known(tuple(part * factor for part in self.known), self.whole * factor).model_copy(
            update=update
        )


BondsTask = CastTask | WholeTask | SplitTask | MissingTask


@dataclass(frozen=True, slots=True)
class Bond:
    """A whole and parts that make it, the known ones first; and who brings or holds each, where it is somebody's."""

    whole: int
    parts: tuple[int, ...]
    who: tuple[str, ...] | None = None
