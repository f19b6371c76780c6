"""Home activities: one thing to do with a book, for one grown-up and one child."""

from __future__ import annotations

from pathlib import Path

from ....model.document import Document
from ....model.home import Home
from ....render.site import Site
from ....render.written_pages import draw_home
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
    PrintedRow,
    Record,
    Section,
    Starter,
)

_FOLDER = Path(__file__).parent


def _searched(home: Home) -> list[str]:
    words = [", ".join(home.words)] if home.words else []
    return [*words, home.say_first, *(question.ask for question in home.ask)]


def _record(site: Site, page: Document[Home]) -> Record:
    home, materials = page.fields, site.collection.reference.materials
    return {
        "number": home.number,
        **lessons.record(site, page, home.other_years),
        "things": [
            {"id": thing.item, "name": materials[thing.item].name, "count": thing.count} for thing in home.things
        ],
    }


def _printed(site: Site, here: str, page: Document[Home]) -> PrintedRow:
    home = page.fields
    concepts = site.fill("concept_links.html", here, concepts=home.concepts)
    return PrintedRow(f"At home: {home.title}", home.year, home.minutes, concepts)


def _describe(page: Document[Home], site: Site, at: At) -> Node:
    """It names ideas and not objectives, so what it teaches are ideas."""
    home = page.fields
    return {
        **lessons.describe(page, site, at),
        "learningResourceType": "home activity",
        **for_years(home.year, home.other_years, site, at),
        "teaches": lessons.ideas(page, site, at),
    }


HOME = PageKind(
    schema=Home,
    names=Names("home activity", "home activities"),
    draw=draw_home,
    finder=InFinder(
        letter="h",
        verb="practises",
        card="home-card",
        of_book="at home with",
        themes=lambda home: home.themes,
        searched=_searched,
    ),
    plan=InPlan(
        minutes=lambda home: home.minutes,
        group_size=lambda home: 0,
        needs=lambda home: [Need(thing.item, thing.count, "class") for thing in home.things],
    ),
    feed=lessons.in_feed,
    catalogue=InCatalogue(
        list="home",
        says="Its home activities.",
        definition=_FOLDER / "catalogue.json",
        record=_record,
        printed=_printed,
        counted="to do at home",
    ),
    idea_pages=OnIdeaPages(
        teaches=True,
        concept=Section(anchor="at-home", heading="At home", entries=home_cards),
        theme=Section(anchor="at-home", heading="At home", entries=home_cards),
        year=Section(anchor="at-home", heading="At home", entries=home_cards),
    ),
    front=NOT_LISTED,
    linked_data=InLinkedData(type=RESOURCE, lists=("at-home", "catalogue"), describe=_describe),
    pack=Packed.WITH_ITS_BOOK,
    example=_FOLDER / "example.md",
    starter=Starter(text=_FOLDER / "starter.md", path="books/$book/home-$number.md", for_book=True),
)
