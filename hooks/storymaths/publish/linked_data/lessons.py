"""Sessions and home activities as learning resources: what they teach, to whom, in how long."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ...model.document import Document
from ...model.home import Home
from ...model.session import Session
from ...render.inline import plain
from ...render.site import Site
from .node import At, Node, ages, dated, licensed, minutes, work
from .terms import concept_term, objective_term, year_term

RESOURCE = "LearningResource"


def teaches(codes: Mapping[str, Sequence[str]], site: Site, at: At) -> list[Node]:
    """The objectives among some codes as terms, each once, in the order written."""
    reference = site.collection.reference
    return [
        objective_term(reference.frameworks[framework], objective, at)
        for framework, listed in codes.items()
        for code in dict.fromkeys(listed)
        if (objective := reference.objectives.get((framework, code))) is not None
    ]


def for_years(best: int, also: Sequence[int], site: Site, at: At) -> Node:
    """The year something is for, and the ages of that year and of those it serves as well."""
    limits = [site.collection.reference.years[year] for year in (best, *also)]
    return {"educationalLevel": year_term(best, at), "typicalAgeRange": ages(limits)}


def _lesson(page: Document[Session] | Document[Home], site: Site, at: At) -> Node:
    fields = page.fields
    book = site.collection.books[fields.book]
    record = at(book.source)
    return {
        **work(RESOURCE, page.source, fields.title, fields.summary, at),
        "position": fields.number,
        "timeRequired": minutes(fields.minutes),
        "isPartOf": {"@type": "CollectionPage", "@id": record, "name": plain(book.fields.title)},
        "isBasedOn": {"@type": "Book", "@id": f"{record}#book", "name": plain(book.fields.title)},
        **licensed(site.collection.reference.imprint),
        **dated(fields.published, fields.updated),
    }


def _ideas(fields: Session | Home, site: Site, at: At) -> list[Node]:
    return [concept_term(site.collection.reference.concepts[idea], at) for idea in fields.concepts]


def describe_session(page: Document[Session], site: Site, at: At) -> Node:
    """A session: a lesson plan for its own year; its bends are told on the page, and not claimed here."""
    return {
        **_lesson(page, site, at),
        "learningResourceType": "lesson plan",
        **for_years(page.fields.year, (), site, at),
        "teaches": teaches(page.fields.objectives, site, at),
        "about": _ideas(page.fields, site, at),
    }


def describe_home(page: Document[Home], site: Site, at: At) -> Node:
    """A home activity. It names ideas and not objectives, so what it teaches are ideas."""
    return {
        **_lesson(page, site, at),
        "learningResourceType": "home activity",
        **for_years(page.fields.year, page.fields.also, site, at),
        "teaches": _ideas(page.fields, site, at),
    }
