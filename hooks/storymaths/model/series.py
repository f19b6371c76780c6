"""A series: books in order for a purpose, with a version and what changed."""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field, StringConstraints

from .fields import AdultText, Day, Id, Pages, Strict, Text, Year
from .page_fields import Named, PageFields
from .prose import Loc

VERSION = r"^\d+\.\d+$"
"""The form of the next, which messages put into words."""
Version = Annotated[str, StringConstraints(pattern=VERSION, strict=True)]


class Change(Strict):
    """What is new in one version."""

    version: Version
    """Its number, in quotes."""
    date: Day
    """The day, year first."""
    what: Annotated[tuple[Text, ...], Field(min_length=1)]
    """What is new, a sentence each."""


class Series(PageFields):
    """A published run of books. The body says why these, in this order."""

    kind: Literal["series"]
    year: Year
    """The school year it is for."""
    also: tuple[Year, ...] = ()
    """The other year of a mixed class."""
    summary: Text
    for_whom: Text
    """Which classes it is for, and how long it takes."""
    books: Annotated[tuple[Id, ...], Field(min_length=1)]
    """The folders of its books, in the order they are taught."""
    licence: AdultText
    """What a school may do with it, in a sentence."""
    contact: AdultText
    """Where readers write to."""
    version: Version
    """The newest version, two numbers in quotes. A larger second number for a small change."""
    changes: Annotated[tuple[Change, ...], Field(min_length=1)]
    """What was new in each version."""

    @property
    def published(self) -> datetime.date:
        """The day of its first version."""
        return min(change.date for change in self.changes)

    @property
    def updated(self) -> datetime.date:
        """The day of its newest version."""
        return max(change.date for change in self.changes)

    @property
    def best_year(self) -> int:
        """The year it is for before all."""
        return self.year

    @property
    def other_years(self) -> tuple[int, ...]:
        """The other years of its class."""
        return self.also

    def book_at(self, path: str) -> None:
        """None: it has books of its own."""

    @property
    def place(self) -> int:
        """They have no order."""
        return 1

    def named(self) -> Iterator[Named]:
        """Nothing: its sessions do."""
        yield from ()

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """None."""
        yield from ()

    @property
    def years(self) -> tuple[int, ...]:
        """Every year it is for, the youngest first."""
        return tuple(sorted({self.year, *self.also}))

    @property
    def history(self) -> tuple[Change, ...]:
        """Its versions from the first to the newest."""
        return tuple(sorted(self.changes, key=lambda change: version_order(change.version)))


def version_order(version: str) -> tuple[int, ...]:
    """A version as numbers, by which 1.10 comes after 1.9."""
    return tuple(int(part) for part in version.split("."))
