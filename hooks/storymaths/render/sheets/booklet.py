"""The story as a booklet: A5 pages laid on A4 so that, printed on both sides and folded once, they follow each other."""

from __future__ import annotations

from collections.abc import Sequence
from posixpath import dirname, normpath
from typing import Any

from ...model.book import Book
from ...model.document import Document
from ...model.story import Story
from .paper import PaperUse
from .sheet import Part, SheetData
from .sheet_context import SheetContext, SheetPictures
from .words import Block, parts_of, runs

MAY_BE_PRINTED = frozenset({"own", "public-domain"})
_HOW = "Print on both sides, turned on the short edge; then fold once and staple."
Leaf = dict[str, Any]


def story_booklet(sheets: SheetContext, book: Document[Book], story: Document[Story]) -> SheetData | None:
    """The booklet; none where the rights do not allow it."""
    if book.fields.rights not in MAY_BE_PRINTED:
        return None
    pictures = SheetPictures(sheets.drawings)
    leaves = [_cover(book, pictures), *_pages(story, pictures)]
    leaves += [{} for _ in range(-(len(leaves) + 1) % 4)]
    leaves.append({"back": runs(book.fields.rights_note or ""), "title": book.fields.title})
    return SheetData(
        "story-booklet",
        f"{book.fields.title}: the story as a booklet",
        f"The whole story in {len(leaves)} small pages, two to a side, to print and fold.",
        (Part("booklet", {"heading": book.fields.title, "sides": imposed(leaves)}),),
        PaperUse(each="for one booklet", sides=2, note=_HOW),
        pictures.kept,
    )


def imposed(leaves: Sequence[Leaf]) -> list[list[Leaf]]:
    """The two pages on each side of each sheet, outermost sheet first; ``leaves`` are four to a sheet."""
    count = len(leaves)
    sides = []
    for sheet in range(count // 4):
        first, last = 2 * sheet, count - 1 - 2 * sheet
        sides += [[leaves[last], leaves[first]], [leaves[first + 1], leaves[last - 1]]]
    return sides


def _cover(book: Document[Book], pictures: SheetPictures) -> Leaf:
    fields = book.fields
    return {
        "cover": fields.title,
        "by": [f"Story: {fields.story_by}", f"Pictures: {fields.pictures_by}"],
        "picture": pictures.add(book.beside(fields.cover_file)),
        "alt": fields.cover.alt if fields.cover else "",
    }


def _pages(story: Document[Story], pictures: SheetPictures) -> list[Leaf]:
    """The pages of the story: a heading ``Page n`` begins each."""
    folder = dirname(story.source)
    leaves: list[Leaf] = []
    for block in parts_of(story.content.blocks):
        if "h" in block:
            leaves.append({"number": len(leaves) + 1, "words": [], "picture": "", "alt": ""})
        elif leaves and "picture" in block:
            picture = pictures.add(normpath(f"{folder}/{block['picture']}"))
            leaves[-1] |= {"picture": picture, "alt": block["alt"]}
        elif leaves:
            leaves[-1]["words"].append(_paragraph(block))
    return leaves


def _paragraph(block: Block) -> Block:
    return block if "p" in block else {"p": [run for line in block.get("list", []) for run in line]}
