"""A home activity: one thing to do with a book, in a kitchen, in plain words."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from .dates import Dated
from .fields import Count, Id, Minutes, PageRange, Strict, Text, Year
from .session import CautionNote, Status


class Thing(Strict):
    """Something from the house, and how many."""

    item: Id
    count: Count = 1
    note: Text | None = None


class Ask(Strict):
    """A question to ask, and what one may hear."""

    ask: Text
    hear: Text


class Home(Dated):
    """Ten to fifteen minutes for one grown-up and one child. The body says what to do."""

    kind: Literal["home"]
    status: Status = "ready"
    book: Id
    title: Text
    number: Count
    year: Year
    also: tuple[Year, ...] = ()
    minutes: Minutes
    summary: Text
    concepts: Annotated[tuple[Id, ...], Field(min_length=1)]
    themes: tuple[Id, ...] = ()
    words: tuple[Text, ...] = ()
    pages: PageRange
    things: Annotated[tuple[Thing, ...], Field(min_length=1)]
    say_first: Text
    ask: Annotated[tuple[Ask, ...], Field(min_length=1)]
    if_hard: Text
    if_easy: Text
    stop_when: Text
    what_it_is_for: Text
    cautions: tuple[CautionNote, ...] = ()
