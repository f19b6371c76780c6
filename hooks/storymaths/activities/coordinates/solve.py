"""Points on two axes read, drawn, moved, reflected, and the corner that is missing."""

from __future__ import annotations

from collections.abc import Mapping

from ...model.activity import Answer, Context, Figure, Line, Solution, Task
from ...model.demands import Demands, amounts
from ...model.fields import year_name
from ...model.figures.shapes import CoordinateGrid, LetteredPoint
from ..kind import Unsolvable
from . import say
from .tasks import (
    CoordinatesAnswer,
    CoordinatesTask,
    FindCorner,
    FindTranslation,
    PlotPoints,
    PointAt,
    ReadPoints,
    ReflectPoints,
    TranslatePoints,
    Translation,
)

_LEAST_ACROSS, _LARGEST = 6, 20
At = tuple[int, int]


def solve(task: CoordinatesTask, context: Context) -> Solution[CoordinatesAnswer]:
    """An answer for each point in the order given, or the one move or corner. Raises ``Unsolvable``."""
    new = _moved(task)
    _check(task, new, context)
    every = [*task.points.values(), *new.values()]
    four = min(min(at) for at in every) < 0
    across = max(_LEAST_ACROSS, *(abs(number) for at in every for number in at))
    given = _draw(task, {} if isinstance(task, PlotPoints) else task.points, across, four)
    unchanged = isinstance(task, (ReadPoints, FindTranslation))
    return Solution(
        Task(
            say.ask(task),
            lines=tuple(
                Line((f"{letter} {say.pair(at)}",))
                if isinstance(task, PlotPoints)
                else Line((f"{letter} (", ", ", ")"))
                for letter, at in (task.points if isinstance(task, (PlotPoints, ReadPoints)) else new).items()
            ),
            figures=(given,),
        ),
        tuple(_answers(task, new)),
        Demands(amounts(number for at in every for number in at), words=_words(task))
        | Demands(signs=frozenset("−" if four else "")),
        1 if isinstance(task, (ReadPoints, PlotPoints)) else 2,
        say.READ if unchanged or isinstance(task, PlotPoints) else "Each point has one place to go to.",
        next((say.expect_swapped(at) for at in (new or task.points).values() if at[0] != at[1]), None),
        () if unchanged else (_draw(task, {**task.points, **new}, across, four),),
    )


def _words(task: CoordinatesTask) -> tuple[str, ...]:
    return ("coordinates", "translation") if isinstance(task, (TranslatePoints, FindTranslation)) else ("coordinates",)


def _moved(task: CoordinatesTask) -> Mapping[str, At]:
    """The points after what is done to them, with a dash after their letters; or the corner that is missing."""
    match task:
        case TranslatePoints():
            return {f"{letter}′": (x + task.by[0], y + task.by[1]) for letter, (x, y) in task.points.items()}
        case ReflectPoints():
            over_x = task.axis == "x"
            return {f"{letter}′": (x, -y) if over_x else (-x, y) for letter, (x, y) in task.points.items()}
        case FindCorner() if len(task.points) == 3:
            (ax, ay), (bx, by), (cx, cy) = task.points.values()
            return {_next_letter(list(task.points)): (ax + cx - bx, ay + cy - by)}
        case _:
            return {}


def _next_letter(letters: list[str]) -> str:
    """The letter that goes on from A, B and C; else just the corner."""
    last = letters[-1]
    return chr(ord(last) + 1) if len(last) == 1 and last not in "Zz" else "the corner"


def _check(task: CoordinatesTask, new: Mapping[str, At], context: Context) -> None:
    every = {**task.points, **new}
    if isinstance(task, FindCorner):
        _check_corners(task)
    if isinstance(task, TranslatePoints) and task.by == (0, 0):
        raise Unsolvable(("by",), "Nothing moves.", "write how far, such as [3, 2].")
    if isinstance(task, FindTranslation) and len(task.points) != 2:
        raise Unsolvable(("points",), "One point moves to one other.", "give two points.")
    if any(abs(number) > _LARGEST for at in new.values() for number in at):
        raise Unsolvable(("points",), f"A point would be past {_LARGEST}.", "use smaller numbers.")
    below = next((letter for letter, at in every.items() if min(at) < 0), None)
    if below and not context.year.practice.coordinates.four_quadrants:
        message = f"{below} is at {say.pair(every[below])}, and {year_name(context.year.year)} does not yet go below nought there."
        raise Unsolvable(("points",), message, "choose numbers from 0, or an older year.", "activity-beyond-year")


def _check_corners(task: FindCorner) -> None:
    """That the three corners can be those of such a shape."""
    if len(task.points) != 3:
        raise Unsolvable(
            ("points",), "The fourth corner follows from three.", "give three points, going round the shape."
        )
    (ax, ay), (bx, by), (cx, cy) = task.points.values()
    one, other = (ax - bx, ay - by), (cx - bx, cy - by)
    flat = one[0] * other[1] == one[1] * other[0]
    right, alike = (
        one[0] * other[0] + one[1] * other[1] == 0,
        one[0] ** 2 + one[1] ** 2 == other[0] ** 2 + other[1] ** 2,
    )
    fits = {"parallelogram": True, "rectangle": right, "square": right and alike}[task.shape]
    if flat or not fits:
        message = (
            f"{', '.join(map(say.pair, task.points.values()))} are no three corners of a {task.shape}, going round it."
        )
        raise Unsolvable(("points",), message, "move one of them, or choose another shape.")


def _answers(task: CoordinatesTask, new: Mapping[str, At]) -> list[Answer[CoordinatesAnswer]]:
    if isinstance(task, FindTranslation):
        (x1, y1), (x2, y2) = task.points.values()
        move = Translation(x2 - x1, y2 - y1)
        why = f"{say.explain_move((x1, y1), (x2, y2))[:-1]} to {say.pair((x2, y2))}."
        return [Answer(say.name_move(move.right, move.up), why, move)]
    if isinstance(task, (ReadPoints, PlotPoints)):
        places = [PointAt(letter, at) for letter, at in task.points.items()]
        return [Answer(say.say_point(one), say.explain_place(one.at), one) for one in places]
    places = [PointAt(letter, at) for letter, at in new.items()]
    if isinstance(task, FindCorner):
        _, before, last = task.points.values()
        first = next(iter(task.points.values()))
        why = f"The way from {say.pair(before)} to {say.pair(last)} is the way from {say.pair(first)}: "
        why += f"{say.name_move(last[0] - before[0], last[1] - before[1])}."
        return [Answer(say.say_point(one), why, one) for one in places]
    olds = task.points.values()
    return [
        Answer(say.say_point(one), say.explain_move(old, one.at), one) for one, old in zip(places, olds, strict=True)
    ]


def _draw(task: CoordinatesTask, points: Mapping[str, At], across: int, four: bool) -> Figure:
    shown = tuple(LetteredPoint(letter, x, y) for letter, (x, y) in points.items())
    shapes = [shown[: len(task.points)], shown[len(task.points) :]]
    if isinstance(task, FindCorner):
        shapes = [shown] if len(shown) == 4 else []
    joined = tuple(tuple((one.x, one.y) for one in shape) for shape in shapes if len(shape) > 1)
    outlines = joined if task.joined or isinstance(task, FindCorner) else ()
    return Figure(CoordinateGrid(across, four, shown, outlines), say.describe(list(points), four))
