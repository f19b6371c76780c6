"""The compact catalogue the finder reads: one short row a page, ids by number."""

from __future__ import annotations

import json
from typing import Any

from ..model.address import html_of, source_of
from ..model.collection import book_id
from ..model.fields import year_name
from ..model.home import Home
from ..model.session import Session
from ..render.site import Site

KINDS = ("session", "home", "book")


def catalogue(site: Site) -> str:
    """The catalogue as JSON.

    ``rows`` are ``[kind, address, title, summary, book, year, also, minutes, concepts, themes]``: numbers
    lead into ``kinds``, ``books``, ``concepts`` and ``themes``, where each name is kept once.
    """
    reference, collection = site.collection.reference, site.collection
    concepts, themes = list(reference.concepts), list(reference.themes)
    books = list(collection.books)
    rows: list[list[Any]] = []
    for page in collection.documents:
        fields = page.fields
        if isinstance(fields, Session | Home):
            book = collection.books[fields.book].fields
            also = sorted(fields.bends) if isinstance(fields, Session) else list(fields.also)
            themed = sorted({*fields.themes, *book.themes}, key=themes.index)
            rows.append(
                [KINDS.index(fields.kind), html_of(source_of(page.path)), fields.title, fields.summary]
                + [books.index(fields.book), fields.year, also, fields.minutes]
                + [[concepts.index(name) for name in fields.concepts], [themes.index(name) for name in themed]]
            )
    for name, record in collection.books.items():
        about = record.fields
        seen = {concept for item in about.maths_on_pages for concept in item.concepts}
        rows.append(
            [KINDS.index("book"), html_of(source_of(record.path)), about.title, about.summary]
            + [books.index(name), about.years.best, list(about.years.also), 0]
            + [sorted(concepts.index(concept) for concept in seen), [themes.index(theme) for theme in about.themes]]
        )
    return json.dumps(
        {
            "kinds": KINDS,
            "books": [[book_id(record.path), record.fields.title] for record in collection.books.values()],
            "years": [[year, year_name(year)] for year in reference.years],
            "concepts": [[name, idea.name, idea.strand] for name, idea in reference.concepts.items()],
            "themes": [[name, theme.name] for name, theme in reference.themes.items()],
            "rows": rows,
        },
        ensure_ascii=False,
        separators=(",", ":"),
    )
