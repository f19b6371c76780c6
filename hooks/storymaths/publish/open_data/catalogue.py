"""The public catalogue: every book, session, home activity and series, in a documented form others may build on.

``catalogue.schema.json`` beside this file says what each part means. A part added makes the second number of ``FORMAT``
one more; a part that goes, or means something else, makes the first one more.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from ...model.address import LISTS, concept_page, framework_page, theme_page
from ...model.book import Book
from ...model.document import Document
from ...model.fields import Codes, year_name
from ...model.home import Home
from ...model.series import Series
from ...model.session import Session
from ...render.inline import plain
from ...render.site import Site
from . import curriculum
from .latest import latest

ADDRESS, SCHEMA_ADDRESS = "open-data/catalogue.json", "open-data/catalogue.schema.json"
FORMAT = "1.0"
Record = dict[str, Any]


def catalogue(site: Site) -> Record:
    """The whole collection. Addresses are full where the site's own is known, else they lead from the file."""
    imprint, reference = site.collection.reference.imprint, site.collection.reference
    return {
        "$schema": SCHEMA_ADDRESS.rpartition("/")[2],
        "format": FORMAT,
        "name": site.settings.name or imprint.made_by,
        "url": _url(site, LISTS["catalogue"]),
        "made_by": imprint.made_by,
        "licence": {"name": imprint.licence.name, "url": imprint.licence.url},
        **({"updated": day.isoformat()} if (day := latest(site.collection)) else {}),
        "strands": [{"id": strand.id, "name": strand.name} for strand in reference.strands.values()],
        "concepts": [
            {
                "id": idea.id,
                "name": idea.name,
                "strand": idea.strand,
                **({"under": idea.under} if idea.under else {}),
                "url": _url(site, concept_page(idea.id)),
            }
            for idea in reference.concepts.values()
        ],
        "themes": [
            {"id": theme.id, "name": theme.name, "url": _url(site, theme_page(theme.id))}
            for theme in reference.themes.values()
        ],
        "frameworks": [
            {
                "id": framework.id,
                "name": framework.name,
                "status": framework.status,
                "url": _url(site, framework_page(framework.id)),
                **({"case": _url(site, curriculum.address(framework.id))} if site.settings.url else {}),
            }
            for framework in reference.frameworks.values()
            if framework.objectives
        ],
        "books": [_book(name, page, site) for name, page in site.collection.books.items()],
        "series": [_series(page, site) for page in site.collection.of_kind(Series)],
    }


def _url(site: Site, source: str) -> str:
    return site.address(source, ADDRESS)


def _years(years: Sequence[int]) -> list[str]:
    return [year_name(year) for year in years]


def _codes(codes: Codes) -> dict[str, list[str]]:
    return {framework: list(listed) for framework, listed in codes.items() if listed}


def _dates(fields: Book | Session | Home) -> Record:
    """When it was published and what has changed since; nothing where its page does not say."""
    if fields.published is None:
        return {}
    changes = [{"date": change.date.isoformat(), "what": change.what} for change in fields.changed]
    return {"published": fields.published.isoformat()} | ({"changed": changes} if changes else {})


def _book(name: str, page: Document[Book], site: Site) -> Record:
    book = page.fields
    maybe = {"publisher": book.publisher, "isbn": book.isbn, "rights_note": book.rights_note}
    return {
        "id": name,
        "title": plain(book.title),
        "url": _url(site, page.source),
        "summary": plain(book.summary),
        "story_by": book.story_by,
        "pictures_by": book.pictures_by,
        "rights": book.rights,
        **{key: plain(value) for key, value in maybe.items() if value},
        "pages": book.pages,
        "year": year_name(book.years.best),
        "also": _years(book.years.also),
        "themes": list(book.themes),
        **_dates(book),
        "sessions": [_session(session, site) for session in site.collection.sessions_of(name)],
        "home": [_home(home, site) for home in site.collection.homes_of(name)],
    }


def _lesson(page: Document[Session] | Document[Home], also: Sequence[int], site: Site) -> Record:
    fields = page.fields
    return {
        "number": fields.number,
        "title": plain(fields.title),
        "url": _url(site, page.source),
        "summary": plain(fields.summary),
        "year": year_name(fields.year),
        "also": _years(also),
        "minutes": fields.minutes,
        "concepts": list(fields.concepts),
        "themes": list(fields.themes),
        **_dates(fields),
    }


def _session(page: Document[Session], site: Site) -> Record:
    session, materials = page.fields, site.collection.reference.materials
    return {
        **_lesson(page, sorted(session.bends), site),
        "objectives": _codes(session.objectives),
        "revisits": _codes(session.revisits),
        "bends": {
            year_name(year): codes
            for year in sorted(session.bends)
            if (codes := _codes(session.bends[year].objectives))
        },
        "needs": list(session.needs),
        "new_words": list(session.words.new),
        "materials": [
            {"id": needed.item, "name": materials[needed.item].name, "count": needed.count, "per": needed.per}
            for needed in session.materials
        ],
    }


def _home(page: Document[Home], site: Site) -> Record:
    materials = site.collection.reference.materials
    return {
        **_lesson(page, page.fields.also, site),
        "things": [
            {"id": thing.item, "name": materials[thing.item].name, "count": thing.count} for thing in page.fields.things
        ],
    }


def _series(page: Document[Series], site: Site) -> Record:
    series = page.fields
    return {
        "title": plain(series.title),
        "url": _url(site, page.source),
        "summary": plain(series.summary),
        "for_whom": plain(series.for_whom),
        "year": year_name(series.year),
        "books": [book for book in series.books if book in site.collection.books],
        "licence": plain(series.licence),
        "version": series.version,
        "changes": [
            {"version": change.version, "date": change.date.isoformat(), "what": [plain(line) for line in change.what]}
            for change in sorted(series.changes, key=lambda change: change.date)
        ],
    }
