"""The story of a picture book, page by page."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from .fields import Pages, Text
from .page_fields import Named, OfBook
from .prose import Loc


class Story(OfBook):
    """The story itself, where the rights allow: one ``## Page n`` heading a page."""

    kind: Literal["story"]
    summary: Text | None = None

    @property
    def best_year(self) -> None:
        """Its book says for whom it is."""

    @property
    def other_years(self) -> tuple[int, ...]:
        """None."""
        return ()

    @property
    def place(self) -> int:
        """One book has one story."""
        return 1

    def named(self) -> Iterator[Named]:
        """Nothing: its book does."""
        yield from ()

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """None: it is the pages."""
        yield from ()
