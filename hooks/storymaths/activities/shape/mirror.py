"""A figure of shaded squares completed over a mirror line at its edge."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from ..kind import Unsolvable

Edge = Literal["right", "left", "top", "bottom"]
SHADED, EMPTY = "x", "."


def read_half(half: Sequence[str], cells: int) -> tuple[str, ...]:
    """Rows of equal length of shaded and empty squares. Raises ``Unsolvable``."""
    rows = tuple(row.strip().lower() for row in half)
    for index, row in enumerate(rows):
        if set(row) - {SHADED, EMPTY} or not row:
            message = f'The row "{row[:20]}" has something other than x and a full stop.'
            raise Unsolvable(("half", index), message, "write x for a shaded square and a full stop for an empty one.")
        if len(row) != len(rows[0]):
            raise Unsolvable(("half", index), "The rows are not equally long.", "make every row as long as the first.")
    if len(rows) * len(rows[0]) * 2 > cells:
        raise Unsolvable(("half",), "The figure has too many squares.", f"use at most {cells // 2} for the half.")
    if not any(SHADED in row for row in rows):
        raise Unsolvable(("half",), "Nothing is shaded.", "shade a few squares with x.")
    return rows


def mirror(half: Sequence[str], edge: Edge) -> tuple[str, ...]:
    """The half that is missing, as it lies beyond the line."""
    if edge in ("right", "left"):
        return tuple(row[::-1] for row in half)
    return tuple(reversed(half))


def join(half: Sequence[str], other: Sequence[str], edge: Edge) -> tuple[str, ...]:
    """Both halves on their sides of the line."""
    match edge:
        case "right":
            return tuple(one + two for one, two in zip(half, other, strict=True))
        case "left":
            return tuple(two + one for one, two in zip(half, other, strict=True))
        case "bottom":
            return (*half, *other)
        case "top":
            return (*other, *half)


def count_shaded(rows: Sequence[str]) -> int:
    """How many squares are shaded."""
    return sum(row.count(SHADED) for row in rows)
