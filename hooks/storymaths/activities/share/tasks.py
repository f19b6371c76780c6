"""The tasks of sharing and grouping, one schema each, and what comes of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar, Protocol, Self

from pydantic import Field

from ...model.fields import Id, Text
from ..kind import ActivityFields

Count = Annotated[int, Field(ge=1, le=10_000_000, strict=True)]
LeftOver = Annotated[int, Field(ge=0, le=10_000_000, strict=True)]
Total = Annotated[int, Field(strict=True)] | Id
"""How many things; a character's id stands for its fact."""


class ShareFields(ActivityFields):
    """What every task may say."""

    things: Text | None = None
    """What they are, in the plural, such as shells."""


class EachTask(ShareFields):
    """``total`` and ``among``, or a cast without a fact: how many each."""

    task_name: ClassVar[str] = "each"
    total: Total
    """How many there are in all."""
    among: Count | None = None
    """How many groups, or children; a cast without a fact is shared among."""

    def with_groups(self, groups: int, each: int, left: int) -> Self:
        """The task with other numbers; a cast that shares stays as many as it is."""
        among = None if self.among is None else groups
        return self.model_copy(update={"total": groups * each + left, "among": among})


class GroupsTask(ShareFields):
    """``total`` and ``each``: how many groups."""

    task_name: ClassVar[str] = "groups"
    total: Total
    """How many there are in all."""
    each: Count
    """How many in each group."""

    def with_groups(self, groups: int, each: int, left: int) -> Self:
        """The task with other numbers."""
        return self.model_copy(update={"total": groups * each + left, "each": each})


class TotalTask(ShareFields):
    """``among``, or a cast without a fact, and ``each``: how many altogether."""

    task_name: ClassVar[str] = "total"
    among: Count | None = None
    """How many groups, or children; a cast without a fact is shared among."""
    each: Count
    """How many in each group."""

    def with_groups(self, groups: int, each: int, left: int) -> Self:
        """The task with other numbers; none are ever left over."""
        return self.model_copy(update={"among": None if self.among is None else groups, "each": each})


class PartsTask(ShareFields):
    """``total`` and ``parts``: shares that are not equal, such as twice as many."""

    task_name: ClassVar[str] = "parts"
    total: Total
    """How many there are in all."""
    parts: Mapping[Id, Count]
    """How many equal parts each character gets: ``{gull: 2, crab: 1}``."""

    def with_groups(self, groups: int, each: int, left: int) -> Self:
        """The task with another total; ``groups`` are the parts, which stay as they are."""
        return self.model_copy(update={"total": groups * each + left})


class WaysTask(ShareFields):
    """``total`` alone: every way of making equal groups."""

    task_name: ClassVar[str] = "ways"
    total: Total
    """How many there are in all."""
    left_over: LeftOver = 0
    """How many are to be left over."""
    fewest: Count = 1
    """The fewest groups."""
    most: Count | None = None
    """The most groups."""

    def with_shared(self, shared: int) -> Self:
        """So many shared besides what is left over, and the most groups in the same part of the total."""
        most = self.most
        if most is not None and isinstance(self.total, int):
            most = max(self.fewest, min(shared, most * shared // self.total))
        return self.model_copy(update={"total": shared + self.left_over, "most": most})


class _PileFields(ShareFields):
    """Amounts of which some can be shared ``among`` so many, or put in groups of ``each``."""

    among: Count | None = None
    """How many share."""
    each: Count | None = None
    """How many in each group."""
    left_over: LeftOver = 0
    """How many are left over."""

    @property
    def by(self) -> int:
        """How many share a pile, or how many go into a group."""
        return self.among or self.each or 1


class PilesTask(_PileFields):
    """``piles``: which can be shared."""

    task_name: ClassVar[str] = "piles"
    piles: Annotated[tuple[Count, ...], Field(min_length=1, max_length=24)]
    """How many there are in each pile."""

    def with_piles(self, piles: tuple[int, ...], by: int) -> Self:
        """The task with other piles, shared by so many."""
        left = min(self.left_over, by - 1)
        name = "among" if self.among else "each"
        return self.model_copy(update={"piles": piles, name: by, "left_over": left})


class CastPilesTask(_PileFields):
    """A cast with a ``fact``: whose can be shared."""

    task_name: ClassVar[str] = "whose"
    fact: Text


ShareTask = EachTask | GroupsTask | TotalTask | PartsTask | WaysTask | PilesTask | CastPilesTask


class InGroups(Protocol):
    """What comes in so many groups of so many, with some left over."""

    @property
    def groups(self) -> int: ...
    @property
    def each(self) -> int: ...
    @property
    def left(self) -> int: ...


@dataclass(frozen=True, slots=True)
class Groups:
    """Equal groups, and what is left over."""

    groups: int
    each: int
    left: int


@dataclass(frozen=True, slots=True)
class Shares:
    """Equal shares; ``gets`` is what each character has of them, where characters share."""

    groups: int
    each: int
    left: int
    gets: Mapping[str, int] | None = None


@dataclass(frozen=True, slots=True)
class Together:
    """Equal groups put together."""

    groups: int
    each: int
    left: int
    total: int


@dataclass(frozen=True, slots=True)
class Pile:
    """A pile that comes out as it should, and whose it is, where it is somebody's."""

    pile: int
    groups: int
    each: int
    left: int
    who: str | None = None


@dataclass(frozen=True, slots=True)
class Parts:
    """Shares in equal parts, not the same number of parts to each."""

    gets: Mapping[str, int]
    left: int


ShareAnswer = Groups | Shares | Together | Pile | Parts
