"""The pieces shapes are made of: squares, and what half squares and squares make, by their everyday names."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ...expression.noun import Noun, plural
from ...parse.suggestion import did_you_mean
from ..kind import Unsolvable
from ..saying import counted
from .quarters import Shape, quarters_of

_DRAWN: Mapping[str, tuple[str, ...]] = {
    "square": ("x",),
    "triangle": ("◣",),
    "rectangle": ("xx",),
    "long rectangle": ("xxx",),
    "large square": ("xx", "xx"),
    "wide triangle": ("◢◣",),
    "large triangle": ("◣.", "x◣"),
    "parallelogram": ("◢◤",),
    "trapezium": ("x◣",),
    "L-shape": ("x.", "xx"),
}
PIECES: Mapping[str, Shape] = {name: quarters_of(rows) for name, rows in _DRAWN.items()}
"""Every piece, lying as it is handed out. The triangle is half a square; all may be turned and flipped."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A sort of piece, and how many of it there are."""

    name: str
    shape: Shape
    many: int

    @property
    def label(self) -> str:
        """``1 square``, ``2 triangles``."""
        return counted(self.many, Noun(plural(self.name), self.name))


def pieces_of(told: Mapping[str, int], most: int) -> tuple[Piece, ...]:
    """The pieces an author names. Raises ``Unsolvable`` for one that is not there, or for more than can be laid."""
    if not told:
        raise Unsolvable(("pieces",), "No pieces are named.", "give some, such as pieces: {square: 2, triangle: 4}.")
    for name in told:
        if name not in PIECES:
            message = f'"{name[:40]}" is not one of the pieces.{did_you_mean(name[:40], tuple(PIECES))}'
            raise Unsolvable(("pieces", name), message, f"use some of {', '.join(PIECES)}.")
    if sum(told.values()) > most:
        raise Unsolvable(("pieces",), "There are too many pieces.", f"use at most {most} in all.")
    return tuple(Piece(name, PIECES[name], many) for name, many in told.items())
