"""What a plan of sessions needs to add up their materials and lead to what is printed; fetched by the plan's page alone."""

from __future__ import annotations

from typing import Any

from ..model.reference import Reference
from ..model.session import Per
from ..render.quotes import curl
from ..render.site import Site
from .ideas import Idea, ideas

PER: tuple[Per, ...] = ("class", "group", "pair", "child")
"""For whom a thing is counted; the data names each by its place here."""


def plan_data(site: Site) -> dict[str, Any]:
    """Every session and home activity by the name a plan keeps it under, with what it needs.

    ``materials`` is ``[one, several, 1 if it can be used again]`` a thing. An idea is ``[title, book, year, minutes,
    children in a group, needed, to print, its pages]``, its group 0 for a home activity; ``needed`` runs on as thing,
    count, for whom (0 class, 1 group, 2 pair, 3 child), and a home activity's count is for one home. What there is to
    print is the end of its address after the idea's name, and empty where there is nothing.
    """
    reference, collection = site.collection.reference, site.collection
    used = sorted({item for idea in ideas(collection) for item in idea.things or ()})
    place = {item: n for n, item in enumerate(used)}
    return {
        "materials": [_material(item, reference) for item in used],
        "books": {book: curl(page.fields.title) for book, page in collection.books.items()},
        "ideas": {
            idea.address.removesuffix(".html"): [
                curl(idea.fields.title),
                idea.book,
                idea.fields.best_year,
                planned.minutes,
                planned.group_size,
                [number for need in planned.needs for number in (place[need.item], need.count, PER.index(need.per))],
                *_to_print(site, idea),
            ]
            for idea in ideas(collection)
            if (planned := idea.planned)
        },
    }


def _to_print(site: Site, idea: Idea) -> tuple[str, int]:
    prints = site.prints.get(idea.page.source)
    return (prints[0].address.removeprefix(idea.address.removesuffix(".html")), prints[0].pages) if prints else ("", 0)


def _material(item: str, reference: Reference) -> list[Any]:
    material = reference.materials[item]
    return [material.name, material.plural, int(material.reusable)]
