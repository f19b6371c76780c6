"""Drawings of whole numbers: dots, squares and bars, and how parts make a whole."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, NamedTuple


@dataclass(frozen=True, slots=True)
class Array:
    """Dots in equal rows, and ``left`` more below."""

    NAME: ClassVar = "array"
    rows: int
    columns: int
    left: int
    labels: tuple[str, ...]
    """A name for each row, or none at all."""


@dataclass(frozen=True, slots=True)
class BondStairs:
    """Pairs that make one number, each a bar of two colours."""

    NAME: ClassVar = "bond-stairs"
    rows: tuple[tuple[int, int], ...]
    """Each with the same sum, from 1 to 20."""


@dataclass(frozen=True, slots=True)
class PartWhole:
    """A part–whole model; an empty text or ``?`` is an empty box."""

    NAME: ClassVar = "part-whole"
    whole: str
    parts: tuple[str, ...]
    in_dots: bool = False
    """Whether numbers to ten are shown as so many dots, and not as figures."""


class BarPart(NamedTuple):
    """A part of a bar. The label ``?`` is a gap."""

    label: str
    size: int


@dataclass(frozen=True, slots=True)
class SumBars:
    """Two bars of the same length, each cut into parts."""

    NAME: ClassVar = "sum-bars"
    top: tuple[BarPart, ...]
    bottom: tuple[BarPart, ...]


@dataclass(frozen=True, slots=True)
class Towers:
    """Towers of squares side by side; a height of 0 is to be found."""

    NAME: ClassVar = "towers"
    heights: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Track:
    """Boxes in a row, from left to right; an empty text is an empty box."""

    NAME: ClassVar = "track"
    cells: tuple[str, ...]
    repeats: int = 0
    """After how many boxes the row begins again, for a line to each; 0 for one that does not."""


@dataclass(frozen=True, slots=True)
class TwoBars:
    """Two bars, each made of parts as long as their numbers, none of them below nought."""

    NAME: ClassVar = "two-bars"
    top: tuple[int, ...]
    bottom: tuple[int, ...]
