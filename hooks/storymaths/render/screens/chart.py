"""Questions about a chart, each with a card to answer it; or a chart to draw."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction
from itertools import combinations, pairwise
from math import gcd, lcm

from ...activities.chart.rows import rows_of
from ...activities.chart.tasks import (
    AtEnd,
    Bar,
    Blocks,
    ChartAnswer,
    ChartTask,
    Found,
    Pictures,
    Point,
    QuestionAnswer,
    RowMarks,
    Slice,
    Tallies,
    write_number,
)
from ...activities.worked import Worked
from ...model.figures.charts import LineGraph
from .board import Board, Piece, Place, keyed
from .grid import can_be_touched, on_grid
from .pieces import card, card_id, one_card, one_each, with_nearby

_MARKS = {
    "picture": "a whole picture",
    "half": "half a picture",
    "quarter": "a quarter of a picture",
    "five": "a bundle of five",
    "one": "one mark",
}


def boards(worked: Worked[ChartTask, ChartAnswer]) -> Iterable[Board]:
    """A board a question; one for a drawing in pictures."""
    values = [answer.value for answer in worked.solution.answers]
    rows = [value for value in values if isinstance(value, RowMarks)]
    if rows:
        yield _draw(rows, worked)
    labels = rows_of(worked.fields, worked.context).labels
    asked = [value for value in values if not isinstance(value, RowMarks)]
    for line, value in zip(worked.solution.task.lines, asked, strict=True):
        yield _ask(str(line), value, labels)


def _ask(says: str, value: QuestionAnswer, labels: Sequence[str]) -> Board:
    match value:
        case AtEnd(answer=right):
            place = Place("answer", "the answer")
            pieces = tuple(map(card, dict.fromkeys([*labels, *right])))
            return Board("slots", says, pieces, (place,), keyed((place,), [[{"answer": list(map(card_id, right))}]]))
        case _:
            return _number(says, value.answer, labels)


def _number(says: str, right: Found, labels: Sequence[str]) -> Board:
    number = right.number
    if number.denominator == 1:
        return one_card(says, int(number), with_nearby([int(number)]))
    told = write_number(number)
    return one_card(says, told, [card(one) for one in dict.fromkeys([*labels, told])])


def _draw(rows: Sequence[RowMarks], worked: Worked[ChartTask, ChartAnswer]) -> Board:
    """Rows to fill with pictures or tallies; squares to shade; bars or points on a scale; or numbers."""
    if any(isinstance(row, (Pictures, Tallies)) for row in rows):
        return _fill(rows)
    heights = [_height(row) for row in rows]
    step = Fraction(gcd(*(int(one * lcm(*(h.denominator for h in heights))) for one in heights)))
    step = step / lcm(*(h.denominator for h in heights)) or Fraction(1)
    levels = int(max(heights) / step)
    evenly = all(
        len({b - a for a, b in pairwise(figure.data.along)}) <= 1
        for figure in worked.solution.task.figures
        if isinstance(figure.data, LineGraph)
    )
    is_slice = any(isinstance(row, Slice) for row in rows)
    if is_slice or not evenly or not can_be_touched(len(rows), levels + 2):
        return _numbers(rows, heights, "°" if is_slice else "")
    columns = [row.draw for row in rows]
    marks = [write_number(level * step) for level in range(levels + 2)]
    if any(isinstance(row, Blocks) for row in rows):
        block = (Piece("block", "a block", copies=None, look="shade"),)
        laid = {(column, up): "block" for column, height in enumerate(heights) for up in range(int(height))}
        return on_grid("squares", "", block, columns, marks[1:], lambda at: f"{columns[at[0]]} {at[1] + 1}", [[laid]])
    is_bar = any(isinstance(row, Bar) for row in rows)
    piece = (
        Piece("top", "the top of a bar", copies=None, look="bar")
        if is_bar
        else Piece("point", "a point", copies=None, look="counter")
    )
    drawn = {(column, int(height / step)): piece.id for column, height in enumerate(heights)}
    none = [at for at in drawn if is_bar and at[1] == 0]
    # A bar of nought may be marked or left out.
    ways = [
        {at: id_ for at, id_ in drawn.items() if at not in out}
        for n in range(len(none) + 1)
        for out in combinations(none, n)
    ]
    return on_grid("points", "", (piece,), columns, marks, lambda at: f"{columns[at[0]]} {marks[at[1]]}", [ways])


def _height(row: RowMarks) -> Fraction:
    match row:
        case Blocks(blocks=blocks):
            return Fraction(blocks)
        case Bar(height=found) | Point(at=found) | Slice(degrees=found):
            return found.number
        case Tallies() | Pictures():
            raise AssertionError("these are filled row by row")


def _numbers(rows: Sequence[RowMarks], heights: Sequence[Fraction], unit: str) -> Board:
    """How high, or how wide, each is to be drawn."""
    right = {row.draw: f"{write_number(height)}{unit}" for row, height in zip(rows, heights, strict=True)}
    near = [f"{write_number(height + step)}{unit}" for height in heights for step in (10, -10) if height + step > 0]
    return one_each(
        "", right, [card(one, None) for one in dict.fromkeys(sorted([*right.values(), *near[: len(right)]]))]
    )


def _fill(rows: Sequence[RowMarks]) -> Board:
    places = tuple(Place(f"row-{n}", row.draw) for n, row in enumerate(rows, 1))
    counts = [_marks_in(row) for row in rows]
    pieces = tuple(
        Piece(id_, name, copies=None) for id_, name in _MARKS.items() if any(id_ in count for count in counts)
    )
    way = {
        place.id: [id_ for id_, many in count.items() for _ in range(many)]
        for place, count in zip(places, counts, strict=True)
    }
    return Board("rows", "", pieces, places, keyed(places, [[way]]))


def _marks_in(row: RowMarks) -> dict[str, int]:
    """How many of each mark a row has; halves and quarters of a picture only where there are some."""
    match row:
        case Pictures():
            parts = {"half": row.halves, "quarter": row.quarters}
            return {"picture": row.pictures, **{name: many for name, many in parts.items() if many}}
        case Tallies():
            return {"five": row.fives, "one": row.ones}
        case _:
            return {}
