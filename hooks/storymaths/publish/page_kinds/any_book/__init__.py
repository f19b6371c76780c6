"""Things to do with any book of a kind, for those whose book is not here."""

from __future__ import annotations

from pathlib import Path

from ....model.any_book import AnyBook
from ....model.document import Document
from ....parse.body import words_of
from ....render.any_book import draw_any_book
from ....render.site import Site
from ...linked_data.node import At, Node
from ...linked_data.teaching import RESOURCE, for_years
from .. import lessons
from ..cards import home_cards
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
    Record,
    Section,
    Starter,
)

_FOLDER = Path(__file__).parent
_HEADING = "With any book"


def _searched(idea: AnyBook) -> list[str]:
    return [idea.look_for, idea.say_first, *(found.ask for found in idea.work_out.numbers)]


def _record(site: Site, page: Document[AnyBook]) -> Record:
    return {**lessons.record(site, page, page.fields.other_years), "look_for": words_of(page.fields.look_for)}


def _describe(page: Document[AnyBook], site: Site, at: At) -> Node:
    return {
        **lessons.describe(page, site, at),
        "learningResourceType": "home activity",
        **for_years(page.fields.year, page.fields.other_years, site, at),
        "teaches": lessons.ideas(page, site, at),
    }


ANY_BOOK = PageKind(
    schema=AnyBook,
    names=Names("idea for any book", "ideas for any book"),
    draw=draw_any_book,
    finder=InFinder(
        letter="a",
        verb="practises",
        card="home-card",
        of_book="",
        themes=lambda idea: idea.themes,
        searched=_searched,
    ),
    plan=InPlan(
        minutes=lambda idea: idea.minutes,
        group_size=lambda idea: 0,
        needs=lambda idea: [Need(thing.item, thing.count, "class") for thing in idea.things],
    ),
    feed=lessons.in_feed,
    catalogue=InCatalogue(
        list="any_book",
        says="Its ideas for any book.",
        definition=_FOLDER / "catalogue.json",
        record=_record,
        printed=NOT_LISTED,
        counted="for any book",
    ),
    idea_pages=OnIdeaPages(
        teaches=True,
        concept=Section(anchor="any-book", heading=_HEADING, entries=home_cards),
        theme=Section(anchor="any-book", heading=_HEADING, entries=home_cards),
        year=Section(anchor="any-book", heading=_HEADING, entries=home_cards),
    ),
    front=NOT_LISTED,
    linked_data=InLinkedData(type=RESOURCE, lists=("at-home",), describe=_describe),
    pack=Packed.ALWAYS,
    example=_FOLDER / "example.md",
    starter=Starter(text=_FOLDER / "starter.md", path="any-book/$slug.md", for_book=False),
)
