"""The answer key: every answer as it was worked out, for each year, and the answer to the exit question."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from ...activities.saying import listed
from ...model.activity import Solution
from ...model.body import Block as PageBlock
from ...model.body import Paragraph
from ...model.document import Document
from ...model.fields import year_name
from ...model.session import Session
from .paper import for_adult
from .sheet import Part, SheetData
from .sheet_context import SheetActivity, SheetContext
from .words import parts_of, runs

_FOR_ADULT = ("for the adult", "for the grown-up")


def answer_key(sheets: SheetContext, page: Document[Session], activities: Sequence[SheetActivity]) -> SheetData:
    """Answers of the activities, then what the session tells the adult, then the exit question."""
    session = page.fields
    data = {
        "heading": f"Answers: {session.title}",
        "activities": [_activity(activity) for activity in activities],
        "told": parts_of(_for_the_adult(sheets, page)),
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
    versions = [version_with_answers(activity.by_year[year], _headed(activity, year)) for year in years]
    same = f"{listed([year_name(year) for year in sorted(activity.same)])}: the same." if activity.same else ""
    return {"title": runs(activity.title), "versions": versions, "same": same}


def _headed(activity: SheetActivity, year: int) -> str:
    title = activity.titles[year]
    return year_name(year) if title == activity.title else f"{year_name(year)}: {title}"


def version_with_answers(solution: Solution, year: str) -> dict[str, Any]:
    """A version as the key has it: its task and every answer, headed by its year or its mark."""
    task = solution.task
    shown = [f"{character.name} {number}" for character, number in zip(task.characters, task.shows, strict=False)]
    return {
        "year": year,
        "ask": runs(task.ask),
        "shown": runs(", ".join(shown)),
        "answers": [
            {"says": runs(answer.says), "worked": runs(answer.why) if answer.why else []} for answer in solution.answers
        ],
        "note": runs(solution.note),
        "slip": [runs(solution.likely_error.does), runs(solution.likely_error.gives)] if solution.likely_error else [],
    }


def _for_the_adult(sheets: SheetContext, page: Document[Session]) -> Iterator[PageBlock]:
    """The parts of a body meant for the adult alone, each under its heading, to the end of its section."""
    content = page.content
    for heading, blocks in [(None, content.opening), *((one.heading, one.blocks) for one in content.sections)]:
        told = list(sheets.without_activities(page, blocks))
        start = next((at for at, block in enumerate(told) if _is_for_adult(block)), None)
        if start is not None:
            yield from [heading] if heading else []
            yield from told[start:]


def _is_for_adult(block: PageBlock) -> bool:
    if not isinstance(block, Paragraph) or not block.runs[0].marks:
        return False
    return block.runs[0].marks[0].name == "strong" and block.runs[0].text.lower().startswith(_FOR_ADULT)
