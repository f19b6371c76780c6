"""A lesson on one sheet of paper, two sides, for the hand of whoever teaches it: its steps with all that is said in them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Any

from ...model.body import Block as PageBlock
from ...model.body import Fence
from ...model.document import Document
from ...model.fields import year_name
from ...model.session import Session, Stop
from ...parse.body import words_of
from ..objectives import ShownObjective, shown
from ..session_steps import ShownStep, steps_with_stops
from .brief import in_brief
from .paper import PaperUse, to_whom
from .set_out import areas_set_out, care_of
from .sheet import Part, SheetData
from .sheet_context import SheetContext
from .words import Block, letters_in, parts_of, plain, runs

_SIZE_BY_LETTERS = 800
"""Points of type at which a plan fills its two sides, times the root of its letters. The template looks, and puts it
right; a good guess saves it a second look."""


def lesson_plan(sheets: SheetContext, page: Document[Session]) -> SheetData:
    """What to get ready, then the lesson as it is taught, and what to look for.

    The template leaves out least what matters most where two sides do not hold it all, and says what it left out.
    """
    session, book = page.fields, sheets.collection.books[page.fields.book].fields
    run = sheets.collection.sessions_of(session.book)
    steps, left = steps_with_stops(session, page.content)
    data = {
        "heading": session.title,
        "kicker": plain(
            f"{book.title} · session {session.number} of {len(run)} · {year_name(session.year)} · "
            f"{session.minutes} minutes · read {'; then '.join(str(reading.pages) for reading in session.reads)}"
        ),
        "summary": runs(session.summary),
        "clock": [{"name": runs(step.name), "minutes": step.minutes} for step in session.steps],
        "ready": _ready(sheets, session),
        "care": care_of(sheets, session),
        "words": {"new": list(session.words.new), "again": list(session.words.again), "signs": list(session.symbols.new)},
        "before": _told(sheets, page, page.content.opening),
        "steps": [_step(sheets, page, step) for step in steps],
        "stops": _stops(left),
        "task": [runs(session.task.objects), runs(session.task.pictures), runs(session.task.symbols)],
        "stems": [runs(stem) for stem in session.stem_sentences],
        "hear": [{"says": runs(one.says), "try": runs(one.try_this)} for one in session.misconceptions],
        "exit": {"ask": runs(session.exit_question.ask), "answer": runs(session.exit_question.answer)},
        "last": "Symbols" if sheets.collection.reference.years[session.year].writes else "In words",
        "set": areas_set_out(sheets, session),
        "easier": [runs(line) for line in session.easier],
        "harder": [runs(line) for line in session.harder],
        "look": [runs(line) for line in session.look_for],
        "teaches": [_teaches(one) for one in shown(session.objectives, sheets.collection.reference)],
    }  # fmt: skip
    return SheetData(
        "plan",
        f"Plan: {session.title}",
        "The lesson on one sheet: every step, what to say and ask, and the answers.",
        (Part("plan", {**data, "about": _SIZE_BY_LETTERS / math.sqrt(letters_in(data))}),),
        PaperUse(each="for the adult", sides=2, note="Print it on both sides."),
        {},
    )


def _step(sheets: SheetContext, page: Document[Session], shown: ShownStep) -> dict[str, Any]:
    name = shown.step.name
    blocks = next((one.blocks for one in page.content.sections if one.heading.words == words_of(name)), ())
    return {
        "name": runs(name),
        "minutes": shown.step.minutes,
        "told": _told(sheets, page, blocks),
        "stops": _stops(shown.stops),
        "main": shown.is_main,
    }


def _told(sheets: SheetContext, page: Document[Session], blocks: Sequence[PageBlock]) -> list[Block]:
    """Blocks of the page, each activity where it stands, with its answers in brief."""
    by_line = sheets.activities_by_line(page)
    told: list[Block] = []
    for block in blocks:
        if not isinstance(block, Fence):
            told += parts_of([block])
        elif block.line in by_line:
            told.append({"activity": in_brief(by_line[block.line])})
    return told


def _stops(stops: Sequence[Stop]) -> list[dict[str, Any]]:
    return [
        {
            "page": stop.page,
            "ask": runs(stop.ask),
            "hear": [runs(heard) for heard in stop.hear],
            "listen": runs(stop.listen_for or ""),
        }
        for stop in stops
    ]


def _teaches(one: ShownObjective) -> str:
    if one.only:
        return f"{one.objective.code}, in part: {'; '.join(part.says for part in one.only)}"
    return f"{one.objective.code}: {one.objective.says}"


def _ready(sheets: SheetContext, session: Session) -> list[dict[str, Any]]:
    """Each thing, how many there are to each, and how many that makes for the class."""
    rows = []
    for needed in session.materials:
        material = sheets.collection.reference.materials.get(needed.item)
        if material:
            rows.append(
                {
                    "thing": material.name if needed.count == 1 else material.plural,
                    "each": f"{needed.count} {to_whom(needed, session.group_size)}",
                    "all": needed.for_class(sheets.children, session.group_size),
                }
            )
    return rows
