"""The compact data the finder reads: a column a property, so that like stands beside like and packs small."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import zip_longest
from posixpath import dirname
from typing import Any

from ..model.address import LISTS, html_of
from ..model.asked import Meaning
from ..model.collection import Collection
from ..model.fields import YEARS, year_name
from ..model.material import PRINTED
from ..model.reference import Reference
from ..render.quotes import curl
from ..render.site import Site
from .ideas import Idea, ideas, kinds_found
from .page_kinds.kind import NotListed
from .page_kinds.table import Row

NOTHING_TO_PRINT, ONLY_KITCHEN = 1, 2

Columns = dict[str, Any]


def finder_columns(site: Site) -> Columns:
    """The columns, ready for JSON. Their form is the finder's own affair and may change; `open_data` is for others.

    Names stand once, in lists. ``kinds`` are the kinds of page, ``[letter, name, words, verb, card, before the title of
    its book, 1 if a plan takes it]`` each. ``rows`` holds a column for each property, an entry for each idea in the
    order of ``ideas``: one letter or digit each for ``kind``, ``year`` (a dash for none) and ``things`` (1 nothing to
    print, 2 only kitchen things, added; a dash for what is nothing to do), two hexadecimal digits for ``also`` (a bit
    for each year it bends to), and text between newlines or commas for the rest. ``book`` counts the ideas of each
    book, the book among them, and last those of no book. A page lists only the themes its book does not have.
    """
    reference, found = site.collection.reference, list(ideas(site.collection))
    books = site.collection.books
    strands, concepts = list(reference.strands), list(reference.concepts)
    return {
        "strands": [[strand.id, strand.name] for strand in reference.strands.values()],
        "concepts": [
            [idea.id, idea.name, strands.index(idea.strand), concepts.index(idea.under) if idea.under else -1]
            for idea in reference.concepts.values()
        ],
        "themes": [[theme.id, theme.name] for theme in reference.themes.values()],
        "asked": asked_words(reference),
        "kinds": [
            [part.letter, kind.name, _capital(kind.names.many), part.verb, part.card, part.of_book, _planned(kind)]
            for kind, part in kinds_found()
        ],
        "years": [year_name(year) for year in YEARS],
        "books": {
            "id": "\n".join(books),
            "cover": "\n".join(page.fields.cover_file for page in books.values()),
            "folder": {
                n: folder
                for n, (book, page) in enumerate(books.items())
                if (folder := dirname(page.source)) != f"books/{book}"
            },
        },
        "rows": _rows(found, site.collection),
    }


def addresses(columns: Mapping[str, Any]) -> list[str]:
    """Where each row of the columns leads, from the site's root: what the finder works out too."""
    books, rows = columns["books"], columns["rows"]
    files, found = rows["file"].split("\n"), list[str]()
    for n, (book, count) in enumerate(zip_longest(books["id"].split("\n") if books["id"] else [], rows["book"])):
        folder = books["folder"].get(n, books["folder"].get(str(n), f"books/{book}"))
        for file in files[len(found) : len(found) + count]:
            found.append(f"{file[1:]}.html" if file.startswith("/") else f"{folder}/{file}.html")
    return found


def asked_words(reference: Reference) -> Columns:
    """What readers ask for in their own words: ``[ways of asking, values of facets and pages, concepts nearest to them]`` each."""
    meanings = [
        [
            "|".join(words.lower() for words in meaning.says),
            " ".join(
                [
                    *(f"concept:{name}" for name in _concepts_of(meaning, reference)),
                    *(f"theme:{name}" for name in meaning.themes),
                    *(f"year:{year}" for year in meaning.years),
                    *(f"kind:{name}" for name in meaning.kinds),
                    *(f"page:{name}" for name in meaning.pages),
                ]
            ),
            *([" ".join(f"concept:{name}" for name in meaning.nearest)] if meaning.nearest else []),
        ]
        for meaning in reference.asked.asked
    ]
    asked = reference.asked
    pages = {name: html_of(LISTS[name]) for meaning in asked.asked for name in meaning.pages}
    return {
        "over": " ".join(asked.passed_over),
        "minutes": "|".join(asked.minutes),
        "meanings": meanings,
        "pages": pages,
    }


def _concepts_of(meaning: Meaning, reference: Reference) -> Iterator[str]:
    yield from meaning.concepts
    yield from (reference.words[word].concept for word in meaning.words)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]


def _planned(kind: Row) -> int:
    return int(not isinstance(kind.plan, NotListed))


def _rows(found: Sequence[Idea], collection: Collection) -> Columns:
    reference = collection.reference
    number = {name: n for names in (reference.concepts, reference.themes) for n, name in enumerate(names)}
    folders = {book: dirname(page.source) for book, page in collection.books.items()}
    themes = {book: page.fields.themes for book, page in collection.books.items()}
    counts: dict[str, int] = {}
    for idea in found:
        counts[idea.book] = counts.get(idea.book, 0) + 1
    return {
        "book": list(counts.values()),
        "kind": "".join(idea.letter for idea in found),
        "file": "\n".join(_file(idea, folders.get(idea.book, "")) for idea in found),
        "title": "\n".join(curl(" ".join(idea.fields.title.split())) for idea in found),
        "year": "".join("-" if idea.fields.best_year is None else str(idea.fields.best_year) for idea in found),
        "also": "".join(f"{sum(1 << year for year in idea.fields.other_years):02x}" for idea in found),
        "minutes": ",".join(str(idea.planned.minutes) if idea.planned else "" for idea in found),
        "concepts": ",".join(" ".join(str(number[name]) for name in idea.page.concepts) for idea in found),
        "themes": ",".join(
            " ".join(
                str(number[name])
                for name in idea.themes
                if idea.page is collection.books.get(idea.book) or name not in themes.get(idea.book, ())
            )
            for idea in found
        ),
        "things": "".join(_things(idea, reference) for idea in found),
    }


def _file(idea: Idea, folder: str) -> str:
    where, _, name = idea.address.removesuffix(".html").rpartition("/")
    return name if where == folder else f"/{where}/{name}"


def _things(idea: Idea, reference: Reference) -> str:
    things = idea.things
    if things is None:
        return "-"
    kitchen = all(reference.materials[thing].household for thing in things)
    return str((0 if PRINTED & {*things} else NOTHING_TO_PRINT) + (ONLY_KITCHEN if kitchen else 0))
