"""Shapes: their names sorted, or held against clues and claims; what each has; half a figure to complete."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace

from ...activities.saying import capital
from ...activities.shape.mirror import SHADED
from ...activities.shape.tasks import (
    ClueTask,
    Counts,
    CountTask,
    Fitting,
    HalfTask,
    NameTask,
    ShapeAnswer,
    ShapeName,
    ShapeTask,
    Verdict,
    WholeFigure,
)
from ...activities.sort.tasks import Placing
from ...activities.worked import Worked
from ...model.figures.shapes import FlatShapes, SolidShapes, TitledShape
from ..figures.flat_shapes import outline
from .board import Board, Mark, Piece
from .grid import Cell, can_be_touched, on_grid
from .pieces import card, numbers_for, one_each, sort_in_two
from .sort import lay_out

ShapeWorked = Worked[ShapeTask, ShapeAnswer]


def boards(worked: ShapeWorked) -> Iterable[Board]:
    """One board for shapes to sort, to choose or to judge; one a shape for what it has; none for one to be built."""
    values = [answer.value for answer in worked.solution.answers]
    match worked.fields:
        case HalfTask() as task:
            yield from (_complete(task, one.rows) for one in values if isinstance(one, WholeFigure) and _fits(one.rows))
        case NameTask():
            named = {one.letter: one.shape for one in values if isinstance(one, ShapeName)}
            yield one_each("", named, [card(name, None) for name in sorted({*named.values()})])
        case ClueTask():
            yield _choose(worked, [one.shape for one in values if isinstance(one, Fitting)])
        case CountTask():
            counts = [one for one in values if isinstance(one, Counts)]
            if table := worked.solution.task.table:
                for row, one in zip(table.rows, counts, strict=True):
                    has = zip(table.columns[1:], one.counts.values(), strict=True)
                    yield numbers_for(f"{capital(row[0])}:", dict(has))
    if verdicts := [one for one in values if isinstance(one, Verdict)]:
        lines = worked.solution.task.lines
        pieces = [Piece(f"claim-{one.claim}", str(lines[one.claim - 1])) for one in verdicts]
        can = [f"claim-{one.claim}" for one in verdicts if one.can]
        yield sort_in_two("", pieces, can, "it can be", "it cannot be")
    for value in values:
        if isinstance(value, Placing):
            shown = _shown(worked)
            cards = [_card(shape, shown) for region in value.regions.values() for shape in region]
            yield lay_out(worked.solution.task, cards, value)


def _shown(worked: ShapeWorked) -> Mapping[str, TitledShape]:
    """The shapes that are drawn, by their names."""
    figures = (figure.data for figure in worked.solution.task.figures)
    shapes = (figure.shapes for figure in figures if isinstance(figure, (FlatShapes, SolidShapes)))
    return {one.name: one for some in shapes for one in some}


def _card(name: str, shown: Mapping[str, TitledShape]) -> Piece:
    """A shape as its author calls it, drawn where it is flat, as it lies on the page."""
    one = shown.get(name, TitledShape(name, name))
    return replace(card(name), name=one.title, outline=outline(name, turn=one.turn))


def _choose(worked: ShapeWorked, fitting: Sequence[str]) -> Board:
    """The shapes shown, each to be laid where it belongs."""
    shown = _shown(worked)
    pieces = [_card(name, shown) for name in dict.fromkeys([*shown, *fitting])]
    right = [card(name).id for name in fitting]
    says = " ".join(str(line) for line in worked.solution.task.lines)
    return sort_in_two(says, pieces, right, "it can be", "it cannot be")


def _fits(rows: Sequence[str]) -> bool:
    return can_be_touched(len(rows[0]), len(rows))


def _complete(task: HalfTask, rows: Sequence[str]) -> Board:
    """The whole figure's squares from the foot up; those of the half that is given stay as they are."""
    from_foot = rows[::-1]
    across, high = len(rows[0]), len(rows)
    upright = task.mirror in ("right", "left")
    given: set[Cell] = set()
    marks: dict[Cell, tuple[Mark, ...]] = {}
    shaded: dict[Cell, str] = {}
    for cell in ((column, row) for row in range(high) for column in range(across)):
        column, row = cell
        is_first = column < across // 2 if upright else row >= high // 2
        some: list[Mark] = []
        if is_first == (task.mirror in ("right", "bottom")):
            given.add(cell)
            some += ["shaded"] if from_foot[row][column] == SHADED else []
        elif from_foot[row][column] == SHADED:
            shaded[cell] = "shade"
        if upright and column == across // 2 - 1:
            some.append("mirror-right")
        if not upright and row == high // 2:
            some.append("mirror-below")
        marks[cell] = tuple(some)
    return on_grid(
        "squares",
        "",
        (Piece("shade", "a shaded square", copies=None, look="shade"),),
        [""] * across,
        [""] * high,
        lambda cell: f"row {high - cell[1]}, square {cell[0] + 1}" + (", shaded" if "shaded" in marks[cell] else ""),
        [[shaded]],
        marks,
        given,
    )
