"""Shapes on squares and half squares, kept as the quarters of squares they cover.

Both diagonals cut a square into four quarters. A quarter is its middle on a grid of four points a square:
``(2, 1)`` is the upper quarter of the first square, ``(3, 2)`` the right, ``(2, 3)`` the lower, ``(1, 2)`` the left.
Turning and flipping are then plain sums.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from string import ascii_letters

from ...model.prose import Loc
from ..kind import Unsolvable

Quarter = tuple[int, int]
"""Across and down, in quarters of a square's side, from the top left corner."""
Shape = frozenset[Quarter]
SQUARE = 4
"""Points along the side of a square."""
_UPPER, _RIGHT, _LOWER, _LEFT = QUARTERS = ((2, 1), (3, 2), (2, 3), (1, 2))
_HALVES = {
    "◣": (_LOWER, _LEFT),
    "◢": (_RIGHT, _LOWER),
    "◤": (_LEFT, _UPPER),
    "◥": (_UPPER, _RIGHT),
}
MARKS = {"x": QUARTERS, ".": (), **_HALVES}
"""What an author writes for a square, and the quarters of it that are part of the shape."""
_SIDES = {"◣": "lower left", "◢": "lower right", "◤": "upper left", "◥": "upper right"}
_LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"


def shape_of(rows: Sequence[str], cells: int, loc: Loc) -> Shape:
    """The shape drawn in rows of marks, moved to the top left. Raises ``Unsolvable`` where it is none."""
    across = len(rows[0].strip())
    for index, row in enumerate(rows):
        if set(row.strip().lower()) - set(MARKS) or not row.strip():
            message = f'The row "{row[:20]}" has something other than x, a full stop and ◣ ◢ ◤ ◥.'
            fix = "write x for a whole square, ◣ ◢ ◤ or ◥ for half of one, and a full stop where nothing is."
            raise Unsolvable((*loc, index), message, fix)
        if len(row.strip()) != across:
            raise Unsolvable((*loc, index), "The rows are not equally long.", "make every row as long as the first.")
    if not (across <= len(_LETTERS) and len(rows) * across <= cells):
        raise Unsolvable(
            loc, "The shape has too many squares.", f"use at most {len(_LETTERS)} columns, and {cells} squares in all."
        )
    covered = quarters_of(rows)
    if not covered:
        raise Unsolvable(loc, "There is no shape to make.", "draw one with x.")
    return at_corner(covered)


def quarters_of(rows: Sequence[str]) -> Shape:
    """The quarters that rows of marks cover."""
    return frozenset(
        (SQUARE * column + x, SQUARE * row + y)
        for row, marks in enumerate(rows)
        for column, mark in enumerate(marks.strip().lower())
        for x, y in MARKS[mark]
    )


def squares_across(shape: Shape) -> int:
    """How many columns of squares it lies on, from the left edge."""
    return max(x for x, _ in shape) // SQUARE + 1


def squares_down(shape: Shape) -> int:
    """How many rows of squares it lies on, from the top edge."""
    return max(y for _, y in shape) // SQUARE + 1


def shift(shape: Iterable[Quarter], across: int, down: int) -> Shape:
    """The shape so many whole squares further on."""
    return frozenset((x + SQUARE * across, y + SQUARE * down) for x, y in shape)


def at_corner(shape: Shape) -> Shape:
    """The shape moved up and left as far as it goes, by whole squares."""
    return shift(shape, -(min(x for x, _ in shape) // SQUARE), -(min(y for _, y in shape) // SQUARE))


Move = Callable[[Quarter], Quarter]


def moves_over(across: int, down: int) -> tuple[Move, ...]:
    """The eight ways to turn and flip what lies on so many squares, so that it lies at the corner again."""
    wide, high = SQUARE * across, SQUARE * down
    return (
        lambda q: q,
        lambda q: (high - q[1], q[0]),
        lambda q: (wide - q[0], high - q[1]),
        lambda q: (q[1], wide - q[0]),
        lambda q: (wide - q[0], q[1]),
        lambda q: (q[1], q[0]),
        lambda q: (q[0], high - q[1]),
        lambda q: (high - q[1], wide - q[0]),
    )


def ways_to_lie(shape: Shape) -> list[Shape]:
    """The different ways a shape can lie on the grid, as it is first, then turned, then flipped."""
    moves = moves_over(squares_across(shape), squares_down(shape))
    return list(dict.fromkeys(frozenset(map(move, shape)) for move in moves))


def symmetries_of(shape: Shape) -> list[Move]:
    """The turns and flips that lay a shape on itself; leaving it alone is the first."""
    moves = moves_over(squares_across(shape), squares_down(shape))
    return [move for move in moves if frozenset(map(move, shape)) == shape]


def places_of(part: Shape, down: int) -> list[str]:
    """The squares a part lies on: ``A1``, ``lower left of B2``; rows are numbered from the bottom of so many."""
    by_square: dict[Quarter, set[Quarter]] = {}
    for x, y in part:
        by_square.setdefault((x // SQUARE, down - y // SQUARE), set()).add((x % SQUARE, y % SQUARE))
    said = {frozenset(quarters): mark for mark, quarters in _HALVES.items()}
    names = []
    for (column, row), quarters in sorted(by_square.items()):
        name = f"{_LETTERS[column]}{row}"
        names.append(name if len(quarters) == SQUARE else f"{_SIDES[said[frozenset(quarters)]]} of {name}")
    return names


def picture_of(parts: Sequence[Shape], across: int, down: int) -> list[list[str]]:
    """Rows of squares, each the letters of the parts its upper, right, lower and left quarter belong to; at most 52."""
    letter = {quarter: ascii_letters[index] for index, part in enumerate(parts) for quarter in part}
    return [
        ["".join(letter.get((SQUARE * c + x, SQUARE * r + y), ".") for x, y in QUARTERS) for c in range(across)]
        for r in range(down)
    ]
