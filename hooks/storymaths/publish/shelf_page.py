"""The page of the shortest shelf: a table a year that needs no script, and the data for the books a reader owns."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import groupby
from typing import Any

from ..covers.shelf import Shelf
from ..covers.shelves import YearShelf
from ..model.address import LISTS, html_of, objective_page
from ..render.coverage_words import hours_in_words
from ..render.quotes import curl
from ..render.site import Rendered, Site


def draw_shelf(site: Site) -> Rendered:
    """For each year and framework the fewest books that teach what the collection can teach."""
    shelves = sorted(site.shelves.values(), key=lambda shelf: shelf.year)
    html = site.draw(
        "shelf.html",
        LISTS["shelf"],
        years=[(year, list(found)) for year, found in groupby(shelves, key=lambda shelf: shelf.year)],
        shown=site.collection.reference.limits.shelf.shown,
        hours=hours_in_words,
        how_many=how_many_ways,
        how_much=how_much,
    )
    summary = "For a year and a framework, the fewest books that teach all that the books here can teach."
    return Rendered(LISTS["shelf"], "The shortest shelf", summary, html, "shelf", searched=False)


def how_much(asked: YearShelf) -> str:
    """What the books teach of a year: so many of its objectives in full, and so many in part."""
    begun, in_part = len({item.objective.code for item in asked.items}), len(asked.in_part)
    of = f"of {begun + len(asked.beyond)} objectives"
    parts = [f"{begun - in_part} in full"] * (begun > in_part) + [f"{in_part} in part"] * bool(in_part)
    return f"{of}, {' and '.join(parts)}"


def how_many_ways(shelf: Shelf) -> str:
    """How many ways there are to choose the shelf, as far as they were counted; empty for one."""
    number = len(shelf.ways)
    if shelf.more:
        return f"There are more than {number:,} ways to choose them, each as short as the others."
    return f"There are {number:,} ways to choose them, each as short as the others." if number > 1 else ""


def shelf_data(site: Site) -> dict[str, Any]:
    """What the device needs to answer for the books a reader owns.

    ``books`` is ``[id, title, address]`` each. A question is one framework and year: its ``objectives`` are what some book
    teaches, ``[code, words, address]`` each, an objective whole or one of its parts; ``in_part`` and ``beyond`` how many
    objectives all books together teach only in part or not at all; and ``books`` what each book teaches,
    ``[book, minutes, [objective, …]]``. Books and objectives are named by their places in these lists.
    """
    collection, caps = site.collection, site.collection.reference.limits.shelf
    used = {book.id for shelf in site.shelves.values() for book in shelf.books}
    books = [book for book in collection.books if book in used]
    return {
        "books": [
            [book, curl(collection.books[book].fields.title), html_of(collection.books[book].source)] for book in books
        ],
        "questions": [_question(shelf, {book: n for n, book in enumerate(books)}) for shelf in site.shelves.values()],
        "caps": {"tries": caps.tries, "ways": caps.ways, "shown": caps.shown},
    }


def _question(asked: YearShelf, books: Mapping[str, int]) -> dict[str, Any]:
    framework = asked.framework.id
    place = {item.id: n for n, item in enumerate(asked.items)}
    return {
        "framework": framework,
        "name": asked.framework.short_name,
        "year": asked.year,
        "objectives": [
            [item.objective.code, item.says, html_of(objective_page(framework, item.objective.code))]
            for item in asked.items
        ],
        "in_part": len(asked.in_part),
        "beyond": len(asked.beyond),
        "books": [[books[book.id], book.minutes, sorted(place[item] for item in book.teaches)] for book in asked.books],
    }
