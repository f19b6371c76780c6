"""Squares to put things on, and points where lines cross: a place for each, row by row from the top."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from typing import Literal

from .board import Board, Mark, Piece, Place, keyed

MOST_ROWS, MOST_COLUMNS = 11, 14
"""More are too small to be touched."""
Cell = tuple[int, int]
"""Column and row, each from 0 at the bottom left."""
Laid = Mapping[Cell, str]
"""The piece on each cell, by its id."""


def can_be_touched(columns: int, rows: int) -> bool:
    """Whether a grid of this size has squares large enough."""
    return columns <= MOST_COLUMNS and rows <= MOST_ROWS


def on_grid(
    layout: Literal["squares", "points"],
    says: str,
    pieces: tuple[Piece, ...],
    columns: Sequence[str],
    rows: Sequence[str],
    name: Callable[[Cell], str],
    found: Iterable[Iterable[Laid]],
    marks: Mapping[Cell, tuple[Mark, ...]] | None = None,
    closed: Collection[Cell] = (),
) -> Board:
    """A grid with what stands below each column and, from the foot up, before each row; nothing can be put on ``closed``.

    ``found`` has the ways to lay each answer.
    """
    cells = [(column, row) for row in reversed(range(len(rows))) for column in range(len(columns))]
    places = tuple(
        Place(_id(cell), name(cell), 1, takes="nothing" if cell in closed else "", marks=(marks or {}).get(cell, ()))
        for cell in cells
    )
    ways = [[{_id(cell): [piece] for cell, piece in laid.items()} for laid in each] for each in found]
    answers = keyed(places, ways)
    return Board(layout, says, pieces, places, answers, columns=tuple(columns), rows=tuple(reversed(rows)))


def _id(cell: Cell) -> str:
    return f"{cell[0]}:{cell[1]}"
