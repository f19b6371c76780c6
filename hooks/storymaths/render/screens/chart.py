"""Questions about a chart, each with a card to answer it; or rows of a pictogram to fill."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

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
    Slice,
    Tallies,
    write_number,
)
from ...activities.worked import Worked
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, one_card, with_nearby


def boards(worked: Worked[ChartTask, ChartAnswer]) -> Iterable[Board]:
    """A board a question; one for a drawing in pictures."""
    values = [answer.value for answer in worked.solution.answers]
    if pictures := [value for value in values if isinstance(value, Pictures)]:
        yield _draw(pictures)
    labels = rows_of(worked.fields, worked.context).labels
    asked = [value for value in values if not isinstance(value, (Pictures, Tallies, Blocks, Bar, Point, Slice))]
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


def _draw(rows: Sequence[Pictures]) -> Board:
    places = tuple(Place(f"row-{n}", row.draw) for n, row in enumerate(rows, 1))
    pieces = [Piece("picture", "a whole picture", copies=None)]
    if any(row.halves for row in rows):
        pieces.append(Piece("half", "half a picture", copies=None))
    if any(row.quarters for row in rows):
        pieces.append(Piece("quarter", "a quarter of a picture", copies=None))
    way = {
        place.id: ["half"] * row.halves + ["picture"] * row.pictures + ["quarter"] * row.quarters
        for place, row in zip(places, rows, strict=True)
    }
    return Board("rows", "", tuple(pieces), places, keyed(places, [[way]]))
