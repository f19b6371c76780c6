"""The class screen of a session, and the one on which the gallery's examples can be tried."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ...activities.worked import AnyWorked
from ...model.address import SCREEN_TO_TRY, link, screen_page
from ...model.document import Document
from ...model.session import Session
from ...model.story import Story
from ...parse.body import words_of
from ..book_pages import spreads_of
from ..inline import asked
from ..site import Rendered, Site
from .another import OtherBoard
from .begin import begin_slides
from .board import Board
from .slides import Slide, Spread, example_slides, slides_of


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
    own = slides_of(page, spreads or {}, site.collection.reference.words, site.activities_of(page))
    return [*begin_slides(site, page), *own]


def draw_screen_to_try(site: Site, examples: Sequence[AnyWorked]) -> Rendered:
    """A class screen with an example of each kind that is played on one."""
    slides = [slide for done in examples for slide in example_slides(done) if slide.part is not None and slide.part.own]
    html = _draw(site, SCREEN_TO_TRY, slides, page=None, session=None, book=None)
    summary = "An example of each kind of activity that a class does together on its screen."
    return Rendered(SCREEN_TO_TRY, "The class screen: try it", summary, html, "screen", searched=False)


def _draw(site: Site, source: str, slides: Sequence[Slide], **values: Any) -> str:
    boards = [_with_links(slide.part.board, source) if slide.part and slide.part.board else None for slide in slides]
    years = sorted({year for slide in slides if slide.part for year in slide.part.years})
    values["others"] = [[_another(one, source) for one in slide.part.others] if slide.part else [] for slide in slides]
    values["asked"] = lambda words: asked(words, source)
    return site.draw("screen.html", source, slides=list(zip(slides, boards, strict=True)), years=years, **values)


def _another(one: OtherBoard, source: str) -> dict[str, Any]:
    return {
        "ask": words_of(one.ask),
        "boards": [_with_links(one.board, source)],
        "answers": [words_of(says) for says in one.answers],
    }


def _with_links(board: Board, source: str) -> dict[str, Any]:
    data = board.as_data()
    for piece in data["pieces"]:
        piece["picture"] = link(piece["picture"], source) if piece["picture"] else ""
    return data


def _spreads(story: Document[Story] | None) -> dict[int, Spread]:
    if story is None:
        return {}
    return {n: Spread(n, picture, words) for n, (_, _, picture, words) in enumerate(spreads_of(story), 1)}
