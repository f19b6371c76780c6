"""A home activity: one thing to do with a book, in a kitchen, in plain words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Literal

from pydantic import Field

from .bend import YearBend
from .fields import AdultText, Count, Minutes, PageRange, Pages, Strict, Text, Year
from .page_fields import Named, OfBook, names_in
from .picked import BankWord, ConceptId, MaterialId, ThemeId
from .prose import Loc
from .session import CautionNote


class Thing(Strict):
    """Something from the house, and how many."""

    item: MaterialId
    count: Count = 1
    note: AdultText | None = None


class Ask(Strict):
    """A question to ask, and what one may hear."""

    ask: Text
    hear: Text


class Home(OfBook):
    """Ten to fifteen minutes for one grown-up and one child. The body says what to do."""

    kind: Literal["home"]
    number: Count
    year: Year
    also: tuple[Year, ...] = ()
    """Other years it is fit for, and no activity of it changes."""
    bends: Mapping[Year, YearBend] = Field(default_factory=dict)
    """Other years it is fit for, with what is done of its activities."""
    minutes: Minutes
    summary: Text
    concepts: Annotated[tuple[ConceptId, ...], Field(min_length=1)]
    themes: tuple[ThemeId, ...] = ()
    words: tuple[BankWord, ...] = ()
    pages: PageRange
    things: Annotated[tuple[Thing, ...], Field(min_length=1)]
    say_first: Text
    ask: Annotated[tuple[Ask, ...], Field(min_length=1)]
    if_hard: Text
    if_easy: Text
    stop_when: Text
    what_it_is_for: Text
    cautions: tuple[CautionNote, ...] = ()

    @property
    def best_year(self) -> int:
        """The year it is meant for."""
        return self.year

    @property
    def other_years(self) -> tuple[int, ...]:
        """The other years it is fit for, the youngest first."""
        return tuple(sorted({*self.also, *self.bends}))

    @property
    def place(self) -> int:
        """Its number."""
        return self.number

    def named(self) -> Iterator[Named]:
        """What it practises and is about, its words, what it takes from the house, and what it cautions against."""
        yield from names_in("concepts", ("concepts",), self.concepts)
        yield from names_in("themes", ("themes",), self.themes)
        yield from names_in("words", ("words",), self.words)
        for index, thing in enumerate(self.things):
            yield Named("materials", ("things", index, "item"), thing.item)
        for index, caution in enumerate(self.cautions):
            yield Named("cautions", ("cautions", index, "risk"), caution.risk)

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """What it goes with."""
        yield ("pages",), self.pages
