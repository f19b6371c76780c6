"""A picture book: its record, its cast, and the maths on its pages."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal

from pydantic import Field

from .dates import Dated
from .fields import Count, Id, PageRange, Strict, Text, Year
from .session import Status

Rights = Literal["own", "public-domain", "in-copyright"]
FactValue = bool | int | str


class Picture(Strict):
    """A drawing beside the page that uses it, and what it shows, for those who cannot see it."""

    picture: Text
    alt: Text


class Character(Strict):
    """Someone in the story, with facts that can be counted, compared and sorted by."""

    id: Id
    name: Text
    plural: Text | None = None
    picture: Text
    alt: Text
    facts: Mapping[str, FactValue] = Field(default_factory=dict)


class FactAbout(Strict):
    """What a fact of the cast means in words, and its unit if it has one."""

    means: Text
    unit: str = ""


class MathsOnPages(Strict):
    """Maths a reader can see on some pages."""

    pages: PageRange
    see: Text
    concepts: Annotated[tuple[Id, ...], Field(min_length=1)]


class BestAndAlso(Strict):
    """The year the book fits best, and the years it bends to."""

    best: Year
    also: tuple[Year, ...] = ()


class Sensitive(Strict):
    """Something a class should be prepared for."""

    theme: Id
    note: Text


class Book(Dated):
    """A book and everything a planner needs to know before opening it. The body is the synopsis."""

    kind: Literal["book"]
    status: Status = "ready"
    title: Text
    story_by: Text
    pictures_by: Text
    publisher: Text | None = None
    rights: Rights | None = None
    rights_note: Text | None = None
    isbn: str | None = None
    pages: Count
    themes: Annotated[tuple[Id, ...], Field(min_length=1)]
    years: BestAndAlso
    summary: Text
    cover: Picture
    sensitive: tuple[Sensitive, ...] = ()
    maths_on_pages: Annotated[tuple[MathsOnPages, ...], Field(min_length=1)]
    facts: Mapping[str, FactAbout] = Field(default_factory=dict)
    cast: Annotated[tuple[Character, ...], Field(min_length=1)]
    quotes: tuple[Text, ...] = ()
    """Words quoted from a book in copyright; they are counted and limited."""
