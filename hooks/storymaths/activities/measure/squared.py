"""A shape of whole squares: read from rows, and walked round its edge."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby

from ..kind import Unsolvable

Cell = tuple[int, int]
_TURNS: tuple[Cell, ...] = ((1, 0), (0, 1), (-1, 0), (0, -1))
"""Ways along the edge on a page: right, down, left, up."""
_BESIDE = (((0, -1), (0, 0)), ((0, 0), (-1, 0)), ((-1, 0), (-1, -1)), ((-1, -1), (0, -1)))
"""For each way, from a corner the squares ahead of it on the left and on the right."""


def read_squares(rows: Sequence[str], cells: int) -> tuple[str, ...]:
    """Rows of equal length with one shape that hangs together and has no hole. Raises ``Unsolvable``."""
    read = tuple(row.strip().lower() for row in rows)
    for index, row in enumerate(read):
        if set(row) - set("x.") or len(row) != len(read[0]):
            fix = "write x for a square and a full stop for none, and make every row as long as the first."
            raise Unsolvable(("squares", index), f'The row "{row[:20]}" cannot be read.', fix)
    if len(read) * len(read[0]) > cells:
        raise Unsolvable(("squares",), "There are too many squares.", f"use a grid of at most {cells} squares.")
    shape = _cells(read)
    around = {(x, y) for x in range(-1, len(read[0]) + 1) for y in range(-1, len(read) + 1)} - shape
    if not shape or _joined(shape) != shape or _joined(around) != around:
        message = "The squares are not one shape without a hole, in which each joins another along a side."
        raise Unsolvable(("squares",), message, "move the squares together, and fill the hole.")
    return read


def walk_round(rows: Sequence[str]) -> list[int]:
    """How many squares' sides each straight side has, with the clock from the upper left corner of the top row."""
    shape = _cells(rows)
    start = min(shape, key=lambda cell: (cell[1], cell[0]))
    (x, y), way, ways = start, 0, list[int]()
    while True:
        ways.append(way)
        right, down = _TURNS[way]
        x, y = x + right, y + down
        # The squares ahead on the left and on the right of the way, of which the right one was along the last step.
        left_ahead, right_ahead = _ahead(x, y, way)
        way = (way - 1) % 4 if left_ahead in shape else way if right_ahead in shape else (way + 1) % 4
        if (x, y) == start and way == 0:
            return [len(list(run)) for _, run in groupby(ways)]


def _ahead(x: int, y: int, way: int) -> tuple[Cell, Cell]:
    """The squares ahead of a corner, left and right of a way; a square is named by its upper left corner."""
    (a, b), (c, d) = _BESIDE[way]
    return (x + a, y + b), (x + c, y + d)


def _cells(rows: Sequence[str]) -> set[Cell]:
    return {(x, y) for y, row in enumerate(rows) for x, mark in enumerate(row) if mark == "x"}


def _joined(cells: set[Cell]) -> set[Cell]:
    """Those that one of them reaches over sides."""
    found, left = set[Cell](), sorted(cells)[:1]
    while left:
        x, y = left.pop()
        found.add((x, y))
        left += [(x + a, y + b) for a, b in _TURNS if (x + a, y + b) in cells - found]
    return found
