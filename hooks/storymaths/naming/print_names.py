"""A collection with what its pages name printed in them: facts of the cast first, then what activities come to.

Activities are worked out from their data and the cast, never from the words around them, so nothing goes in a circle.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from ..model.address import book_id
from ..model.body import Table
from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document, Unread
from ..model.names import NO_CAST, Prints, names_in
from ..model.page_fields import PageFields
from ..parse.collection import read_page
from .facts import Unprintable, print_fact

if TYPE_CHECKING:
    from ..activities.memory import Memory
    from ..activities.work_out import WorkedOut

_Page = Document[PageFields] | Unread
Printed = dict[tuple[str, bool], tuple[str, Prints, _Page]]
"""Pages printed before, by path and by whether answers are printed in them: what was written, what it names, the page."""


def print_names(
    collection: Collection, memory: Memory[WorkedOut] | None = None, before: Printed | None = None
) -> Collection:
    """The collection as it is printed. What ``memory`` holds is not solved again; a page is as it was ``before`` where it can be."""
    before = {} if before is None else before
    named = [page for page in _pages(collection) if page.written]
    if not named:
        return collection
    facts = {page.path: _facts(page, _book_of(page, collection)) for page in named}
    with_facts = _read_again(collection, facts, before, answers=False)
    asked = [page for page in with_facts.documents if any(_is_of_activity(name) for name in names_in(page.written))]
    return _read_again(with_facts, _answers(asked, with_facts, memory), before, answers=True) if asked else with_facts


def _pages(collection: Collection) -> Sequence[_Page]:
    """Read or not: what cannot be read yet may be when its names are printed, as a number for instance."""
    return [*collection.documents, *collection.unread]


def _book_of(page: _Page, collection: Collection) -> Book | None:
    book = collection.books.get((page.book if isinstance(page, Document) else None) or book_id(page.path))
    return book.fields if book else None


def _is_of_activity(name: str) -> bool:
    return "." not in name.partition(": ")[0]


def _facts(page: _Page, book: Book | None) -> Prints:
    words: dict[str, str] = {}
    wrong: dict[str, tuple[str, str]] = {}
    for name in set(names_in(page.written)):
        if _is_of_activity(name):
            continue
        if book is None:
            wrong[name] = (NO_CAST, "write the words out.")
            continue
        try:
            words[name] = print_fact(name, book)
        except Unprintable as error:
            wrong[name] = (error.message, error.fix)
    return Prints(words, {}, wrong)


def _answers(
    pages: Iterable[Document[PageFields]], collection: Collection, memory: Memory[WorkedOut] | None
) -> Mapping[str, Prints]:
    from .answers import NamedActivities  # noqa: PLC0415 - the kinds take half a second to load

    activities, prints = NamedActivities(collection, memory), dict[str, Prints]()
    for page in pages:
        words, wrong, tables = dict(page.prints.words), dict(page.prints.wrong), dict[str, Table]()
        for name in filter(_is_of_activity, set(names_in(page.written))):
            try:
                printed = activities.print_answers(name, page)
            except Unprintable as error:
                wrong[name] = (error.message, error.fix)
                continue
            if isinstance(printed, Table):
                tables[name] = printed
            else:
                words[name] = printed
        prints[page.path] = Prints(words, tables, wrong)
    return prints


def _read_again(collection: Collection, prints: Mapping[str, Prints], before: Printed, *, answers: bool) -> Collection:
    """The collection with some pages read again, with what their names print."""
    limits = collection.reference.limits.files
    pages: list[_Page] = []
    for page in sorted(_pages(collection), key=lambda page: page.path):
        if page.path in prints:
            key, named = (page.path, answers), prints[page.path]
            if before.get(key, (None, None))[:2] != (page.written, named):
                before[key] = page.written, named, read_page(page.path, page.written.encode(), limits, named)
            pages.append(before[key][2])
        else:
            pages.append(page)
    documents = tuple(page for page in pages if isinstance(page, Document))
    return replace(collection, documents=documents, unread=tuple(page for page in pages if isinstance(page, Unread)))
