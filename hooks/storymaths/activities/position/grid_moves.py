"""Steps on a grid, going and turning: read, walked, said, and turned round for the way back."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...model.practice.position import Saying
from ...model.prose import Loc
from ..kind import Unsolvable
from .grid_squares import AHEAD, Facing, Grid, Square, name_of, turned

_GO = re.compile(r"(forwards?|back(?:wards?)?)\s+(\d{1,3})(?:\s+squares?)?")
_TURN = re.compile(
    r"(?:turn\s+)?(?:(?:a\s+)?(quarter|half|three[- ]quarters?|whole|full|90|180|270|360)°?(?:\s+turns?)?\s*)?"
    r"(?:to\s+the\s+)?(right|left|clockwise|anti-?clockwise)?"
)
_SLIDE = re.compile(
    r"(up|down|left|right)\s+(\d{1,3})|(\d{1,3})(?:\s+squares?)?\s+(?:to\s+the\s+)?(up|down|left|right)"
)
_QUARTERS = {"quarter": 1, "90": 1, "half": 2, "180": 2, "three-quarter": 3, "270": 3, "whole": 4, "full": 4, "360": 4}
_PARTS = {1: "quarter", 2: "half", 3: "three-quarter", 4: "whole"}


@dataclass(frozen=True, slots=True)
class Go:
    """So many squares ahead, or back where the number is below nought."""

    squares: int


@dataclass(frozen=True, slots=True)
class Turn:
    """So many quarter turns, 1 to 4, clockwise or not."""

    quarters: int
    clockwise: bool

    @property
    def net(self) -> int:
        """Quarter turns clockwise."""
        return self.quarters if self.clockwise else -self.quarters


@dataclass(frozen=True, slots=True)
class Slide:
    """So many squares one way on the page, whatever way one faces."""

    way: Facing
    squares: int

    @property
    def opposite(self) -> Slide:
        """The way back."""
        return Slide(turned(self.way, 2), self.squares)


Move = Go | Turn | Slide


@dataclass(frozen=True, slots=True)
class Stand:
    """Where one stands and which way one faces."""

    square: Square
    facing: Facing


def read_move(text: str, loc: Loc) -> Move:
    """A move such as ``forward 3`` or ``quarter turn right``. Raises ``Unsolvable``."""
    plain = " ".join(text.casefold().split())
    if going := _GO.fullmatch(plain):
        squares = int(going[2])
        if squares:
            return Go(squares if going[1].startswith("f") else -squares)
    sliding = _SLIDE.fullmatch(plain)
    if sliding and int(sliding[2] or sliding[3]):
        way = next(way for way in AHEAD if way == (sliding[1] or sliding[4]))
        return Slide(way, int(sliding[2] or sliding[3]))
    turning = _TURN.fullmatch(plain)
    if turning and (turning[1] or turning[2]):
        part = (turning[1] or "quarter").replace("quarters", "quarter").replace("three ", "three-")
        quarters = _QUARTERS[part]
        if turning[2] or quarters in (2, 4):
            return Turn(quarters, turning[2] in ("right", "clockwise", None))
    fix = "write it like: forward 3, back 1, 2 up, quarter turn right, half turn, three-quarter turn anti-clockwise."
    raise Unsolvable(loc, f'"{text[:40]}" is not a step that can be followed.', fix)


def is_slide(text: str) -> bool:
    """Whether a move is said without turning."""
    return _SLIDE.fullmatch(" ".join(text.casefold().split())) is not None


def walk(start: Stand, moves: Sequence[Move], grid: Grid) -> Iterator[Stand]:
    """Where one stands after each move. Raises ``Unsolvable`` at the move that leaves the grid or is blocked."""
    at = start
    for index, move in enumerate(moves):
        if isinstance(move, Turn):
            at = Stand(at.square, turned(at.facing, move.net))
        else:
            across, up = AHEAD[move.way if isinstance(move, Slide) else at.facing]
            way = 1 if move.squares > 0 else -1
            for _ in range(abs(move.squares)):
                square = (at.square[0] + way * across, at.square[1] + way * up)
                if not grid.free(square):
                    what = f"runs into {name_of(square)}, which is blocked" if square in grid else "leaves the grid"
                    raise Unsolvable(("route", index), f"Step {index + 1} {what}.", "change the route, or the grid.")
                at = Stand(square, at.facing)
        yield at


def way_back(moves: Sequence[Move]) -> list[Move]:
    """Moves that lead back to where the route began, to end up facing as one did there.

    Turn round, take the moves from last to first with the turns the other way about, turn round again.
    """
    if all(isinstance(move, Slide) for move in moves):
        return [move.opposite for move in reversed(moves) if isinstance(move, Slide)]
    backwards = [_undone(move) for move in reversed(moves)]
    return tidied([Turn(2, True), *backwards, Turn(2, True)])


def _undone(move: Move) -> Move:
    """A move on the way back, where one has turned round."""
    match move:
        case Turn():
            return Turn(move.quarters, not move.clockwise)
        case Slide():
            return move.opposite
        case Go():
            return move


def tidied(moves: Sequence[Move]) -> list[Move]:
    """The same way with neighbouring turns made into one of at most half a turn, or into none."""
    tidy: list[Move] = []
    for move in moves:
        last = tidy[-1] if tidy else None
        if isinstance(move, Turn):
            net = (move.net + (last.net if isinstance(last, Turn) else 0)) % 4
            if isinstance(last, Turn):
                tidy.pop()
            if net:
                tidy.append(Turn(1, False) if net == 3 else Turn(net, True))
        elif isinstance(move, Go) and isinstance(last, Go):
            tidy[-1:] = [Go(last.squares + move.squares)] if last.squares + move.squares else []
        else:
            tidy.append(move)
    return tidy


def say_move(move: Move, saying: Saying) -> str:
    """A move in words."""
    if isinstance(move, Slide):
        return f"{move.squares} {move.way}"
    if isinstance(move, Go):
        return f"forward {move.squares}" if move.squares > 0 else f"back {-move.squares}"
    way = ("clockwise" if move.clockwise else "anti-clockwise") if saying != "left and right" else ""
    way = way or ("right" if move.clockwise else "left")
    turn = f"turn {90 * move.quarters}°" if saying == "degrees" else f"{_PARTS[move.quarters]} turn"
    return turn if move.quarters in (2, 4) else f"{turn} {way}"
