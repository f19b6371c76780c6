"""Drawings to sort and to order things in: names in hoops, boxes and places."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar

Names = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SortHoop:
    """One hoop: what is in it, and what is outside."""

    NAME: ClassVar = "sort-hoop"
    label: str
    otherwise: str
    """What is true of those outside."""
    inside: Names
    outside: Names


@dataclass(frozen=True, slots=True)
class TwoRules:
    """What is sorted by two rules: names that fit both, only the first, only the second, neither."""

    labels: tuple[str, str]
    otherwise: tuple[str, str]
    """What is true of those that do not fit."""
    both: Names
    first: Names
    second: Names
    neither: Names


@dataclass(frozen=True, slots=True)
class SortVenn(TwoRules):
    """Two hoops that overlap."""

    NAME: ClassVar = "sort-venn"


@dataclass(frozen=True, slots=True)
class SortThreeRings:
    """Three hoops that overlap."""

    NAME: ClassVar = "sort-three-rings"
    labels: tuple[str, str, str]
    places: tuple[Names, ...]
    """What fits all three; the first and second, the first and third, the second and third only; just one; none."""


@dataclass(frozen=True, slots=True)
class SortCarroll(TwoRules):
    """A table of two by two boxes: across by the first rule, down by the second."""

    NAME: ClassVar = "sort-carroll"


@dataclass(frozen=True, slots=True)
class Places:
    """A row of places from one end to the other; equals stand in one place, and an empty place is to be filled."""

    NAME: ClassVar = "places"
    places: tuple[Names, ...]
    first: str
    """What the first end is: ``least``."""
    last: str
