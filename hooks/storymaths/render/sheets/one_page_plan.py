"""A session on one page, for the hand of whoever teaches it."""

from __future__ import annotations

import math
from typing import Any

from ...model.document import Document
from ...model.fields import year_name
from ...model.session import Session
from ..objectives import ShownObjective, shown
from .paper import for_adult, to_whom
from .sheet import Part, SheetData
from .sheet_context import SheetContext
from .words import letters_in, plain, runs

_SIZE_BY_LETTERS = 545
"""Points of type at which a plan fills its page, times the root of its letters. The template looks, and puts it right;
a good guess saves it a second look. Of 12 plans: 546 to 576."""


def one_page_plan(sheets: SheetContext, page: Document[Session]) -> SheetData:
    """What to get ready, what to say and ask, and what to look for; the template leaves out least what matters most."""
    session, book = page.fields, sheets.collection.books[page.fields.book].fields
    run = sheets.collection.sessions_of(session.book)
    reads = "; then ".join(str(reading.pages) for reading in session.reads)
    data = {
        "heading": session.title,
        "kicker": plain(
            f"{book.title} · session {session.number} of {len(run)} · {year_name(session.year)} · "
            f"{session.minutes} minutes · read {reads}"
        ),
        "summary": runs(session.summary),
        "steps": [{"name": runs(step.name), "minutes": step.minutes} for step in session.steps],
        "teaches": [_teaches(one) for one in shown(session.objectives, sheets.collection.reference)],
        "ready": _ready(sheets, session),
        "care": [
            {"name": sheets.collection.reference.cautions[note.risk].name, "note": runs(note.note)}
            for note in session.cautions
        ],
        "words": {"new": list(session.words.new), "again": list(session.words.again), "signs": list(session.symbols.new)},
        "stops": [
            {"page": stop.page, "ask": runs(stop.ask), "listen": runs(stop.listen_for or "")}
            for reading in session.reads
            for stop in reading.stops
        ],
        "task": [runs(session.task.objects), runs(session.task.pictures), runs(session.task.symbols)],
        "stems": [runs(stem) for stem in session.stem_sentences],
        "hear": [{"says": runs(one.says), "try": runs(one.try_this)} for one in session.misconceptions],
        "easier": [runs(line) for line in session.easier],
        "harder": [runs(line) for line in session.harder],
        "look": [runs(line) for line in session.look_for],
        "exit": {"ask": runs(session.exit_question.ask), "answer": runs(session.exit_question.answer)},
    }  # fmt: skip
    return SheetData(
        "plan",
        f"Plan: {session.title}",
        "The whole session on one page.",
        (Part("plan", {**data, "about": _SIZE_BY_LETTERS / math.sqrt(letters_in(data))}),),
        for_adult(),
        {},
    )


def _teaches(one: ShownObjective) -> str:
    only = f" (here: {', '.join(part.name for part in one.only)})" if one.only else ""
    return f"{one.objective.code}: {one.objective.says}{only}"


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
