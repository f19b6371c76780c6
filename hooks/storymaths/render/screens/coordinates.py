"""Points to read, to move and to complete a shape: how far along, and how far up; or a move, by its two parts."""

from __future__ import annotations

from collections.abc import Iterable

from ...activities.coordinates.say import name_move
from ...activities.coordinates.tasks import CoordinatesAnswer, CoordinatesTask, PlotPoints, PointAt, Translation
from ...activities.worked import Worked
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, one_card

_FEWEST_ON_AXIS = 6


def boards(worked: Worked[CoordinatesTask, CoordinatesAnswer]) -> Iterable[Board]:
    """A board for each point; none for points to be drawn, which are drawn."""
    task = worked.fields
    if isinstance(task, PlotPoints):
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


def _move(one: Translation) -> Board:
    right = name_move(one.right, one.up)
    others = [(-one.right, one.up), (one.right, -one.up), (one.up, one.right), (one.right + 1, one.up)]
    return one_card("", right, [card(told) for told in sorted({right, *(name_move(*other) for other in others)})])
