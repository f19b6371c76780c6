"""The sheets of a series: what each session begins with, a record for the class, and questions for its end."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, TypeVar

from ...activities.saying import counted
from ...covers.path import SeriesPath, path_of
from ...covers.starters import AskedAgain, EndQuestion, TakenUp, asked_again, end_questions, starter_of
from ...covers.taught import SessionPage
from ...model.activity import Solution
from ...model.document import Document
from ...model.reference import Reference
from ...model.series import Series
from .answer_key import version_with_answers
from .paper import PaperUse, for_adult
from .recording import line_height, once
from .recording_tasks import shown_task
from .sheet import Part, SheetData
from .sheet_context import SheetContext, SheetPictures
from .words import runs

_ROOM_MM = 235
_ONE_PAGE = 12
"""Sessions of which one page of questions can ask enough."""
_AGO = {1: "From the last lesson", 3: "From three lessons ago", 7: "From seven lessons ago"}


def series_sheets(sheets: SheetContext, page: Document[Series]) -> list[SheetData]:
    """What there is to print for a series; nothing where it has no sessions."""
    path = path_of(page.fields, sheets.collection)
    sessions = path.sessions
    record = [_record(sheets, page, sessions)] if sessions else []
    if not sheets.collection.reference.years[page.fields.year].writes:
        return record  # a class that writes nothing is asked aloud
    starters = [(one, _begin_with(sheets, sessions, place)) for place, one in enumerate(sessions)]
    told = [(one, fitting) for one, taken in starters if (fitting := _on_a_page(taken))]
    made = [*_starters(sheets, page, told)] if told else []
    return [*made, *record, *_end(sheets, page, path)]


def _begin_with(sheets: SheetContext, sessions: Sequence[SessionPage], place: int) -> list[TakenUp | AskedAgain]:
    """Activities with other numbers, and the last questions of the sessions that have none, the nearest session first."""
    taken = starter_of(sessions, place, sheets.activities_of)
    return sorted((*taken, *asked_again(sessions, place, taken)), key=lambda one: one.before)


Asked = TypeVar("Asked", TakenUp | AskedAgain, EndQuestion)


def _on_a_page(asked: Sequence[Asked]) -> list[Asked]:
    """Those that one page has room for, the shortest chosen first, in their order."""
    room, kept = _ROOM_MM, []
    for one in sorted(asked, key=lambda one: _height(one.solution)):
        room -= _height(one.solution)
        kept += [one] if room >= 0 else []
    return [one for one in asked if one in kept]


def _height(solution: Solution) -> int:
    """About as many mm as a task takes in the closest lines."""
    shown = shown_task("", solution, SheetPictures(lambda source: None))
    rows = (
        len(shown["lines"])
        + len(shown["given"])
        + bool(shown["choices"])
        + (len(shown["table"]["rows"]) + 1 if shown["table"] else 0)
    )
    return 24 + 10 * rows + (32 if shown["players"] else 0) + 52 * len(shown["figures"])


def ago(before: int) -> str:
    """How long ago a question was met, as it is headed."""
    return _AGO[before]


def _starters(
    sheets: SheetContext, page: Document[Series], told: Sequence[tuple[SessionPage, list[TakenUp | AskedAgain]]]
) -> list[SheetData]:
    pictures, title = SheetPictures(sheets.drawings), page.fields.title
    pages = tuple(Part("recording", _starter(session, taken, pictures)) for session, taken in told)
    key = [
        {
            "title": runs(f"Session {session.fields.number}: {session.fields.title}"),
            "versions": [_key_of(one) for one in taken],
            "same": "",
            "headed": True,
        }
        for session, taken in told
    ]
    children = sheets.children
    return [
        SheetData(
            "starters",
            f"To begin: {title}",
            f"A page for the start of {counted(len(told), 'sessions')}: a question from the last lesson, from three lessons "
            "ago and from seven, with other numbers where they can be changed.",
            pages,
            PaperUse(
                children=children, sets=children, each="one page to a child, or one on the board", versions=len(told)
            ),
            pictures.kept,
        ),
        SheetData(
            "starters-answers",
            f"Answers, to begin: {title}",
            "The answers to what each session begins with.",
            (
                Part(
                    "answer_key",
                    {"heading": f"Answers, to begin: {title}", "activities": key, "told": [], "exit": None},
                ),
            ),
            for_adult(),
            {},
        ),
    ]


def _starter(session: SessionPage, taken: Sequence[TakenUp | AskedAgain], pictures: SheetPictures) -> dict[str, Any]:
    tasks = [shown_task(f"{ago(one.before)}", one.solution, pictures) for one in taken]
    return {
        **_child_page(f"To begin: {session.fields.title}", session.fields.year, once(tasks)),
        **({"note": f"{ago(taken[0].before)}."} if len(taken) == 1 else {}),
    }


def _child_page(heading: str, year: int, tasks: list[dict[str, Any]]) -> dict[str, Any]:
    rest: dict[str, Any] = {key: [] for key in ("stems", "signs", "table", "same")}
    return {"heading": heading, "line": line_height(year), "tasks": tasks, "mark": None, **rest}


def _key_of(one: TakenUp | AskedAgain) -> dict[str, Any]:
    title = "the question to end on" if isinstance(one, AskedAgain) else one.title
    numbers = "" if isinstance(one, TakenUp) and one.anew else ", as it was in the lesson"
    key = version_with_answers(one.solution, f"{ago(one.before)}: {title}{numbers}")
    return {**key, "note": [], "slip": []}


def _record(sheets: SheetContext, page: Document[Series], sessions: Sequence[SessionPage]) -> SheetData:
    pages = tuple(
        Part(
            "record",
            {
                "heading": f"Record: {one.fields.title}",
                "of": f"{page.fields.title}, lesson {place} of {len(sessions)}",
                "looks": [runs(look) for look in one.fields.look_for],
                "ask": runs(one.fields.exit_question.ask),
                "answer": runs(one.fields.exit_question.answer),
                "children": sheets.children,
            },
        )
        for place, one in enumerate(sessions, 1)
    )
    return SheetData(
        "record",
        f"A record for the class: {page.fields.title}",
        "What to look for and the question to end on, lesson by lesson, with a row for each child. "
        "Keep it as your school keeps such records: the names you write are on this paper only.",
        pages,
        for_adult(),
        {},
    )


def _end(sheets: SheetContext, page: Document[Series], path: SeriesPath) -> list[SheetData]:
    """A page of questions; of a series longer than a term, a page for each book."""
    reference, title = sheets.collection.reference, page.fields.title
    is_long = len(path.sessions) > _ONE_PAGE
    parts = [(run.book.fields.title, run.sessions) for run in path.runs] if is_long else [(title, path.sessions)]
    every = [(of, end_questions(sessions, sheets.activities_of, reference)) for of, sessions in parts]
    paged = [(of, kept) for of, found in every if (kept := _on_a_page(found))]
    if not paged:
        return []
    pictures, asked = SheetPictures(sheets.drawings), [one for _, kept in paged for one in kept]
    says = [reference.objectives[one.key].says for one in asked]
    key = [
        {
            "title": runs(f"{one.key[1]}: {words}"),
            "versions": [
                {**version_with_answers(one.solution, f"As taught in {one.page.fields.title}"), "note": [], "slip": []}
            ],
            "same": "",
            "headed": True,
        }
        for one, words in zip(asked, says, strict=True)
    ]
    children = sheets.children
    return [
        SheetData(
            "end-questions",
            f"At the end: {title}",
            f"{'A page of questions for the end of each book' if is_long else 'A page of questions for the end of the series'}, "
            "each under the objective it is asked for.",
            tuple(_end_page(of, page.fields.year, kept, reference, pictures) for of, kept in paged),
            PaperUse(children=children, sets=children, each="one to a child"),
            pictures.kept,
        ),
        SheetData(
            "end-answers",
            f"Answers, at the end: {title}",
            "The answers, each with the code of its objective.",
            (
                Part(
                    "answer_key",
                    {"heading": f"Answers, at the end: {title}", "activities": key, "told": [], "exit": None},
                ),
            ),
            for_adult(),
            {},
        ),
    ]


def _end_page(of: str, year: int, asked: Sequence[EndQuestion], reference: Reference, pictures: SheetPictures) -> Part:
    tasks = [shown_task(reference.objectives[one.key].says, one.solution, pictures) for one in asked]
    return Part("recording", _child_page(f"At the end of {of}", year, once(tasks)))
