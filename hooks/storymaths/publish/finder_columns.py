"""The compact data the finder reads: a column a property, so that like stands beside like and packs small."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from ..model.book import Book
from ..model.fields import YEARS, year_name
from ..model.material import PRINTED
from ..model.reference import Reference
from ..model.session import Session
from ..render.site import Site
from .ideas import Idea, ideas, things_of

KIND_LETTERS: Mapping[str, str] = {"book": "b", "session": "s", "home": "h"}
NOTHING_TO_PRINT, ONLY_KITCHEN = 1, 2

Columns = dict[str, Any]


def finder_columns(site: Site) -> Columns:
    """The columns, ready for JSON. Their form is the finder's own affair and may change; `open_data` is for others.

    Names stand once, in lists. ``rows`` holds a column for each property, an entry for each idea in the order of
    ``ideas``: one letter or digit each for ``kind``, ``year`` and ``things`` (1 nothing to print, 2 only kitchen
    things, added; a dash for books), two hexadecimal digits for ``also`` (a bit for each year it bends to), and
    text between newlines or commas for the rest. ``book`` counts the ideas of each book, the book among them. A
    session lists only the themes its book does not have.
    """
    reference, found = site.collection.reference, list(ideas(site.collection))
    books = [idea for idea in found if isinstance(idea.fields, Book)]
    strands, concepts = list(reference.strands), list(reference.concepts)
    return {
        "strands": [[strand.id, strand.name] for strand in reference.strands.values()],
        "concepts": [
            [idea.id, idea.name, strands.index(idea.strand), concepts.index(idea.under) if idea.under else -1]
            for idea in reference.concepts.values()
        ],
        "themes": [[theme.id, theme.name] for theme in reference.themes.values()],
        "years": [year_name(year) for year in YEARS],
        "books": {
            "id": "\n".join(book.book for book in books),
            "cover": "\n".join(book.fields.cover.picture for book in books if isinstance(book.fields, Book)),
            "folder": {n: folder for n, book in enumerate(books) if (folder := _folder(book)) != f"books/{book.book}"},
        },
        "rows": _rows(found, reference),
    }


def addresses(columns: Mapping[str, Any]) -> list[str]:
    """Where each row of the columns leads, from the site's root: what the finder works out too."""
    books, rows = columns["books"], columns["rows"]
    files, found = rows["file"].split("\n"), list[str]()
    for n, (book, count) in enumerate(zip(books["id"].split("\n"), rows["book"], strict=True)):
        folder = books["folder"].get(n, books["folder"].get(str(n), f"books/{book}"))
        for file in files[len(found) : len(found) + count]:
            found.append(f"{file[1:]}.html" if file.startswith("/") else f"{folder}/{file}.html")
    return found


def _folder(idea: Idea) -> str:
    return idea.address.rpartition("/")[0]


def _rows(found: Sequence[Idea], reference: Reference) -> Columns:
    number = {name: n for names in (reference.concepts, reference.themes) for n, name in enumerate(names)}
    folders = {idea.book: _folder(idea) for idea in found if isinstance(idea.fields, Book)}
    themes = {idea.book: idea.fields.themes for idea in found if isinstance(idea.fields, Book)}
    counts: dict[str, int] = {}
    for idea in found:
        counts[idea.book] = counts.get(idea.book, 0) + 1
    return {
        "book": list(counts.values()),
        "kind": "".join(KIND_LETTERS[idea.fields.kind] for idea in found),
        "file": "\n".join(_file(idea, folders[idea.book]) for idea in found),
        "title": "\n".join(" ".join(idea.fields.title.split()) for idea in found),
        "year": "".join(str(_year(idea)) for idea in found),
        "also": "".join(f"{sum(1 << year for year in _also(idea)):02x}" for idea in found),
        "minutes": ",".join("" if isinstance(idea.fields, Book) else str(idea.fields.minutes) for idea in found),
        "concepts": ",".join(" ".join(str(number[name]) for name in _concepts(idea)) for idea in found),
        "themes": ",".join(
            " ".join(
                str(number[name])
                for name in idea.fields.themes
                if isinstance(idea.fields, Book) or name not in themes[idea.book]
            )
            for idea in found
        ),
        "things": "".join(_things(idea, reference) for idea in found),
    }


def _file(idea: Idea, folder: str) -> str:
    where, _, name = idea.address.removesuffix(".html").rpartition("/")
    return name if where == folder else f"/{where}/{name}"


def _year(idea: Idea) -> int:
    return idea.fields.years.best if isinstance(idea.fields, Book) else idea.fields.year


def _also(idea: Idea) -> Sequence[int]:
    fields = idea.fields
    if isinstance(fields, Book):
        return fields.years.also
    return list(fields.bends) if isinstance(fields, Session) else fields.also


def _concepts(idea: Idea) -> Sequence[str]:
    if isinstance(idea.fields, Book):
        return list(dict.fromkeys(name for seen in idea.fields.maths_on_pages for name in seen.concepts))
    return idea.fields.concepts


def _things(idea: Idea, reference: Reference) -> str:
    if isinstance(idea.fields, Book):
        return "-"
    things = things_of(idea.fields)
    kitchen = all(reference.materials[thing].household for thing in things)
    return str((0 if PRINTED & {*things} else NOTHING_TO_PRINT) + (ONLY_KITCHEN if kitchen else 0))
