"""The answer key: every answer as it was worked out, for each year, and the answer to the exit question."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import Any

from ...model.activity import Solution
from ...model.document import Document
from ...model.fields import year_name
from ...model.session import Session
from .paper import for_adult
from .sheet import Part, SheetData
from .sheet_context import SheetActivity, SheetContext
from .words import blocks, runs

_HEADING = re.compile(r"^##[ ]+", re.MULTILINE)
_FOR_ADULT = re.compile(r"^\*\*For the (?:adult|grown-up)\b", re.MULTILINE | re.IGNORECASE)


def answer_key(sheets: SheetContext, page: Document[Session], activities: Sequence[SheetActivity]) -> SheetData:
    """Answers of the activities, then what the session tells the adult, then the exit question."""
    session = page.fields
    data = {
        "heading": f"Answers: {session.title}",
        "activities": [_activity(activity) for activity in activities],
        "told": blocks("\n\n".join(_for_the_adult(sheets.body(page)))),
        "exit": {"ask": runs(session.exit_question.ask), "answer": runs(session.exit_question.answer)},
    }
    return SheetData(
        "answers",
        f"Answers: {session.title}",
        "Every answer, how it is worked out, and how one knows that there are no more.",
        (Part("answer_key", data),),
        for_adult(),
        {},
    )


def _activity(activity: SheetActivity) -> dict[str, Any]:
    years = sorted(activity.by_year, key=lambda year: (year != activity.year, year))
    versions = [_version(activity.by_year[year], year_name(year)) for year in years]
    return {"title": runs(activity.title), "versions": versions}


def _version(solution: Solution, year: str) -> dict[str, Any]:
    task = solution.task
    shown = [f"{character.name} {number}" for character, number in zip(task.characters, task.shows, strict=False)]
    return {
        "year": year,
        "ask": runs(task.ask),
        "shown": runs(", ".join(shown)),
        "answers": [
            {"says": runs(answer.says), "worked": runs(answer.worked) if answer.worked != answer.says else []}
            for answer in solution.answers
        ],
        "note": runs(solution.note),
        "slip": [runs(solution.likely_error.does), runs(solution.likely_error.gives)] if solution.likely_error else [],
    }


def _for_the_adult(body: str) -> Iterator[str]:
    """The parts of a body meant for the adult alone, each under its heading, to the end of its section."""
    opening, *sections = _HEADING.split(body)
    for heading, _, told in [("", "", opening), *(section.partition("\n") for section in sections)]:
        found = _FOR_ADULT.search(told)
        if found:
            yield from [f"## {heading.strip()}"] if heading else []
            yield told[found.start() :]
