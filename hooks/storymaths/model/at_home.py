"""What is done at home, with a book of the collection or with any: one grown-up, one child, plain words."""

from __future__ import annotations

from abc import ABC
from collections.abc import Iterator
from typing import Annotated

from pydantic import Field

from .dates import Dated
from .fields import AdultText, Count, Minutes, Strict, Text, Year
from .page_fields import Named, PageFields, names_in
from .picked import BankWord, ConceptId, MaterialId, ThemeId
from .session import CautionNote


class Thing(Strict):
    """Something from the house, and how many."""

    item: MaterialId
    """What it is, from the list of materials."""
    count: Count = 1
    """How many. 1 if you say nothing."""
    note: AdultText | None = None
    """A word about it."""


class Ask(Strict):
    """A question to ask, and what one may hear."""

    ask: Text
    """A question to ask."""
    hear: Text
    """What the child may say."""


class AtHome(Dated, PageFields, ABC):
    """Ten to fifteen minutes for one grown-up and one child. The body says what to do."""

    year: Year
    """The school year it is meant for."""
    also: tuple[Year, ...] = ()
    """Other years it is fit for as it is."""
    minutes: Minutes
    """How long it takes."""
    summary: Text
    concepts: Annotated[tuple[ConceptId, ...], Field(min_length=1)]
    """The ideas it is about, from the list of concepts."""
    themes: tuple[ThemeId, ...] = ()
    """What the story touches here, from the list of themes."""
    words: tuple[BankWord, ...] = ()
    """Words of the subject that are used, from the word bank."""
    things: Annotated[tuple[Thing, ...], Field(min_length=1)]
    """What to fetch, things most kitchens have."""
    say_first: Text
    """What the grown-up says first."""
    ask: Annotated[tuple[Ask, ...], Field(min_length=1)]
    """Questions to ask on the way."""
    if_hard: Text
    """What to do if it is too hard."""
    if_easy: Text
    """What to do if it is too easy."""
    stop_when: Text
    """When to stop."""
    what_it_is_for: Text
    """What it helps a child to see."""
    cautions: tuple[CautionNote, ...] = ()
    """What to take care of."""

    @property
    def best_year(self) -> int:
        """The year it is meant for."""
        return self.year

    @property
    def other_years(self) -> tuple[int, ...]:
        """The other years it is fit for, the youngest first."""
        return tuple(sorted(self.also))

    def named(self) -> Iterator[Named]:
        """What it practises and is about, its words, what it takes from the house, and what it cautions against."""
        yield from names_in("concepts", ("concepts",), self.concepts)
        yield from names_in("themes", ("themes",), self.themes)
        yield from names_in("words", ("words",), self.words)
        for index, thing in enumerate(self.things):
            yield Named("materials", ("things", index, "item"), thing.item)
        for index, caution in enumerate(self.cautions):
            yield Named("cautions", ("cautions", index, "risk"), caution.risk)
