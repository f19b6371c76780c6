"""A session as far as it is written: what is lacking, or cannot be read yet, is made up so that the rest can be read."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Any

from pydantic import ValidationError

from ..activities.on_pages import PageActivity, activities_of
from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document
from ..model.names import PRINTS_NOTHING
from ..model.reference import Reference
from ..model.session import Session
from ..parse.document import FENCE, FileLocator
from ..parse.prose import PageReader
from ..parse.yaml_text import BrokenYaml, load

_MADE_UP: Mapping[str, Any] = {
    "kind": "session",
    "title": "A session",
    "number": 99,
    "minutes": 45,
    "summary": "A session.",
    "objectives": {},
    "concepts": ["counting"],
    "reads": [{"pages": 1}],
    "steps": [{"name": "A step", "minutes": 45}],
    "task": {"objects": "Things", "pictures": "Pictures", "symbols": "Signs"},
    "stem_sentences": ["A sentence."],
    "misconceptions": [{"says": "Words.", "shows": "Words.", "try": "Words."}],
    "easier": ["Less."],
    "harder": ["More."],
    "look_for": ["Words."],
    "exit_question": {"ask": "Words?", "answer": "Words."},
}
"""Values of the fields that a session cannot do without. None of them is ever proposed, or read as hers."""


@dataclass(frozen=True)
class Draft:
    """A session on its way."""

    collection: Collection
    """With the session as it is now."""
    page: Document[Session]
    made_up: frozenset[str]
    """The fields that are not hers."""

    @property
    def reference(self) -> Reference:
        """The standing knowledge."""
        return self.collection.reference

    @property
    def fields(self) -> Session:
        """What it says, made up in part."""
        return self.page.fields

    @property
    def raw(self) -> Mapping[str, Any]:
        """What stands in its front matter."""
        return self.page.raw

    @cached_property
    def book(self) -> Book | None:
        """Its book."""
        record = self.collection.book_of(self.page)
        return record.fields if record else None

    @cached_property
    def activities(self) -> tuple[PageActivity, ...]:
        """Its activities, worked out."""
        return activities_of(self.page, self.collection)

    @cached_property
    def earlier(self) -> tuple[Session, ...]:
        """The sessions of its book that come before it."""
        run = self.collection.sessions_of(self.collection.run_of(self.page))
        return tuple(one.fields for one in run if one.fields.number < self.fields.number)

    @cached_property
    def taught_before(self) -> tuple[Session, ...]:
        """Those, and before them the sessions of the books that its book comes after."""
        before = self.collection.sessions_before(self.collection.run_of(self.page))
        return (*(one.fields for one in before), *self.earlier)

    @property
    def concepts(self) -> tuple[str, ...]:
        """The concepts she names."""
        return () if "concepts" in self.made_up else self.fields.concepts

    def is_open(self, *path: str) -> bool:
        """Whether more may be proposed for a list: nothing is in it, or its page is a draft, where she may take one by one."""
        return self.fields.status == "draft" or self.lacks(*path)

    def lacks(self, *path: str | int) -> bool:
        """Whether nothing stands at a path, or something empty."""
        value: Any = self.raw
        for step in path:
            if not isinstance(value, dict) or step not in value:
                return True
            value = value[step]
        return value is None or value in ([], {}, "")


def draft_of(collection: Collection, path: str, text: str) -> Draft | None:
    """A session from its text as it is now; None for a page that is none, or whose front matter cannot be read."""
    text = text.removeprefix("\ufeff").replace("\r\n", "\n")
    found = FENCE.match(text)
    if found is None:
        return None
    try:
        raw = load(found[1])[0]
    except BrokenYaml:
        return None
    if not isinstance(raw, dict) or raw.get("kind") != "session":
        return None
    prints = next((one.prints for one in collection.documents if one.path == path), PRINTS_NOTHING)
    raw = prints.value(raw)
    read = _read(raw, _year_of(collection, raw))
    if read is None:
        return None
    fields, made_up = read
    body_line = text.count("\n", 0, found.end()) + 1
    locator = FileLocator(path, found[1], body_line, prints)
    body, reader = prints.body(text[found.end() :]), PageReader(raw, Session, prints)
    page = Document(path, fields, raw, body, body_line, reader, locator, written=text, prints=prints)
    others = tuple(one for one in collection.documents if one.path != path)
    whole = replace(collection, documents=tuple(sorted((*others, page), key=lambda one: one.path)))
    return Draft(whole, page, made_up)


def _year_of(collection: Collection, raw: Mapping[str, Any]) -> int:
    book = collection.books.get(str(raw.get("book")))
    return book.fields.years.best if book else max(collection.reference.years) // 2


def _read(raw: Mapping[str, Any], year: int) -> tuple[Session, frozenset[str]] | None:
    """The session with what does not pass made up, field by field."""
    usual = {**_MADE_UP, "year": year}
    filled, made_up = dict(raw), set[str]()
    for _ in range(len(Session.model_fields)):
        try:
            return Session.model_validate(filled), frozenset(made_up)
        except ValidationError as error:
            wrong = {str(detail["loc"][0]) for detail in error.errors(include_url=False)}
        for name in wrong:
            filled.pop(name, None)
            if name in usual:
                filled[name] = usual[name]
        if wrong <= made_up:
            return None
        made_up |= wrong
    return None
