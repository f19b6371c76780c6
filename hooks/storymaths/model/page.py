"""A plain page of the collection, such as one about its authors."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from .address import book_id
from .dates import Dated
from .fields import Pages, Text
from .page_fields import Named, PageFields
from .prose import Loc


class Page(Dated, PageFields):
    """A plain page: words only."""

    kind: Literal["page"]
    summary: Text

    @property
    def best_year(self) -> None:
        """It is for everybody."""

    @property
    def other_years(self) -> tuple[int, ...]:
        """None."""
        return ()

    def book_at(self, path: str) -> str:
        """The book whose folder it stands in, if that is one."""
        return book_id(path)

    @property
    def place(self) -> int:
        """They have no order."""
        return 1

    def named(self) -> Iterator[Named]:
        """Nothing."""
        yield from ()

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """None."""
        yield from ()
