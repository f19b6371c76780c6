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
    """Round pictures, each standing for ``each``, with half or a quarter of one where the amount asks for it."""

    NAME: ClassVar = "pictogram"
    rows: tuple[ChartRow, ...]
    each: int
    thing: str
    """What is counted, in the plural; may be empty."""
    top: int
    """The amount that the drawing must have room for."""
    keyed: bool = True
    """Whether it tells what a picture stands for."""


@dataclass(frozen=True, slots=True)
class BlockDiagram:
    """A block for each thing, over a scale to ``top``; the amounts are whole."""

    NAME: ClassVar = "block-diagram"
    rows: tuple[ChartRow, ...]
    top: int
    upright: bool = False
    """Whether the blocks stand on one another."""


@dataclass(frozen=True, slots=True)
class BarChart:
    """Bars over a scale to ``top``, with a mark at every ``each``."""

    NAME: ClassVar = "bar-chart"
    rows: tuple[ChartRow, ...]
    each: int
    top: int
    columns: tuple[str, ...] = ()
    """What the bars of each label are, where it has several; these follow one another."""
    upright: bool = False
    """Whether the bars stand up, and do not run from left to right."""


@dataclass(frozen=True, slots=True)
class LineGraph:
    """Points joined by straight lines, over a scale to ``top`` with a mark at every ``each``."""

    NAME: ClassVar = "line-graph"
    rows: tuple[ChartRow, ...]
    each: int
    top: int
    axis: str
    """What the labels count; may be empty."""
    thing: str
    """What the scale counts; may be empty."""
    along: tuple[Fraction, ...]
    """Where each label stands from left to right."""


@dataclass(frozen=True, slots=True)
class PieChart:
    """A circle cut into slices; a row that is left open has none."""

    NAME: ClassVar = "pie-chart"
    rows: tuple[ChartRow, ...]
    total: Fraction
    """What the whole circle stands for."""
