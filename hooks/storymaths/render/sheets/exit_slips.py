"""The question to end on, as slips to cut out, one for each child."""

from __future__ import annotations

import re
from collections.abc import Sequence

from ...model.document import Document
from ...model.prose_words import Answering
from ...model.session import Session
from .paper import PaperUse
from .sheet import Part, SheetData
from .sheet_context import SheetContext, SheetPictures
from .words import runs

ON_A_PAGE = 4
WIDE_MM, HIGH_MM = 180, 65


def how_answered(ask: str, words: Answering) -> tuple[bool, bool]:
    """Whether a question is drawn an answer to, and whether lines are written on: not where it is drawn, done or said."""
    draws = bool(_any_of(words.drawn).search(ask))
    done = re.search(rf"(?:^|[.!?:])\W*(?:{'|'.join(words.done)})\b", ask, re.IGNORECASE)
    return draws, not draws and (not done or bool(_any_of(words.written).search(ask)))


def _any_of(words: Sequence[str]) -> re.Pattern[str]:
    return re.compile(rf"\b(?:{'|'.join(words)})\b", re.IGNORECASE)


def exit_slips(sheets: SheetContext, page: Document[Session]) -> SheetData | None:
    """Four slips to a page; none where children answer aloud or with what they do, in a year that writes nothing too."""
    session, pictures, reference = page.fields, SheetPictures(sheets.drawings), sheets.collection.reference
    if not reference.years[session.year].writes:
        return None
    draws, writes = how_answered(session.exit_question.ask, reference.prose.answering)
    if not (draws or writes):
        return None
    shown = session.exit_question.picture
    data = {
        "picture": pictures.add(page.beside(shown.picture)) if shown else "",
        "alt": shown.alt if shown else "",
        "heading": session.title,
        "ask": runs(session.exit_question.ask),
        "card": [WIDE_MM, HIGH_MM],
        "copies": ON_A_PAGE,
        "line": 12 if session.year <= 1 else 9,
        "draws": draws,
        "writes": writes,
    }
    use = PaperUse(sheets.children, sheets.children, "slip", "one to a child", ON_A_PAGE)
    return SheetData(
        "exit-question",
        f"A question to end on: {session.title}",
        f"The exit question on slips for an adult to cut out, {WIDE_MM} × {HIGH_MM} mm each.",
        (Part("exit_slips", data),),
        use,
        pictures.kept,
    )
