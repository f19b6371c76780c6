"""Points to read, to move and to complete a shape: how far along, and how far up; a move, by its parts; points to draw."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...activities.coordinates.say import name_move
from ...activities.coordinates.tasks import CoordinatesAnswer, CoordinatesTask, PlotPoints, PointAt, Translation
from ...activities.worked import Worked
from .board import Board, Mark, Piece, Place, keyed
from .grid import Cell, can_be_touched, on_grid
from .pieces import card, card_id, one_card

_FEWEST_ON_AXIS = 6


def boards(worked: Worked[CoordinatesTask, CoordinatesAnswer]) -> Iterable[Board]:
    """A board for each point, and one for all points to be drawn."""
    task = worked.fields
    if isinstance(task, PlotPoints):
        yield from _drawn(task)
        return
    values = [answer.value for answer in worked.solution.answers]
    points = [*task.points.values(), *(value.at for value in values if isinstance(value, PointAt))]
    numbers = [number for at in points for number in at]
    cards = tuple(card(number, None) for number in range(min(0, *numbers), max(_FEWEST_ON_AXIS, *numbers) + 1))
    for value in values:
        yield _point(value, cards) if isinstance(value, PointAt) else _move(value)


def _point(one: PointAt, cards: tuple[Piece, ...]) -> Board:
    places = (Place("along", "along", 1), Place("up", "up", 1))
    along, up = one.at
    way = {"along": [card_id(along)], "up": [card_id(up)]}
    return Board("sentence", "", cards, places, keyed(places, [[way]]), between=(f"{one.point} (", ", ", ")"))


def _drawn(task: PlotPoints) -> Iterable[Board]:
    """Points to put where lines cross, on axes that go a little further than the points."""
    (left, right), (foot, top) = (_axis([at[way] for at in task.points.values()]) for way in (0, 1))
    columns, rows = [card(n).name for n in range(left, right + 1)], [card(n).name for n in range(foot, top + 1)]
    if not can_be_touched(len(columns), len(rows)):
        return
    marks: dict[Cell, tuple[Mark, ...]] = {(n, -foot): ("across-axis",) for n in range(len(columns))}
    for row in range(len(rows)):
        marks[-left, row] = (*marks.get((-left, row), ()), "up-axis")
    laid = {(x - left, y - foot): letter for letter, (x, y) in task.points.items()}
    pieces = tuple(Piece(letter, letter, look="point") for letter in task.points)
    yield on_grid(
        "points", "", pieces, columns, rows, lambda cell: f"({columns[cell[0]]}, {rows[cell[1]]})", [[laid]], marks
    )


def _axis(numbers: Sequence[int]) -> tuple[int, int]:
    least = min(numbers)
    return (least - 1 if least < 0 else 0), max(_FEWEST_ON_AXIS, max(numbers) + 1)


def _move(one: Translation) -> Board:
    right = name_move(one.right, one.up)
    others = [(-one.right, one.up), (one.right, -one.up), (one.up, one.right), (one.right + 1, one.up)]
    return one_card("", right, [card(told) for told in sorted({right, *(name_move(*other) for other in others)})])
