"""Plain pages: words only."""

from __future__ import annotations

from pathlib import Path

from ....model.document import Document
from ....model.page import Page
from ....render.site import Site
from ....render.written_pages import draw_plain
from ...linked_data.node import At, Node, dated, licensed, work
from ..kind import NOT_LISTED, InLinkedData, Names, Packed, PageKind


def _describe(page: Document[Page], site: Site, at: At) -> Node:
    fields = page.fields
    node = work("WebPage", page.source, fields.title, fields.summary, at)
    return {**node, **licensed(site, page.source, at), **dated(fields.published, fields.updated)}


PAGE = PageKind(
    schema=Page,
    names=Names("page", "pages"),
    draw=draw_plain,
    finder=NOT_LISTED,
    plan=NOT_LISTED,
    feed=NOT_LISTED,
    catalogue=NOT_LISTED,
    idea_pages=NOT_LISTED,
    front=NOT_LISTED,
    linked_data=InLinkedData(type="WebPage", lists=(), describe=_describe),
    pack=Packed.ALWAYS,
    example=Path(__file__).parent / "example.md",
    starter=NOT_LISTED,
)
