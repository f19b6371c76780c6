"""The tree of ideas: strands, the concepts in them, and how each grows through the years."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated

from pydantic import Field

from .fields import Codes, Id, Strict, Text, Year


class Strand(Strict):
    """A branch of mathematics."""

    id: Id
    name: Text
    says: Text


class Concept(Strict):
    """An idea taught across years, in a strand, perhaps under a wider concept."""

    id: Id
    name: Text
    strand: Id
    under: Id | None = None
    says: Text
    grows: Annotated[Mapping[Year, Text], Field(min_length=1)]
    """What the idea looks like in each year it lives in."""
    objectives: Codes

    @property
    def years(self) -> tuple[int, ...]:
        """The years it lives in, youngest first."""
        return tuple(sorted(self.grows))


class Area(Strict):
    """A place where things are set out for a week: ``site_data/areas.yaml``."""

    id: Id
    name: Text
    says: Text
    own_cautions: tuple[Id, ...] = ()
    """Cautions that are of this area and of no other: their notes stand on its card alone."""


class Theme(Strict):
    """What a story is about, apart from its maths."""

    id: Id
    name: Text
    says: Text
    sensitive: bool = False
    """True when some children may find it close to home."""


class Word(Strict):
    """A word of the subject, as a child would have it explained."""

    word: Text
    year: Year
    concept: Id
    means: Text
    also: tuple[Text, ...] = ()
    """Other forms that stand for the same word in running text: plurals, endings."""
    example: Text | None = None
    ambiguous: bool = False
    """True where running text often means something else by it: "three times" is no multiplication."""
    everyday: bool = False
    """True for words most children know from talk; sessions need not teach them first."""
    not_in: tuple[Text, ...] = ()
    """Everyday phrases that hold the word and mean nothing of the subject: "little ones"."""
    only_with: tuple[Text, ...] = ()
    """Other words, one of which stands on a page where this one means something of the subject: ones beside tens."""

    def is_meant_among(self, words: frozenset[str]) -> bool:
        """Whether it means something of the subject on a page with these words, in small letters."""
        return not self.only_with or not words.isdisjoint(self.only_with)
