"""What of an activity stands on a slide: one question with its board and its figure, for one year or several."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from markupsafe import Markup

from ...activities.bending import Version
from ...activities.worked import AnyWorked
from ...model.activity import GAP, Figure, Line, Solution, Table
from ...model.figures.amounts import PartWhole, Track
from ...model.figures.charts import BarChart, BlockDiagram, LineGraph, Pictogram, PieChart, TallyChart
from ...model.figures.fractions import FractionLine
from ...model.figures.measures import Balance, ClockFace, Coins
from ...model.figures.shapes import CoordinateGrid, FlatShapes, GridRoute, MirrorSquares
from ...model.figures.sorting import Places, SortCarroll, SortHoop, SortThreeRings, SortVenn
from ..figures.table import draw
from .another import OtherBoard, other_boards
from .board import Board
from .table import boards_of

_PLAYED_ON = (Balance, Coins, PartWhole, Places, SortCarroll, SortThreeRings, SortVenn)
"""Figures to write on, or of what lies on the tray, which the board takes the place of."""

_DRAWN_ON = (
    *(BarChart, BlockDiagram, LineGraph, Pictogram, PieChart, TallyChart),
    *(CoordinateGrid, FractionLine, GridRoute, MirrorSquares),
)
"""Figures that are drawn on, or are to be drawn."""

_NAMED_BY_ONE_FACT = 2
"""Columns of a table that gives one fact of each by name."""


@dataclass(frozen=True, slots=True)
class ActivityPart:
    """One question of an activity."""

    title: str
    solution: Solution
    years: tuple[int, ...]
    """Those whose class it is shown to."""
    own: bool
    """Whether it is as the author wrote it, and not a version for another year."""
    board: Board | None = None
    figures: tuple[tuple[str, Markup], ...] = ()
    """Each in words, and drawn."""
    givens: tuple[str, ...] = ()
    """Lines to be read, such as clues, that no board shows."""
    lines: tuple[str, ...] = ()
    """What is asked, where there is no board."""
    table: Table | None = None
    """What is known of the cast, where the cards of the board do not carry it."""
    others: tuple[OtherBoard, ...] = ()
    """The same question in other numbers."""


def parts_of(done: AnyWorked, others: Sequence[Version] = ()) -> Iterator[ActivityPart]:
    """The questions as the author set them, with other numbers if there are any, then as each other year meets them."""
    own = done.context.year.year
    changed = {year: version for year, version in sorted(done.versions.items()) if not version.same and year != own}
    same = tuple(year for year, version in done.versions.items() if version.same and year != own)
    yield from _questions(done, tuple(sorted({own, *same})), others, own=True)
    for year, version in changed.items():
        yield from _questions(_as_worked(done, version), (year,), (), own=False)


def _as_worked(done: AnyWorked, version: Version) -> AnyWorked:
    return replace(done, fields=version.fields, context=version.context, solution=version.solution, versions={})


def _questions(
    done: AnyWorked, years: tuple[int, ...], others: Sequence[Version], *, own: bool
) -> Iterator[ActivityPart]:
    solution, title, boards = done.solution, done.fields.title, boards_of(done)
    figures = list(_not_played(solution, boards))
    asked = [] if boards else _one_by_one(solution.task.lines)
    count = max(1, len(boards), len(asked))
    for number in range(count):
        beside = [figures[number]] if len(figures) == count else figures
        givens = tuple(_givens(solution, boards, boards[number])) if boards else ()
        table = None if boards and _is_played(boards[number], solution.task.table) else solution.task.table
        # What stands beside a board does not change with its numbers.
        again = other_boards(done, others, boards, number) if boards and not (beside or givens or table) else ()
        yield ActivityPart(
            title if count == 1 else f"{title} ({number + 1} of {count})",
            solution,
            years,
            own,
            boards[number] if boards else None,
            tuple((figure.alt, Markup(draw(figure.data))) for figure in beside),
            givens,
            tuple(map(str, asked[number])) if asked else (),
            table,
            tuple(again),
        )


def _is_played(board: Board, table: Table | None) -> bool:
    """Whether a table has gaps that the board fills, or names alone, or one thing to say of each, which each card says."""
    if table is None or len(table.columns) == 1 or any(GAP in row for row in table.rows):
        return True
    return len(table.columns) == _NAMED_BY_ONE_FACT and all(piece.shows for piece in board.pieces)


def _one_by_one(lines: Sequence[Line]) -> list[tuple[Line, ...]]:
    """A slide for each line that asks something; steps to follow stay together."""
    return [(line,) for line in lines] if any(line.gaps or line.asks for line in lines) else [tuple(lines)]


def _not_played(solution: Solution, boards: Sequence[Board]) -> Iterator[Figure]:
    """The task's figures that are not themselves the board."""
    layouts = {board.layout for board in boards}
    pieces = [piece for board in boards for piece in board.pieces]
    played = (
        *_PLAYED_ON,
        *((Track,) if any(piece.sort == "term" for piece in pieces) else ()),
        *((FlatShapes,) if any(piece.outline for piece in pieces) else ()),
        *((ClockFace,) if "clock" in layouts else ()),
        *((SortHoop,) if layouts & {"rings", "venn", "carroll"} else ()),
        *(_DRAWN_ON if layouts & {"rows", "squares", "points", "line"} else ()),
    )
    for figure in solution.task.figures:
        if not boards or not isinstance(figure.data, played):
            yield figure


def _givens(solution: Solution, boards: Sequence[Board], board: Board) -> Iterator[str]:
    """What a board of its own question does not say: lines that no board asks, and that do not lie on its cards."""
    drawn = any(isinstance(figure.data, Track) for figure in solution.task.figures)
    if board.layout in ("slots", "sentence") and not drawn:
        on_board = {f"{piece.name}: {piece.shows}" if piece.shows else piece.name for piece in board.pieces}
        on_board |= {each.says for each in boards}
        yield from (
            str(line) for line in solution.task.lines if not line.gaps and not line.asks and str(line) not in on_board
        )
