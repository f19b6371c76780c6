"""Drawings of geometry: shapes, shapes laid to a shape, mirror lines, and ways over a grid."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import ClassVar, Literal, NamedTuple

Square = tuple[int, int]
"""Column and row, each from 0 at the bottom left."""


class TitledShape(NamedTuple):
    """A shape of the known set by its name, what stands under it, and how far it is turned."""

    name: str
    title: str
    turn: int = 0
    """Degrees with the clock from how it is usually drawn; of a solid a whole number of quarter turns."""


@dataclass(frozen=True, slots=True)
class FlatShapes:
    """Flat shapes side by side."""

    NAME: ClassVar = "flat-shapes"
    shapes: tuple[TitledShape, ...]


@dataclass(frozen=True, slots=True)
class SolidShapes:
    """Solids side by side."""

    NAME: ClassVar = "solid-shapes"
    shapes: tuple[TitledShape, ...]


@dataclass(frozen=True, slots=True)
class PieceRows:
    """Pieces laid side by side, and what is written beneath."""

    says: str
    rows: tuple[tuple[str, ...], ...]
    """Squares: each the letters of the pieces its upper, right, lower and left quarter belong to; ``.`` is none."""

    @property
    def across(self) -> int:
        """Squares from side to side."""
        return len(self.rows[0])


@dataclass(frozen=True, slots=True)
class LaidPieces:
    """Squares and half squares laid to a shape, in one picture or several."""

    NAME: ClassVar = "laid-pieces"
    pictures: tuple[PieceRows, ...]
    across: int
    """Squares of the widest shape, which sets the scale."""
    squared: bool
    """Whether the lines of the squares are drawn."""
    small: bool
    """Small enough to fit several on a line."""


@dataclass(frozen=True, slots=True)
class MirrorSquares:
    """Shaded squares on a grid, with a mirror line across the middle."""

    NAME: ClassVar = "mirror-squares"
    rows: tuple[str, ...]
    """``x`` is a shaded square."""
    upright: bool
    """Whether the mirror line is."""


@dataclass(frozen=True, slots=True)
class SidedShape:
    """A shape with straight sides, all its corners on one circle, as long to each other as they are."""

    NAME: ClassVar = "sided-shape"
    sides: tuple[Fraction, ...]
    """How long they are, going round; each is shorter than all the others together."""
    labels: tuple[str, ...]
    """What stands beside each side; may be empty."""


@dataclass(frozen=True, slots=True)
class SquaredShape:
    """A shape made of whole squares, its outline stronger than the lines within."""

    NAME: ClassVar = "squared-shape"
    rows: tuple[str, ...]
    """``x`` is a square of the shape."""


@dataclass(frozen=True, slots=True)
class AngleFan:
    """Angles side by side round one point, anti-clockwise from an arm that points right."""

    NAME: ClassVar = "angle-fan"
    degrees: tuple[int | Fraction, ...]
    labels: tuple[str, ...]
    """What stands in each."""


class LetteredPoint(NamedTuple):
    """A point by its letter, along first and then up."""

    letter: str
    x: int
    y: int


@dataclass(frozen=True, slots=True)
class CoordinateGrid:
    """Squared paper with two axes, points by their letters, and outlines."""

    NAME: ClassVar = "coordinate-grid"
    across: int
    """How far each axis goes."""
    four: bool
    """Whether the axes go on below nought."""
    points: tuple[LetteredPoint, ...]
    outlines: tuple[tuple[tuple[int, int], ...], ...]
    """Shapes by their corners, going round."""


@dataclass(frozen=True, slots=True)
class GridRoute:
    """A grid of named squares with a start, perhaps a goal, blocked squares, and a way over it."""

    NAME: ClassVar = "grid-route"
    columns: int
    rows: int
    start: Square
    facing: Literal["up", "right", "down", "left"]
    goal: Square | None
    blocked: tuple[Square, ...]
    path: tuple[Square, ...]
    """The squares of the way, in order; may be empty."""
