"""What can be changed in a page, as data: a value of its front matter or of an activity, a section, the order of either."""

from __future__ import annotations

import datetime
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

from ..model.prose import Loc

Simple: TypeAlias = str | int | float | bool | datetime.date | None
Value: TypeAlias = (
    Simple | Sequence["Value"] | Mapping[str, "Value"] | Mapping[int, "Value"] | Mapping[str | int, "Value"]
)
"""What can stand in front matter, as YAML reads it."""


@dataclass(frozen=True, slots=True)
class SetValue:
    """A value at a path, in place of what stands there; where nothing does, its key is added in its usual place."""

    path: Loc
    value: Value


@dataclass(frozen=True, slots=True)
class AddItem:
    """An item of the list at a path, before the one that is at ``at`` now; at the end without it."""

    path: Loc
    value: Value
    at: int | None = None


@dataclass(frozen=True, slots=True)
class RemoveItem:
    """An item of a list, or a key with its value, taken out."""

    path: Loc


@dataclass(frozen=True, slots=True)
class MoveItem:
    """An item of a list, put where it is the item ``to`` of the list."""

    path: Loc
    to: int


@dataclass(frozen=True, slots=True)
class SetSection:
    """What stands under a heading of the second level; under none, above the first, where ``name`` is empty."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class AddSection:
    """A section, before the one that is at ``at`` now; at the end without it."""

    name: str
    text: str
    at: int | None = None


@dataclass(frozen=True, slots=True)
class RemoveSection:
    """A heading of the second level and all under it, taken out."""

    name: str


@dataclass(frozen=True, slots=True)
class RenameSection:
    """Another name for a heading of the second level."""

    name: str
    to: str


@dataclass(frozen=True, slots=True)
class MoveSection:
    """A section, put where it is the section ``to`` of the page, from 0."""

    name: str
    to: int


@dataclass(frozen=True, slots=True)
class SetBlock:
    """The whole text of an activity, the first of the page being 0."""

    number: int
    text: str


@dataclass(frozen=True, slots=True)
class InBlock:
    """A change to a value of an activity, the first of the page being 0; the path is within the activity."""

    number: int
    edit: ValueEdit


ValueEdit: TypeAlias = SetValue | AddItem | RemoveItem | MoveItem
SectionEdit: TypeAlias = SetSection | AddSection | RemoveSection | RenameSection | MoveSection
Edit: TypeAlias = ValueEdit | SectionEdit | SetBlock | InBlock


class EditRefused(ValueError):
    """A change that was not made, and nothing with it: why, in words an author understands."""
