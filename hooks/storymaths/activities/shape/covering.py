"""Every way to cover a shape with pieces: the first quarter still bare is covered each way it can be, then the next.

The pieces of one sort are alike. Two ways that a turn or a flip of the whole shape makes one are one.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from .pieces import Piece
from .quarters import SQUARE, Shape, shift, squares_across, squares_down, symmetries_of, ways_to_lie


class TooMany(Exception):
    """More ways, or more places to look at, than were to be looked for."""


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece on the shape."""

    sort: int
    """Its place in the list of pieces."""
    on: Shape
    as_given: bool
    """Whether it lies as it was handed out, neither turned nor flipped."""


Way = tuple[Laid, ...]
"""Pieces that cover a shape, from its first square to its last, row by row."""


def every_way(shape: Shape, pieces: Sequence[Piece], all_used: bool, most: int, tries: int) -> list[list[Way]]:
    """Every different way, each with all its turned and flipped forms, the first found first.

    Stops with ``TooMany`` past ``most`` different ways, or past so many ``tries`` to lay a piece.
    """
    symmetries = symmetries_of(shape)
    found: dict[frozenset[tuple[int, Shape]], list[Way]] = {}
    for way in _Search(shape, pieces, all_used, most * len(symmetries), tries).ways():
        plain = frozenset((laid.sort, laid.on) for laid in way)
        alike = [frozenset((sort, frozenset(map(same, on))) for sort, on in plain) for same in symmetries]
        known = next((other for other in alike if other in found), plain)
        found.setdefault(known, []).append(way)
        if len(found) > most:
            raise TooMany
    return list(found.values())


class _Search:
    """One search: what is bare is kept as the bits of a number, the first quarter of the shape the lowest."""

    def __init__(self, shape: Shape, pieces: Sequence[Piece], all_used: bool, most: int, tries: int) -> None:
        order = sorted(shape, key=lambda q: (q[1] // SQUARE, q[0] // SQUARE, q[1], q[0]))
        self._bit = {quarter: 1 << index for index, quarter in enumerate(order)}
        self._whole = (1 << len(order)) - 1
        self._left = [piece.many for piece in pieces]
        self._all_used, self._most, self._tries = all_used, most, tries
        self._at: dict[int, list[tuple[int, Laid]]] = {bit: [] for bit in self._bit.values()}
        for sort, piece in enumerate(pieces):
            for turn, lying in enumerate(ways_to_lie(piece.shape)):
                self._place(sort, lying, not turn, shape)
        self.found: list[Way] = []

    def _place(self, sort: int, lying: Shape, as_given: bool, shape: Shape) -> None:
        """Notes each place where a piece lying so fits the shape, under the first quarter it covers."""
        for down in range(squares_down(shape) - squares_down(lying) + 1):
            for across in range(squares_across(shape) - squares_across(lying) + 1):
                on = shift(lying, across, down)
                if on <= shape:
                    bits = sum(self._bit[quarter] for quarter in on)
                    self._at[bits & -bits].append((bits, Laid(sort, on, as_given)))

    def ways(self) -> list[Way]:
        """Every way, turned and flipped ones too. Raises ``TooMany``."""
        self._cover(self._whole, ())
        return self.found

    def _cover(self, bare: int, laid: Way) -> None:
        if not bare:
            if not (self._all_used and any(self._left)):
                self.found.append(laid)
            if len(self.found) > self._most:
                raise TooMany
            return
        for bits, piece in self._at[bare & -bare]:
            self._tries -= 1
            if self._tries < 0:
                raise TooMany
            if self._left[piece.sort] and bits & ~bare == 0:
                self._left[piece.sort] -= 1
                self._cover(bare ^ bits, (*laid, piece))
                self._left[piece.sort] += 1
