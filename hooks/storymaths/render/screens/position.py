"""Squares of a grid: where a route ends, or the squares that a shortest route goes over."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...activities.position.grid_moves import is_slide
from ...activities.position.grid_squares import FACINGS, Facing, Square, grid_of, name_of, square_of
from ...activities.position.tasks import Ending, FindRoutes, FollowRoute, GridAnswer, GridTask, Route
from ...activities.worked import Worked
from .board import Board, Mark, Piece
from .grid import Laid, can_be_touched, on_grid
from .pieces import cast

_ARROWS: dict[Facing, str] = {"up": "↑", "right": "→", "down": "↓", "left": "←"}


def boards(worked: Worked[GridTask, GridAnswer]) -> Iterable[Board]:
    """One grid; the way back is told, and not laid."""
    task, values = worked.fields, [answer.value for answer in worked.solution.answers]
    if not can_be_touched(*task.grid):
        return
    if isinstance(task, FindRoutes):
        yield _routes(worked, task, [value for value in values if isinstance(value, Route)])
    else:
        yield from (_ending(worked, task, value) for value in values if isinstance(value, Ending))


def _ending(worked: Worked[GridTask, GridAnswer], task: FollowRoute, end: Ending) -> Board:
    says = ". ".join(str(line) for line in worked.solution.task.lines) + "."
    if all(map(is_slide, task.route)):
        pieces = cast(worked.context.characters[:1]) or (Piece("counter", "the counter", look="counter"),)
        return _grid(worked, says, pieces, [{_square(worked, end.ends): pieces[0].id}])
    facings = tuple(Piece(facing, f"facing {facing}", shows=_ARROWS[facing]) for facing in FACINGS)
    return _grid(worked, says, facings, [{_square(worked, end.ends): end.facing}])


def _routes(worked: Worked[GridTask, GridAnswer], task: FindRoutes, routes: Sequence[Route]) -> Board:
    start, goal = _square(worked, task.start), _square(worked, task.goal)
    found = [
        {_square(worked, name): "step" for name in route.squares if _square(worked, name) != start} for route in routes
    ]
    step = (Piece("step", "a step", copies=None, look="counter"),)
    return _grid(worked, "Mark every square it goes over.", step, found, goal, closed=[start])


def _grid(
    worked: Worked[GridTask, GridAnswer],
    says: str,
    pieces: tuple[Piece, ...],
    found: Iterable[Laid],
    goal: Square | None = None,
    closed: Sequence[Square] = (),
) -> Board:
    task = worked.fields
    columns, rows = task.grid
    blocked = [_square(worked, name, free=False) for name in task.blocked]
    marks: dict[Square, tuple[Mark, ...]] = dict.fromkeys(blocked, ("blocked",))
    marks[_square(worked, task.start)] = (task.facing,)
    said = dict.fromkeys(blocked, "blocked") | {_square(worked, task.start): "the start"}
    if goal is not None:
        marks[goal], said[goal] = ("goal",), "the goal"
    return on_grid(
        "squares",
        says,
        pieces,
        [name_of((column, 0))[0] for column in range(columns)],
        [str(row + 1) for row in range(rows)],
        lambda square: ", ".join(filter(None, (name_of(square), said.get(square, "")))),
        [[laid] for laid in found],
        marks,
        {*blocked, *closed},
    )


def _square(worked: Worked[GridTask, GridAnswer], name: str, free: bool = True) -> Square:
    task = worked.fields
    return square_of(name, grid_of(task.grid, task.blocked if free else (), worked.context.caps.cells), ())
