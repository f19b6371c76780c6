"""Stories: what a book tells, page by page. Lists lead to their books."""

from __future__ import annotations

from pathlib import Path

from ....model.document import Document
from ....model.story import Story
from ....parse.body import words_of
from ....render.book_pages import draw_story
from ....render.site import Site
from ...linked_data.node import At, Node, dated, licensed, work
from ..kind import NOT_LISTED, InLinkedData, Names, Packed, PageKind


def _describe(page: Document[Story], site: Site, at: At) -> Node:
    """The licence is named only where the story is the collection's own."""
    book = site.collection.books[page.fields.book]
    node = work("ShortStory", page.source, page.fields.title, page.fields.summary or "", at)
    whole = {"@type": "CollectionPage", "@id": at(book.source), "name": words_of(book.fields.title)}
    node |= {"isPartOf": whole, "isAccessibleForFree": True}
    if book.fields.rights == "own":
        node |= licensed(site, page.source, at)
    return node | dated(page.fields.published, page.fields.updated)


STORY = PageKind(
    schema=Story,
    names=Names("story", "stories"),
    draw=draw_story,
    finder=NOT_LISTED,
    plan=NOT_LISTED,
    feed=NOT_LISTED,
    catalogue=NOT_LISTED,
    idea_pages=NOT_LISTED,
    front=NOT_LISTED,
    linked_data=InLinkedData(type="ShortStory", lists=(), describe=_describe),
    pack=Packed.WITH_ITS_BOOK,
    example=Path(__file__).parent / "example.md",
    starter=NOT_LISTED,
)
