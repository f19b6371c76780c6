"""The question to end on, as slips to cut out, one for each child."""

from __future__ import annotations

import re

from ...model.document import Document
from ...model.session import Session
from .paper import PaperUse
from .sheet import Part, SheetData
from .sheet_context import SheetContext, SheetPictures
from .words import runs

ON_A_PAGE = 4
WIDE_MM, HIGH_MM = 180, 65
_DRAW = re.compile(r"\bdraw\b", re.IGNORECASE)
"""In what is asked: a child who draws wants no lines."""


def exit_slips(sheets: SheetContext, page: Document[Session]) -> SheetData | None:
    """Four slips to a page; none for a year that writes nothing, which answers aloud."""
    session, pictures = page.fields, SheetPictures(sheets.drawings)
    if not sheets.collection.reference.years[session.year].writes:
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
        "draws": bool(_DRAW.search(session.exit_question.ask)),
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
