"""The class screen of a session, and the one on which the gallery's examples can be tried."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ...activities.work_out import WorkedOut
from ...model.address import SCREEN_TO_TRY, link, screen_page
from ...model.document import Document
from ...model.session import Session
from ...model.story import Story
from ...parse.body import words_of
from ..book_pages import spreads_of
from ..inline import asked
from ..site import Rendered, Site
from .another import OtherBoards
from .begin import begin_slides
from .board import Board
from .slides import Slide, Spread, activity_slides, slides_of


def draw_screen(site: Site, page: Document[Session]) -> Rendered:
    """The class screen of a session."""
    session, source = page.fields, screen_page(page.source)
    book = site.collection.books[session.book]
    spreads = _spreads(site.collection.stories.get(session.book))
    html = _draw(site, source, slides_on_screen(site, page, spreads), page=page, session=session, book=book)
    title = f"{session.title}: the class screen"
    return Rendered(source, title, f"For the class to look at: {session.summary}", html, "screen", searched=False)


def slides_on_screen(site: Site, page: Document[Session], spreads: Mapping[int, Spread] | None = None) -> list[Slide]:
    """The slides of a session's screen after its first; without ``spreads`` the story's pages are not drawn on them."""
    worked = [found.worked for found in site.activities_of(page)]
    own = slides_of(page.fields, spreads or {}, site.collection.reference.words, worked)
    return [*begin_slides(site, page), *own]


def draw_screen_to_try(site: Site, examples: Sequence[WorkedOut]) -> Rendered:
    """A class screen with an example of each kind that is played on one."""
    slides = [slide for worked in examples for slide in activity_slides(worked) if slide.boards]
    html = _draw(site, SCREEN_TO_TRY, slides, page=None, session=None, book=None)
    summary = "An example of each kind of activity that a class does together on its screen."
    return Rendered(SCREEN_TO_TRY, "The class screen: try it", summary, html, "screen", searched=False)


def _draw(site: Site, source: str, slides: Sequence[Slide], **values: Any) -> str:
    boards = [[_with_links(board, source) for board in slide.boards] for slide in slides]
    values["others"] = [[_another(one, source) for one in slide.others] for slide in slides]
    values["asked"] = lambda words: asked(words, source)
    return site.draw("screen.html", source, slides=list(zip(slides, boards, strict=True)), **values)


def _another(one: OtherBoards, source: str) -> dict[str, Any]:
    boards = [_with_links(board, source) for board in one.boards]
    return {"ask": words_of(one.ask), "boards": boards, "answers": [words_of(says) for says in one.answers]}


def _with_links(board: Board, source: str) -> dict[str, Any]:
    data = board.as_data()
    for piece in data["pieces"]:
        piece["picture"] = link(piece["picture"], source) if piece["picture"] else ""
    return data


def _spreads(story: Document[Story] | None) -> dict[int, Spread]:
    if story is None:
        return {}
    return {n: Spread(n, picture, words) for n, (_, _, picture, words) in enumerate(spreads_of(story), 1)}
