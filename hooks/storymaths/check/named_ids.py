"""Every id a page names in some fields, with where it stands, for the rules that look ids up."""

from __future__ import annotations

from collections.abc import Collection as Names
from collections.abc import Iterable, Iterator

from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document, Fields, Loc
from ..model.home import Home
from ..model.problem import Problem
from ..model.rule import Rule
from ..model.session import Session
from .suggestion import did_you_mean

Named = tuple[Document[Fields], Loc, str]


def concepts_named(collection: Collection) -> Iterator[Named]:
    """Concepts in sessions, home activities, and the maths on a book's pages."""
    for page in collection.documents:
        if isinstance(page.fields, Session | Home):
            for index, name in enumerate(page.fields.concepts):
                yield page, ("concepts", index), name
        elif isinstance(page.fields, Book):
            for row, seen in enumerate(page.fields.maths_on_pages):
                for index, name in enumerate(seen.concepts):
                    yield page, ("maths_on_pages", row, "concepts", index), name


def themes_named(collection: Collection) -> Iterator[Named]:
    """Themes of books, sessions and home activities, and what a class should be prepared for."""
    for page in collection.documents:
        if isinstance(page.fields, Book | Session | Home):
            for index, name in enumerate(page.fields.themes):
                yield page, ("themes", index), name
        if isinstance(page.fields, Book):
            for index, sensitive in enumerate(page.fields.sensitive):
                yield page, ("sensitive", index, "theme"), sensitive.theme


def words_named(collection: Collection) -> Iterator[Named]:
    """Vocabulary of sessions and home activities."""
    for page in collection.documents:
        if isinstance(page.fields, Session):
            for index, word in enumerate(page.fields.words.new):
                yield page, ("words", "new", index), word
            for index, word in enumerate(page.fields.words.again):
                yield page, ("words", "again", index), word
        elif isinstance(page.fields, Home):
            for index, word in enumerate(page.fields.words):
                yield page, ("words", index), word


def materials_named(collection: Collection) -> Iterator[Named]:
    """Things to get ready in sessions and at home, and apparatus in steps."""
    for page in collection.documents:
        if isinstance(page.fields, Session):
            for index, needed in enumerate(page.fields.materials):
                yield page, ("materials", index, "item"), needed.item
            for row, step in enumerate(page.fields.steps):
                for index, item in enumerate(step.models):
                    yield page, ("steps", row, "models", index), item
                for index, item in enumerate(step.alone):
                    yield page, ("steps", row, "alone", index), item
        elif isinstance(page.fields, Home):
            for index, thing in enumerate(page.fields.things):
                yield page, ("things", index, "item"), thing.item


def cautions_named(collection: Collection) -> Iterator[Named]:
    """Risks that sessions and home activities carry a note on."""
    for page in collection.documents:
        if isinstance(page.fields, Session | Home):
            for index, caution in enumerate(page.fields.cautions):
                yield page, ("cautions", index, "risk"), caution.risk


def not_listed(rule: Rule, named: Iterable[Named], known: Names[str], file: str) -> Iterator[Problem]:
    """A problem of ``rule`` for each name that is not among those of ``site_data/<file>.yaml``."""
    for page, loc, name in named:
        if name not in known:
            yield rule.problem(
                page.place(*loc),
                f'"{name}" is not in the list of {file}.' + did_you_mean(name, known),
                f"use a name from site_data/{file}.yaml, or add this one there.",
            )
