"""Drawings of fractions: bars, lines and shapes in parts."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar, Literal, NamedTuple


@dataclass(frozen=True, slots=True)
class FractionBar:
    """A bar in equal parts, some of them shaded."""

    NAME: ClassVar = "fraction-bar"
    parts: int
    shaded: int
    whole: str
    """Written above the bar."""
    each: str
    """Written in each part, if there is room; may be empty."""


class PlaceOnLine(NamedTuple):
    """A number on a line, and how far along it stands, from 0 to 1."""

    text: str
    at: Fraction


@dataclass(frozen=True, slots=True)
class FractionLine:
    """A line in equal parts, with numbers placed on it and arrows at marks to be read."""

    NAME: ClassVar = "fraction-line"
    start: str
    end: str
    parts: int
    arrows: tuple[int, ...]
    """Marks, counted from 0 at the start."""
    places: tuple[PlaceOnLine, ...]


@dataclass(frozen=True, slots=True)
class ShapeInParts:
    """A bar or a circle in parts that need not be equal, each shaded wholly, partly or not at all."""

    NAME: ClassVar = "fraction-shape"
    label: str
    form: Literal["bar", "circle"]
    sizes: tuple[int, ...]
    shares: tuple[Fraction, ...]
    """How much of each part is shaded, from 0 to 1."""
