"""Drawings of statistics: a row for each label."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar


@dataclass(frozen=True, slots=True)
class ChartRow:
    """A row of a chart; its amount is nought where it is left open."""

    label: str
    amount: Fraction


@dataclass(frozen=True, slots=True)
class TallyChart:
    """Tallies in bundles of five; the amounts are whole."""

    NAME: ClassVar = "tally-chart"
    rows: tuple[ChartRow, ...]


@dataclass(frozen=True, slots=True)
class Pictogram:
    """Round pictures, each standing for ``each``, with half a picture where the amount asks for it."""

    NAME: ClassVar = "pictogram"
    rows: tuple[ChartRow, ...]
    each: int
    thing: str
    """What is counted, in the plural; may be empty."""
    top: int
    """The amount that the drawing must have room for."""


@dataclass(frozen=True, slots=True)
class BlockDiagram:
    """A block for each thing, over a scale to ``top``; the amounts are whole."""

    NAME: ClassVar = "block-diagram"
    rows: tuple[ChartRow, ...]
    top: int


@dataclass(frozen=True, slots=True)
class BarChart:
    """Bars from left to right over a scale to ``top``, with a mark at every ``each``."""

    NAME: ClassVar = "bar-chart"
    rows: tuple[ChartRow, ...]
    each: int
    top: int
