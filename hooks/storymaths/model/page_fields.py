"""What the front matter of every kind of page holds, and what every kind says of itself to the stages that come after."""

from __future__ import annotations

import datetime
from abc import ABC, abstractmethod
from collections.abc import Iterator, Sequence
from typing import Literal, NamedTuple, get_args

from .dates import Dated
from .fields import Pages, Strict, Text
from .picked import BookId
from .prose import Loc

Status = Literal["ready", "draft"]
ListName = Literal["concepts", "themes", "areas", "words", "materials", "cautions"]
"""A list of ``site_data/``."""


class Named(NamedTuple):
    """An id that a page names: of which list, where, and the id."""

    of: ListName
    loc: Loc
    id: str


def names_in(of: ListName, loc: Loc, ids: Sequence[str]) -> Iterator[Named]:
    """The ids of a plain list of them that stands at ``loc``."""
    for index, name in enumerate(ids):
        yield Named(of, (*loc, index), name)


class PageFields(Strict, ABC):
    """The schema of a kind of page. What is abstract here has to be answered by each, and be it with nothing."""

    kind: str
    """What kind of page it is, in one word."""
    status: Status = "ready"
    """ready, or draft while it is not finished. A draft is shown to you and left out of the site."""
    title: Text
    """What the page is called. No two pages have the same title."""
    summary: Text | None
    """What it is, in one sentence. Lists and search results show it."""

    @classmethod
    def kind_name(cls) -> str:
        """What authors write as the kind of such a page."""
        (name,) = get_args(cls.model_fields["kind"].annotation)
        return str(name)

    @property
    @abstractmethod
    def updated(self) -> datetime.date | None:
        """The day it last changed, or was published; None where it does not say."""

    @property
    @abstractmethod
    def best_year(self) -> int | None:
        """The year it is for; None where it is for no year more than for another."""

    @property
    @abstractmethod
    def other_years(self) -> tuple[int, ...]:
        """The years it serves as well."""

    @abstractmethod
    def book_at(self, path: str) -> str | None:
        """The id of the book that such a page, whose file is ``path``, belongs to; None for a page of no book."""

    @property
    @abstractmethod
    def place(self) -> int:
        """Its place among the pages of its kind in its book, from 1; where there is no order, 1."""

    @abstractmethod
    def named(self) -> Iterator[Named]:
        """Every id it names of the lists in ``site_data/``."""

    @abstractmethod
    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """Every stretch of pages of its book it names, and where."""


class OfBook(Dated, PageFields, ABC):
    """A page that belongs to a book and names it."""

    book: BookId
    """The name of the book's folder inside content/books/."""

    def book_at(self, path: str) -> str:
        """The book it names."""
        return self.book
