"""A collection with slips in it, made whole enough to be drawn for its author: what is named and not there has a stand-in."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

from .address import book_id, slug
from .collection import Collection, is_of_kind
from .concept import Concept, Theme
from .document import Document
from .material import Caution, Material
from .page_fields import ListName, OfBook, PageFields
from .reference import Reference
from .series import Series

V = TypeVar("V")
_SAYS = "This is not in the list of site_data/. The problem on the page that names it says what to do."


def with_stand_ins(collection: Collection) -> Collection:
    """The collection with an entry for every id that its pages name, and every page in a book that is there.

    A page whose book is nowhere is left out. Rules never see this: they are kept on the collection as it is.
    """
    pages = tuple(page for given in collection.documents for page in _in_its_book(given, collection))
    return replace(collection, documents=pages, reference=_with_every_name(collection.reference, pages))


def _in_its_book(page: Document[PageFields], collection: Collection) -> Iterable[Document[PageFields]]:
    """The page, in the book of its folder if the one it names is not there; nothing if neither is."""
    fields = page.fields
    if is_of_kind(page, Series):
        there = tuple(book for book in page.fields.books if book in collection.books)
        return () if not there else (replace(page, fields=page.fields.model_copy(update={"books": there})),)
    if not isinstance(fields, OfBook) or fields.book in collection.books:
        return (page,)
    folder = book_id(page.path)
    return (replace(page, fields=fields.model_copy(update={"book": folder})),) if folder in collection.books else ()


def _id(name: str) -> str:
    """What stands for a name that may be none: ``interlocking-cubes`` for ``interlocking cubes``."""
    return slug(name) or "not-in-the-list"


def _with_every_name(reference: Reference, pages: Sequence[Document[PageFields]]) -> Reference:
    strand, year = next(iter(reference.strands)), max(reference.years)

    def concept(name: str) -> Concept:
        return Concept(id=_id(name), name=_shown(name), strand=strand, says=_SAYS, grows={year: _SAYS}, objectives={})

    def theme(name: str) -> Theme:
        return Theme(id=_id(name), name=_shown(name), says=_SAYS)

    def material(name: str) -> Material:
        return Material(id=_id(name), name=_shown(name), plural=_shown(name), allergens=())

    def caution(name: str) -> Caution:
        shown = _shown(name)
        return Caution(
            id=_id(name), name=shown, line=_SAYS, applies_to=("home",), why=_SAYS, source=_SAYS, verified="project rule"
        )

    return replace(
        reference,
        concepts=_filled(reference.concepts, _named(pages, "concepts"), concept),
        themes=_filled(reference.themes, _named(pages, "themes"), theme),
        materials=_filled(reference.materials, _named(pages, "materials"), material),
        cautions=_filled(reference.cautions, _named(pages, "cautions"), caution),
    )


def _named(pages: Iterable[Document[PageFields]], of: ListName) -> Iterable[str]:
    return dict.fromkeys(named.id for page in pages for named in page.named(of))


def _filled(known: Mapping[str, V], named: Iterable[str], stand_in: Callable[[str], V]) -> Mapping[str, V]:
    return {**known, **{name: stand_in(name) for name in named if name not in known}}


def _shown(name: str) -> str:
    return f"“{name}” (not in the list)"
