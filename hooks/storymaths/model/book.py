"""A picture book: its record, its cast, and the maths on its pages."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Annotated, Literal, NamedTuple

from pydantic import AfterValidator, Field

from .address import book_id
from .dates import Dated
from .fields import AdultText, Audience, Count, FactKey, FileName, Id, PageRange, Pages, Strict, Text, Year
from .imprint import Licence
from .page_fields import Named, PageFields
from .picked import BookId, ConceptId, ThemeId
from .prose import Loc
from .token import Token, token_of

Rights = Literal["own", "public-domain", "in-copyright"]
FactValue = bool | int | Annotated[str, Audience.PUPILS]


_COUNTED = re.compile(r"(\d+(?:(?:, or | or |, )\d+)*) ([a-z][a-z '’-]*)", re.IGNORECASE)


class Counted(NamedTuple):
    """Things of a story, and each number of them that it counts."""

    things: str
    counts: frozenset[int]


def _read_counted(line: str) -> Counted | None:
    match = _COUNTED.fullmatch(line)
    return Counted(match[2], frozenset(map(int, re.findall(r"\d+", match[1])))) if match else None


def _is_counted(line: str) -> str:
    if _read_counted(line) is None:
        raise ValueError("what a story counts is written with its number first, in figures: 96 stairs, or 4 or 8 tubs")
    return line


BOOK_CARD = "book-card.svg"
"""What stands beside a book's page where it has no picture of its cover; drawn by the build."""
OwnPicture = Literal["toy", "objects"]


class Picture(Strict):
    """A picture beside the page that uses it, and what it shows, for those who cannot see it."""

    picture: FileName
    """The name of the picture's file, which lies beside the page."""
    alt: Text
    """What the picture shows, for somebody who cannot see it."""
    shows: OwnPicture | None = None
    """toy or objects: what your own photograph or drawing shows, where the book is somebody else's."""


class Character(Strict):
    """Someone in the story, with facts that can be counted, compared and sorted by."""

    id: Id
    """A short name in small letters, which sessions and activities use for this character."""
    name: Text
    """The name as it is printed."""
    plural: AdultText | None = None
    """Several of this character, where activities count them."""
    picture: FileName | None = None
    """The name of a picture's file beside the page. Without one the character has a token of its own."""
    alt: Text | None = None
    """What that picture shows, for somebody who cannot see it."""
    shows: OwnPicture | None = None
    """toy or objects: what your own picture shows, where the book is somebody else's."""
    facts: Mapping[FactKey, FactValue] = Field(default_factory=dict)
    """What is true of this character: numbers, words, or true and false. Activities count, compare and sort by them."""


class FactAbout(Strict):
    """What a fact of the cast means in words, and its unit if it has one."""

    means: Text
    """What the fact says, in a few words."""
    unit: str = ""
    """What the number counts or measures, in the plural. Leave it out where there is none."""
    singular: Text | None = None
    """One of what it counts, where that is another word than usual: ``die`` for ``dice``."""


class MathsOnPages(Strict):
    """Maths a reader can see on some pages."""

    pages: PageRange
    """The page, or the first and last page: 4, or 4-7."""
    see: Text
    """What maths a reader can see there."""
    concepts: Annotated[tuple[ConceptId, ...], Field(min_length=1)]
    """The ideas it belongs to, from the list of concepts."""


class BestAndAlso(Strict):
    """The year the book fits best, and the years it bends to."""

    best: Year
    """The year the book fits best."""
    also: tuple[Year, ...] = ()
    """Other years it can be taught in."""


class Sensitive(Strict):
    """Something a class should be prepared for."""

    theme: ThemeId
    """The theme, from the list of themes."""
    note: Text
    """What a teacher should know before reading."""


class Book(Dated, PageFields):
    """A book and everything a planner needs to know before opening it. The body is the synopsis."""

    kind: Literal["book"]
    story_by: Text
    """Who wrote it, as on the cover."""
    pictures_by: Text
    """Who drew it, as on the cover."""
    publisher: Text | None = None
    """Who published it. A book in copyright needs it."""
    rights: Rights | None = None
    """Whose the book is: own, public-domain or in-copyright."""
    rights_note: AdultText | None = None
    """What a school may do with the book, in a sentence or two."""
    licence: Licence | None = None
    """What may be done with the lessons of this book, where that is not what the whole collection says."""
    isbn: str | None = None
    """The thirteen digits on the back, in quotes."""
    pages: Count
    """How many pages are read."""
    after: tuple[BookId, ...] = ()
    """Books of the collection that are taught before this one. The words and signs that they bring in are known here."""
    themes: Annotated[tuple[ThemeId, ...], Field(min_length=1)]
    """What the story is about, from the list of themes."""
    years: BestAndAlso
    """The years it is for."""
    summary: Text
    cover: Picture | None = None
    """A picture of your own for the cover. Without one a card with its title and its authors stands there."""
    sensitive: tuple[Sensitive, ...] = ()
    """What some children may find close to home."""
    maths_on_pages: Annotated[tuple[MathsOnPages, ...], Field(min_length=1)]
    """What maths can be seen on which pages."""
    facts: Mapping[FactKey, FactAbout] = Field(default_factory=dict)
    """What the facts of the characters mean: one entry for each name that stands under facts in the cast."""
    cast: Annotated[tuple[Character, ...], Field(min_length=1)]
    """The characters of the story."""
    counts: tuple[Annotated[AdultText, AfterValidator(_is_counted)], ...] = ()
    """How many there are of what the story counts, a line for each thing: 96 stairs, or 4 or 8 tubs. Other numbers of it are told."""
    quotes: tuple[Text, ...] = ()
    """Words quoted from a book in copyright, each once. They are counted, and there is a limit."""

    @property
    def counted(self) -> tuple[Counted, ...]:
        """What the story counts."""
        return tuple(read for line in self.counts if (read := _read_counted(line)))

    @property
    def cover_file(self) -> str:
        """The file beside its page that shows its cover."""
        return self.cover.picture if self.cover else BOOK_CARD

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
