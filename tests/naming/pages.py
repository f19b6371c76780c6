"""The frozen collection with some pages changed, and its names printed."""

from __future__ import annotations

from dataclasses import replace

from project import collection, text_of
from storymaths.activities.on_pages import check_activities, work_out_pages
from storymaths.check.rules import check_all
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.model.page_fields import PageFields
from storymaths.model.problem import Problem
from storymaths.naming.print_names import print_names
from storymaths.parse.collection import read_page

LIFT = "books/cliff-house-lift"


def changed(*changes: tuple[str, str, str], folder: str = LIFT) -> Collection:
    """The collection with something else in some of its pages: the name of each page, the old words and the new."""
    whole, texts = collection(), dict[str, str]()
    for name, old, new in changes:
        path = f"{folder}/{name}.md"
        text = texts.get(path) or text_of(path)
        assert old in text, f"the frozen collection has changed: {old!r} is no longer in {path}"
        texts[path] = text.replace(old, new, 1)
    pages = {
        f"content/{path}": read_page(f"content/{path}", text.encode(), whole.reference.limits.files)
        for path, text in texts.items()
    }
    kept = [pages.get(page.path, page) for page in whole.documents]
    documents = tuple(page for page in kept if isinstance(page, Document))
    unread = tuple(page for page in kept if not isinstance(page, Document))
    return print_names(replace(whole, documents=documents, unread=unread))


def page_of(whole: Collection, name: str, folder: str = LIFT) -> Document[PageFields]:
    """A page of the changed collection."""
    return next(page for page in whole.documents if page.path == f"content/{folder}/{name}.md")


def problems_of(whole: Collection) -> list[Problem]:
    """Every problem of it, those of activities among them."""
    return [*check_all(whole), *check_activities(work_out_pages(whole), whole.documents)]


def place_of(name: str, *changes: tuple[str, str], words: str, folder: str = LIFT) -> tuple[int, int]:
    """Line and column, from 1, of some words in a page's file as it is written with the changes."""
    text = text_of(f"{folder}/{name}.md")
    for old, new in changes:
        text = text.replace(old, new, 1)
    before = text[: text.index(words)]
    return before.count("\n") + 1, len(before) - before.rfind("\n")
