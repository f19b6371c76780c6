"""A home activity on both sides of half a page, two to a sheet, to send home."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from ...model.address import resolve
from ...model.body import Body
from ...model.book import Book
from ...model.document import Document
from ...model.home import Home
from .booklet import MAY_BE_PRINTED
from .brief import in_brief
from .paper import PaperUse
from .recording_tasks import shown_task
from .sheet import Part, SheetData
from .sheet_context import SheetContext, SheetPictures
from .words import parts_of, plain, runs

ON_A_PAGE = 2


def half_page(sheets: SheetContext, page: Document[Home]) -> SheetData:
    """Everything a grown-up needs at the table, in plain words."""
    home = page.fields
    book = sheets.collection.books[home.book]
    pictures = SheetPictures(sheets.drawings)
    # A child who does not write yet draws, or says it.
    writes = sheets.collection.reference.years[home.year].writes
    no_lines: dict[str, Any] = {} if writes else {"lines": []}
    data = {
        "heading": home.title,
        "kicker": plain(f"At home with {book.fields.title} · {home.minutes} minutes · {home.pages}"),
        "say_first": runs(home.say_first),
        "things": list(_things(sheets, home)),
        "told": parts_of(sheets.without_activities(page, page.content.blocks)),
        "ask": [{"ask": runs(one.ask), "hear": runs(one.hear)} for one in home.ask],
        "if_hard": runs(home.if_hard),
        "if_easy": runs(home.if_easy),
        "stop_when": runs(home.stop_when),
        "what_for": runs(home.what_it_is_for),
        "care": [runs(note.note) for note in home.cautions],
        "puzzles": [
            in_brief(one) | {"shown": shown_task(one.title, one.own, pictures) | no_lines}
            for one in sheets.activities(page)
        ],
        "writes": writes,
        "copies": ON_A_PAGE,
        **_picture(sheets, home, book, pictures),
    }
    return SheetData(
        "half-page",
        f"At home: {home.title}",
        "The activity on half a page, to cut in two and send home: what to do on one side, and help and answers on the other.",
        (Part("half_page", data),),
        PaperUse(sheets.children, sheets.children, "half page", "one to a family", ON_A_PAGE, sides=2),
        pictures.kept,
    )


def _picture(sheets: SheetContext, home: Home, book: Document[Book], pictures: SheetPictures) -> dict[str, str]:
    """That of the first page it goes with, where the story may be printed; that of the cover where there is none."""
    story = sheets.collection.stories.get(home.book)
    if story and book.fields.rights in MAY_BE_PRINTED:
        for section in story.content.sections[home.pages.first - 1 : home.pages.first]:
            for scene in Body(section.blocks).pictures[:1]:
                return {"picture": pictures.add(resolve(scene.target, story.source)), "alt": scene.text}
    cover = book.fields.cover
    return {"picture": pictures.add(book.beside(book.fields.cover_file)), "alt": cover.alt if cover else ""}


def _things(sheets: SheetContext, home: Home) -> Iterator[dict[str, Any]]:
    for thing in home.things:
        material = sheets.collection.reference.materials.get(thing.item)
        if material:
            yield {"thing": material.counted(thing.count), "note": runs(thing.note or "")}
