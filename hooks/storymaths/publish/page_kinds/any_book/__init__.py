"""Things to do with any book of a kind, for those whose book is not here."""

from __future__ import annotations

from pathlib import Path

from ....model.any_book import AnyBook
from ....model.document import Document
from ....model.fields import year_name
from ....parse.body import words_of
from ....render.any_book import draw_any_book
from ....render.site import Site
from ...linked_data.node import At, Node, dated, licensed, minutes, work
from ...linked_data.teaching import RESOURCE, for_years
from ...linked_data.terms import concept_term
from ..cards import home_cards
from ..kind import (
    NOT_LISTED,
    FeedEntry,
    InCatalogue,
    InFinder,
    InLinkedData,
    InPlan,
    Names,
    Need,
    NotListed,
    OnIdeaPages,
    Packed,
    PageKind,
    Record,
    Section,
    Starter,
)
from ..records import dates_in_catalogue, url_in_catalogue

_FOLDER = Path(__file__).parent
_HEADING = "With any book"


def _searched(idea: AnyBook) -> list[str]:
    return [idea.look_for, idea.say_first, *(found.ask for found in idea.work_out.numbers)]


def _in_feed(site: Site, page: Document[AnyBook]) -> FeedEntry | NotListed:
    fields, concepts = page.fields, site.collection.reference.concepts
    if fields.updated is None:
        return NOT_LISTED
    return FeedEntry(
        title=f"{words_of(fields.title)} (with any book)",
        summary=words_of(fields.summary),
        published=fields.published,
        updated=fields.updated,
        categories=[year_name(fields.year), *(concepts[idea].name for idea in fields.concepts)],
    )


def _record(site: Site, page: Document[AnyBook]) -> Record:
    fields = page.fields
    return {
        "title": words_of(fields.title),
        "url": url_in_catalogue(site, page.source),
        "summary": words_of(fields.summary),
        "look_for": words_of(fields.look_for),
        "year": year_name(fields.year),
        "also": [year_name(year) for year in fields.other_years],
        "minutes": fields.minutes,
        "concepts": list(fields.concepts),
        "themes": list(fields.themes),
        **dates_in_catalogue(fields),
    }


def _describe(page: Document[AnyBook], site: Site, at: At) -> Node:
    fields, concepts = page.fields, site.collection.reference.concepts
    return {
        **work(RESOURCE, page.source, fields.title, fields.summary, at),
        "learningResourceType": "home activity",
        "timeRequired": minutes(fields.minutes),
        **for_years(fields.year, fields.other_years, site, at),
        "teaches": [concept_term(concepts[idea], at) for idea in fields.concepts],
        **licensed(site, page.source, at),
        **dated(fields.published, fields.updated),
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
    feed=_in_feed,
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
