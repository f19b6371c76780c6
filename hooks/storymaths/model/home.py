"""A home activity: one thing to do with a book, in a kitchen, in plain words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Literal

from pydantic import Field

from .at_home import AtHome
from .bend import YearBend
from .fields import Count, PageRange, Pages, Year
from .page_fields import OfBook
from .prose import Loc


class Home(AtHome, OfBook):
    """One thing to do with a book of the collection."""

    kind: Literal["home"]
    number: Count
    """Its place among the home activities of the book."""
    bends: Mapping[Year, YearBend] = Field(default_factory=dict)
    """Other years for which an activity on the page changes, by year."""
    pages: PageRange
    """The pages of the book it goes with."""

    @property
    def other_years(self) -> tuple[int, ...]:
        """The other years it is fit for, the youngest first."""
        return tuple(sorted({*self.also, *self.bends}))

    @property
    def place(self) -> int:
        """Its number."""
        return self.number

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """What it goes with."""
        yield ("pages",), self.pages
