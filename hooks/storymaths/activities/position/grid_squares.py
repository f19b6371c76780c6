"""Squares of a grid: a letter for the column from the left, a number for the row from the bottom."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from ...model.prose import Loc
from ..kind import Unsolvable

Square = tuple[int, int]
"""Column and row, each from 0."""
Facing = Literal["up", "right", "down", "left"]
FACINGS: tuple[Facing, ...] = ("up", "right", "down", "left")
"""Ways to face on the page, each a quarter turn clockwise from the one before."""
AHEAD: dict[Facing, Square] = {"up": (0, 1), "right": (1, 0), "down": (0, -1), "left": (-1, 0)}
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
_NAME = re.compile(r"([A-Za-z])([1-9]\d?)")


@dataclass(frozen=True, slots=True)
class Grid:
    """A grid with squares nobody may enter."""

    columns: int
    rows: int
    blocked: frozenset[Square]

    def __contains__(self, square: Square) -> bool:
        return 0 <= square[0] < self.columns and 0 <= square[1] < self.rows

    def free(self, square: Square) -> bool:
        """Whether one may stand there."""
        return square in self and square not in self.blocked


def grid_of(size: tuple[int, int], blocked: Sequence[str], cells: int) -> Grid:
    """The grid. Raises ``Unsolvable`` where it is too large, or a blocked square is not on it."""
    columns, rows = size
    if not (1 <= columns <= len(_LETTERS) and 1 <= rows <= 99 and columns * rows <= cells):
        message = f"A grid of {columns:,} by {rows:,} squares is too large, or has none."
        raise Unsolvable(("grid",), message, f"use at most {len(_LETTERS)} columns, and {cells} squares in all.")
    empty = Grid(columns, rows, frozenset())
    return Grid(columns, rows, frozenset(square_of(name, empty, ("blocked", i)) for i, name in enumerate(blocked)))


def square_of(name: str, grid: Grid, loc: Loc) -> Square:
    """The square of a name such as ``B2``. Raises ``Unsolvable`` where it is no square, or cannot be entered."""
    match = _NAME.fullmatch(name.strip())
    square = (_LETTERS.index(match[1].upper()), int(match[2]) - 1) if match else (-1, -1)
    if square not in grid:
        message = f'"{name[:20]}" is not a square of this grid.'
        raise Unsolvable(loc, message, f"use a square from A1 to {name_of((grid.columns - 1, grid.rows - 1))}.")
    if square in grid.blocked:
        raise Unsolvable(
            loc, f"{name_of(square)} is blocked.", "choose a free square, or leave this one out of blocked."
        )
    return square


def name_of(square: Square) -> str:
    """``B2`` for the second column and the second row."""
    return f"{_LETTERS[square[0]]}{square[1] + 1}"


def turned(facing: Facing, quarters: int) -> Facing:
    """The way faced after so many quarter turns clockwise."""
    return FACINGS[(FACINGS.index(facing) + quarters) % 4]
