"""A picture book: its record, its cast, and the maths on its pages."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Literal

from pydantic import Field

from .address import book_id
from .dates import Dated
from .fields import AdultText, Audience, Count, FileName, Id, PageRange, Pages, Strict, Text, Year
from .imprint import Licence
from .page_fields import Named, PageFields
from .picked import ConceptId, ThemeId
from .prose import Loc
from .token import Token, token_of

Rights = Literal["own", "public-domain", "in-copyright"]
FactValue = bool | int | Annotated[str, Audience.PUPILS]


COVER_IN_TYPE = "cover-in-type.svg"
"""What stands beside a book's page where it has no picture of its cover; drawn by the build."""
OwnPicture = Literal["toy", "objects"]


class Picture(Strict):
    """A picture beside the page that uses it, and what it shows, for those who cannot see it."""

    picture: FileName
    alt: Text
    shows: OwnPicture | None = None
    """What an author's own photograph or drawing shows, where the book is somebody else's."""


class Character(Strict):
    """Someone in the story, with facts that can be counted, compared and sorted by."""

    id: Id
    name: Text
    plural: AdultText | None = None
    picture: FileName | None = None
    alt: Text | None = None
    shows: OwnPicture | None = None
    """As of a picture of the cover."""
    facts: Mapping[str, FactValue] = Field(default_factory=dict)


class FactAbout(Strict):
    """What a fact of the cast means in words, and its unit if it has one."""

    means: Text
    unit: str = ""
    singular: Text | None = None
    """One of what it counts, where the usual singular is another word: ``die`` for ``dice``."""


class MathsOnPages(Strict):
    """Maths a reader can see on some pages."""

    pages: PageRange
    see: Text
    concepts: Annotated[tuple[ConceptId, ...], Field(min_length=1)]


class BestAndAlso(Strict):
    """The year the book fits best, and the years it bends to."""

    best: Year
    also: tuple[Year, ...] = ()


class Sensitive(Strict):
    """Something a class should be prepared for."""

    theme: ThemeId
    note: Text


class Book(Dated, PageFields):
    """A book and everything a planner needs to know before opening it. The body is the synopsis."""

    kind: Literal["book"]
    story_by: Text
    pictures_by: Text
    publisher: Text | None = None
    rights: Rights | None = None
    rights_note: AdultText | None = None
    licence: Licence | None = None
    """Of its lessons, and of its story and drawings if they are the collection's own; where it is not the collection's."""
    isbn: str | None = None
    pages: Count
    themes: Annotated[tuple[ThemeId, ...], Field(min_length=1)]
    years: BestAndAlso
    summary: Text
    cover: Picture | None = None
    sensitive: tuple[Sensitive, ...] = ()
    maths_on_pages: Annotated[tuple[MathsOnPages, ...], Field(min_length=1)]
    facts: Mapping[str, FactAbout] = Field(default_factory=dict)
    cast: Annotated[tuple[Character, ...], Field(min_length=1)]
    quotes: tuple[Text, ...] = ()
    """Words quoted from a book in copyright; they are counted and limited."""

    @property
    def cover_file(self) -> str:
        """The file beside its page that shows its cover."""
        return self.cover.picture if self.cover else COVER_IN_TYPE

    def picture_of(self, place: int) -> str:
        """The file beside its page that shows a character, by the character's place in the cast."""
        return self.cast[place].picture or f"token-{self.cast[place].id}.svg"

    def alt_of(self, place: int) -> str:
        """What that file shows."""
        character = self.cast[place]
        return (character.alt or "") if character.picture else self.token_of(place).says

    def token_of(self, place: int) -> Token:
        """What stands for a character without a picture."""
        return token_of([character.name for character in self.cast], place)

    def notches_of(self, place: int) -> int:
        """How many are cut into the edge of a character's card; a card with a picture has none."""
        return 0 if self.cast[place].picture else place + 1

    @property
    def best_year(self) -> int:
        """The year it fits best."""
        return self.years.best

    @property
    def other_years(self) -> tuple[int, ...]:
        """The years it bends to."""
        return self.years.also

    def book_at(self, path: str) -> str:
        """Itself: its id is the name of its folder."""
        return book_id(path)

    @property
    def place(self) -> int:
        """One book has one record."""
        return 1

    def named(self) -> Iterator[Named]:
        """What is seen on its pages, its themes, and what a class should be prepared for."""
        for row, seen in enumerate(self.maths_on_pages):
            for index, name in enumerate(seen.concepts):
                yield Named("concepts", ("maths_on_pages", row, "concepts", index), name)
        for index, name in enumerate(self.themes):
            yield Named("themes", ("themes", index), name)
        for index, sensitive in enumerate(self.sensitive):
            yield Named("themes", ("sensitive", index, "theme"), sensitive.theme)

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """Where maths is seen."""
        for index, seen in enumerate(self.maths_on_pages):
            yield ("maths_on_pages", index, "pages"), seen.pages
