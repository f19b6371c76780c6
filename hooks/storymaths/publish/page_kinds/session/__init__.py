"""Sessions: one lesson each, taught from some pages of a book."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from markupsafe import Markup

from ....covers.taught import coverage_of
from ....model.document import Document
from ....model.fields import Claims, year_name
from ....model.session import Session
from ....render.objectives import shown
from ....render.session_page import draw_session
from ....render.site import Site
from ...linked_data.node import At, Node
from ...linked_data.teaching import RESOURCE, for_years, teaches
from .. import lessons
from ..cards import session_cards
from ..kind import (
    NOT_LISTED,
    InCatalogue,
    InFinder,
    InLinkedData,
    InPlan,
    Names,
    Need,
    OnIdeaPages,
    Packed,
    PageKind,
    PrintedRow,
    Record,
    Section,
    Starter,
)

_FOLDER = Path(__file__).parent


def _searched(session: Session) -> list[str]:
    words = (*session.words.new, *session.words.again, *session.symbols.new)
    stops = [stop.ask for reading in session.reads for stop in reading.stops]
    return [*([", ".join(words)] if words else []), *stops, session.exit_question.ask]


def _record(site: Site, page: Document[Session]) -> Record:
    session, materials = page.fields, site.collection.reference.materials
    bends = {year: _codes(session.bends[year].objectives) for year in sorted(session.bends)}
    return {
        "number": session.number,
        **lessons.record(site, page, session.other_years),
        "objectives": _codes(session.objectives),
        "parts": _parts(site, page),
        "revisits": _codes(session.revisits),
        "bends": {year_name(year): codes for year, codes in bends.items() if codes},
        "needs": list(session.needs),
        "new_words": list(session.words.new),
        "materials": [
            {"id": needed.item, "name": materials[needed.item].name, "count": needed.count, "per": needed.per}
            for needed in session.materials
        ],
    }


def _codes(claims: Claims) -> dict[str, list[str]]:
    return {
        framework: list(dict.fromkeys(claim.code for claim in listed)) for framework, listed in claims.items() if listed
    }


def _parts(site: Site, page: Document[Session]) -> dict[str, dict[str, list[str]]]:
    """Of objectives that have parts, those it teaches."""
    found: dict[str, dict[str, list[str]]] = {}
    for (framework, code), parts in coverage_of([page], site.collection.reference).parts.items():
        found.setdefault(framework, {})[code] = list(parts)
    return found


def _printed(site: Site, here: str, page: Document[Session]) -> PrintedRow:
    session = page.fields
    objectives = shown(session.objectives, site.collection.reference)
    codes = site.fill("codes.html", here, objectives=objectives)
    return PrintedRow(f"{session.number}. {session.title}", session.year, session.minutes, codes)


def _on_concept(site: Site, here: str, concept: str, pages: Sequence[Document[Session]]) -> Markup:
    return session_cards(site, here, concept, pages) or Markup("<p>No session in the collection teaches this yet.</p>")


def _on_year(site: Site, here: str, year: int, pages: Sequence[Document[Session]]) -> Markup:
    meant = [page for page in pages if page.fields.year == year]
    bending = [page for page in pages if page.fields.year != year]
    cards = session_cards(site, here, year, meant) or Markup("<p>No session is planned for this year yet.</p>")
    return cards + site.fill("bending.html", here, pages=bending, n=year)


def _describe(page: Document[Session], site: Site, at: At) -> Node:
    """A lesson plan for its own year; its bends are told on the page, and not claimed here."""
    return {
        **lessons.describe(page, site, at),
        "learningResourceType": "lesson plan",
        **for_years(page.fields.year, (), site, at),
        "teaches": teaches([page], site, at),
        "about": lessons.ideas(page, site, at),
    }


SESSION = PageKind(
    schema=Session,
    names=Names("session", "sessions"),
    draw=draw_session,
    finder=InFinder(
        letter="s",
        verb="teaches",
        card="step-card",
        of_book="from",
        themes=lambda session: session.themes,
        searched=_searched,
    ),
    plan=InPlan(
        minutes=lambda session: session.minutes,
        group_size=lambda session: session.group_size,
        needs=lambda session: [Need(needed.item, needed.count, needed.per) for needed in session.materials],
    ),
    feed=lessons.in_feed,
    catalogue=InCatalogue(
        list="sessions",
        says="Its sessions, in the order they are taught.",
        definition=_FOLDER / "catalogue.json",
        record=_record,
        printed=_printed,
        counted="sessions",
    ),
    idea_pages=OnIdeaPages(
        teaches=True,
        concept=Section(anchor="sessions", heading="Sessions", entries=_on_concept),
        theme=Section(anchor="sessions", heading="Sessions", entries=session_cards),
        year=Section(anchor="sessions", heading="Sessions", entries=_on_year),
    ),
    front=NOT_LISTED,
    linked_data=InLinkedData(type=RESOURCE, lists=("catalogue",), describe=_describe),
    pack=Packed.WITH_ITS_BOOK,
    example=_FOLDER / "example.md",
    starter=Starter(text=_FOLDER / "starter.md", path="books/$book/session-$number.md", for_book=True),
)
