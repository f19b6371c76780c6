"""Questions about a chart, each with a card to answer it; or rows of a pictogram to fill."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any

from ...activities.worked import AnyWorked
from ...model.activity import Answer
from ...model.figures.charts import BarChart, BlockDiagram, Pictogram, TallyChart
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, one_card, with_nearby


def boards(worked: AnyWorked) -> Iterable[Board]:
    """A board a question; one for a drawing."""
    assert worked.solution is not None
    answers = worked.solution.answers
    drawn = [answer.data for answer in answers if "draw" in answer.data]
    if drawn:
        yield _drawn(drawn)
    questions = [str(line) for line in worked.solution.task.lines if line.asks]
    asked = [answer for answer in answers if "answer" in answer.data]
    for number, answer in enumerate(asked):
        yield _question(worked, questions[number] if number < len(questions) else "", answer)


def _question(worked: AnyWorked, says: str, answer: Answer) -> Board:
    right = answer.data["answer"]
    if isinstance(right, int):
        return one_card(says, right, with_nearby([right]))
    labels = _labels(worked)
    if isinstance(right, str):
        return one_card(says, right, [card(one) for one in dict.fromkeys([*labels, right])])
    place = Place("answer", "the answer")
    wanted = [card_id(one) for one in right]
    pieces = tuple(card(one) for one in dict.fromkeys([*labels, *right]))
    return Board("slots", says, pieces, (place,), keyed((place,), [[{"answer": wanted}]]))


def _labels(worked: AnyWorked) -> list[str]:
    assert worked.solution is not None
    task = worked.solution.task
    charts = (TallyChart, Pictogram, BlockDiagram, BarChart)
    labels = [row.label for figure in task.figures if isinstance(figure.data, charts) for row in figure.data.rows]
    return labels or [row[0] for row in (task.table.rows if task.table else ())]


def _drawn(rows: Sequence[Any]) -> Board:
    places = tuple(Place(f"row-{n}", str(row["draw"])) for n, row in enumerate(rows, 1))
    pieces = [Piece("picture", "a whole picture", copies=None)]
    if any(row.get("halves") for row in rows):
        pieces.append(Piece("half", "half a picture", copies=None))
    way = {
        place.id: ["half"] * int(row.get("halves", 0)) + ["picture"] * int(row["pictures"])
        for place, row in zip(places, rows, strict=True)
    }
    return Board("rows", "", tuple(pieces), places, keyed(places, [[way]]))
