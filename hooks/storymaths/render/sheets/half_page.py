"""A home activity on half a page, two to a sheet, to send home."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import Any

from ...model.document import Document
from ...model.home import Home
from .brief import in_brief
from .paper import PaperUse
from .sheet import Part, SheetData
from .sheet_context import SheetContext
from .words import letters_in, parts_of, plain, runs

ON_A_PAGE = 2
_SIZE_BY_LETTERS = 395
"""As for a plan: of 6 half pages, 396 to 405."""


def half_page(sheets: SheetContext, page: Document[Home]) -> SheetData:
    """Everything a grown-up needs at the table, in plain words."""
    home = page.fields
    book = sheets.collection.books[home.book].fields
    data = {
        "heading": home.title,
        "kicker": plain(f"At home with {book.title} · {home.minutes} minutes · {home.pages}"),
        "say_first": runs(home.say_first),
        "things": list(_things(sheets, home)),
        "told": parts_of(sheets.without_activities(page, page.content.blocks)),
        "ask": [{"ask": runs(one.ask), "hear": runs(one.hear)} for one in home.ask],
        "if_hard": runs(home.if_hard),
        "if_easy": runs(home.if_easy),
        "stop_when": runs(home.stop_when),
        "what_for": runs(home.what_it_is_for),
        "care": [runs(note.note) for note in home.cautions],
        "puzzles": [in_brief(activity) for activity in sheets.activities(page)],
        "copies": ON_A_PAGE,
    }
    return SheetData(
        "half-page",
        f"At home: {home.title}",
        "The activity on half a page, to cut in two and send home.",
        (Part("half_page", {**data, "about": _SIZE_BY_LETTERS / math.sqrt(letters_in(data))}),),
        PaperUse(sheets.children, sheets.children, "half page", "one to a family", ON_A_PAGE),
        {},
    )


def _things(sheets: SheetContext, home: Home) -> Iterator[dict[str, Any]]:
    for thing in home.things:
        material = sheets.collection.reference.materials.get(thing.item)
        if material:
            name = material.name if thing.count == 1 else material.plural
            yield {"thing": f"{thing.count} {name}", "note": runs(thing.note or "")}
