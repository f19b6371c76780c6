"""The recording sheet with other numbers, so that tables of children need not copy each other, and its answers."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from ...model.activity import Solution
from ...model.document import Document
from ...model.session import Session
from .answer_key import version_with_answers
from .paper import PaperUse
from .recording import line_height, once
from .recording_tasks import shown_task
from .sheet import Part, SheetData
from .sheet_context import SheetActivity, SheetContext, SheetPictures
from .words import runs

OTHER_NUMBERS = "other-numbers"
MARKS = ("a house", "a boat", "a leaf", "a key", "a cup")
"""One for each set: things that stand in no order, and say neither how many nor how hard."""
_NOT_THE_STORY = "The numbers here are not the ones in the story."


def other_numbers_sheet(
    sheets: SheetContext, page: Document[Session], activities: Sequence[SheetActivity]
) -> SheetData | None:
    """A page for each further set of numbers, then their answers for the adult; none where no activity has any."""
    own = [one for one in activities if one.others and one.year not in one.aloud]
    if not own:
        return None
    pictures = SheetPictures(sheets.drawings)
    marks = MARKS[: max(len(one.others) for one in own)]
    versions = tuple(
        Part("recording", _page(page.fields, own, place, mark, pictures)) for place, mark in enumerate(marks)
    )
    names = ", ".join(marks)
    return SheetData(
        OTHER_NUMBERS,
        f"Recording sheet, other numbers: {page.fields.title}",
        f"The same tasks with other numbers, so that tables need not copy each other. Each has its mark: {names}. "
        "The answers come last, for the adult.",
        (*versions, Part("answer_key", _answers(page.fields, own, marks))),
        PaperUse(each=f"{len(marks)} version{'s' if len(marks) > 1 else ''} and the answers: print what you need"),
        pictures.kept,
    )


def _page(
    session: Session, activities: Sequence[SheetActivity], place: int, mark: str, pictures: SheetPictures
) -> dict[str, Any]:
    here = [one.others[place] for one in activities if place < len(one.others)]
    return {
        "heading": session.title,
        "line": line_height(session.year),
        "tasks": once([shown_task(one.fields.title, one.solution, pictures) for one in here]),
        "stems": [],
        "signs": [],
        "table": [],
        "same": [],
        "note": _NOT_THE_STORY,
        "mark": {"sign": mark, "name": mark[2:]},
    }


def _answers(session: Session, activities: Sequence[SheetActivity], marks: Sequence[str]) -> dict[str, Any]:
    shown = []
    for one in activities:
        named = zip(one.others, marks, strict=False)
        versions = [_briefly(other.solution, mark, one.own.task.ask) for other, mark in named]
        shown.append({"title": runs(one.title), "versions": versions, "same": "", "headed": True})
    return {"heading": f"Answers, other numbers: {session.title}", "activities": shown, "told": [], "exit": None}


def _briefly(solution: Solution, mark: str, own_ask: str) -> dict[str, Any]:
    """The answers alone: how they are worked out is told once, on the lesson's own key."""
    whole = version_with_answers(solution, mark[2:].capitalize())
    answers = [{**answer, "worked": []} for answer in whole["answers"]]
    ask = [] if solution.task.ask == own_ask else whole["ask"]
    return {**whole, "ask": ask, "answers": answers, "note": [], "slip": []}
