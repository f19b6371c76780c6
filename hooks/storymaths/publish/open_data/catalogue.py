"""The public catalogue: every page that its kind lists there, in a documented form others may build on.

``catalogue.schema.json`` beside this file says what each part means, and ``catalogue.json`` in the folder of a kind
of page what its records hold. A part added makes the second number of ``FORMAT`` one more; a part that goes, or means
something else, makes the first one more.
"""

from __future__ import annotations

from functools import partial

from ...model.address import LISTS, concept_page, framework_page, theme_page
from ...model.book import Book
from ...model.page_fields import OfBook, PageFields
from ...render.site import Site
from ..linked_data.node import licence_at
from ..page_kinds.kind import F, InCatalogue, NotListed, PageKind, Record
from ..page_kinds.records import CATALOGUE, url_in_catalogue
from ..page_kinds.table import PAGE_KINDS, Row
from ..page_kinds.words import listed
from . import curriculum
from .latest import latest

ADDRESS, SCHEMA_ADDRESS = CATALOGUE, "open-data/catalogue.schema.json"
FORMAT = "2.0"


def catalogue(site: Site) -> Record:
    """The whole collection. Addresses are full where the site's own is known, else they lead from the file."""
    reference = site.collection.reference
    imprint, here = reference.imprint, partial(url_in_catalogue, site)
    return {
        "$schema": SCHEMA_ADDRESS.rpartition("/")[2],
        "format": FORMAT,
        "name": site.settings.name or imprint.publisher,
        "url": url_in_catalogue(site, LISTS["catalogue"]),
        "made_by": imprint.publisher,
        "licence": {"name": imprint.licence.terms.name, "url": licence_at(site, LISTS["catalogue"], here)},
        **({"updated": day.isoformat()} if (day := latest(site.collection)) else {}),
        "strands": [{"id": strand.id, "name": strand.name} for strand in reference.strands.values()],
        "concepts": [
            {
                "id": idea.id,
                "name": idea.name,
                "strand": idea.strand,
                **({"under": idea.under} if idea.under else {}),
                "url": url_in_catalogue(site, concept_page(idea.id)),
            }
            for idea in reference.concepts.values()
        ],
        "themes": [
            {"id": theme.id, "name": theme.name, "url": url_in_catalogue(site, theme_page(theme.id))}
            for theme in reference.themes.values()
        ],
        "frameworks": [
            {
                "id": framework.id,
                "name": framework.name,
                "status": framework.status,
                "url": url_in_catalogue(site, framework_page(framework.id)),
                **({"case": url_in_catalogue(site, curriculum.address(framework.id))} if site.settings.url else {}),
            }
            for framework in reference.frameworks.values()
            if framework.objectives
        ],
        **{part.list: _records(kind, part, site) for kind, part in kinds_by_themselves()},
    }


def _records(kind: PageKind[F], part: InCatalogue[F], site: Site) -> list[Record]:
    """The records of the pages of a kind that are no part of a book's; a book's holds those that are."""
    if kind.schema is not Book:
        return [part.record(site, page) for page in site.collection.of_kind(kind.schema)]
    return [
        part.record(site, page) | {of.list: _of_book(one, of, page.book or "", site) for one, of in kinds_of_books()}
        for page in site.collection.of_kind(kind.schema)
    ]


def _of_book(kind: PageKind[F], part: InCatalogue[F], book: str, site: Site) -> list[Record]:
    return [part.record(site, page) for page in site.collection.pages_of(book, kind.schema)]


def kinds_of_books() -> list[tuple[Row, InCatalogue[PageFields]]]:
    """The kinds the catalogue lists with the book they are of."""
    return [(kind, part) for kind, part in _kinds() if issubclass(kind.schema, OfBook)]


def kinds_by_themselves() -> list[tuple[Row, InCatalogue[PageFields]]]:
    """The kinds the catalogue has lists of; books are one."""
    return [(kind, part) for kind, part in _kinds() if not issubclass(kind.schema, OfBook)]


def _kinds() -> list[tuple[Row, InCatalogue[PageFields]]]:
    return [(kind, kind.catalogue) for kind in PAGE_KINDS.values() if not isinstance(kind.catalogue, NotListed)]


def told_of() -> str:
    """The kinds of page in the catalogue, in words."""
    return listed(kind.names.one for kind, _ in _kinds())
