"""What a book has that activities can be made of: facts of its cast, things counted, times, money, measures, shapes."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..expression.noun import Noun
from ..model.book import Book, Character

BY_WORDS = ("mass", "length", "capacity")
"""What a fact of the cast may be a measure of by the words that say what it means; money and time show in its unit."""


@dataclass(frozen=True, slots=True)
class NumberFact:
    """A fact of the cast that is a whole number, and who has it."""

    id: str
    means: str
    unit: Noun
    """What it counts, in the plural; empty where the book does not say."""
    of: str
    """``mass``, ``length``, ``capacity``, ``money`` or ``time``; else ``count``."""
    of_body: bool
    """Whether it belongs to a body, as legs do."""
    who: tuple[Character, ...]
    """Those of the cast who have it, in the book's order."""
    values: Mapping[str, int]
    """By a character's id."""
    bearer: str = ""
    """What of theirs is measured, where it is not they themselves: a plank they bring."""

    @property
    def things(self) -> Noun:
        """What is counted; the fact's own name where it has no unit."""
        return self.unit or Noun(self.id.replace("_", " ").replace("-", " "))


@dataclass(frozen=True, slots=True)
class YesNoFact:
    """A fact that is true of some of the cast and not of others; everyone has it."""

    id: str
    means: str


@dataclass(frozen=True, slots=True)
class NamedFact:
    """A fact that is a word, such as a day or a shape, and who has it."""

    id: str
    means: str
    who: tuple[Character, ...]
    values: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Counted:
    """So many things, as the story or the book's notes count them."""

    number: int
    things: Noun
    pages: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Grouped:
    """Equal groups of so many, as the story or the notes tell them: boxes of 4."""

    each: int
    holders: Noun
    pages: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class TimeTold:
    """A time of the clock, and what happens then where a few words say it."""

    minutes: int
    """After midnight, morning where the story does not say."""
    page: int
    """0 for a fact of the cast."""
    event: str


@dataclass(frozen=True, slots=True)
class Measured:
    """An amount in a standard unit."""

    number: int
    unit: str
    kind: str
    """As in ``model/quantity.py``: ``length``."""
    pages: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Material:
    """Everything of a book that ideas are made of; nothing of its sessions."""

    id: str
    """Of the book."""
    folder: str
    """The book's inside ``content/``."""
    book: Book
    numbers: tuple[NumberFact, ...]
    """Facts of the most characters first."""
    yes_no: tuple[YesNoFact, ...]
    named: tuple[NamedFact, ...]
    counted: tuple[Counted, ...]
    """What the cast counts too first, then as the book goes on; what a whole cast has together is among them."""
    grouped: tuple[Grouped, ...]
    times: tuple[TimeTold, ...]
    """In the order of the book, each once."""
    measured: tuple[Measured, ...]
    shapes: tuple[str, ...]
    """Names from the set of shapes."""
    parts: tuple[int, ...]
    """The parts that the book speaks of, such as 3 for thirds; the most often first."""
    coins: tuple[int, ...]
    """What the coins and notes of the country are worth, in its smallest."""
    noted: Mapping[str, tuple[str, ...]]
    """The concepts that the book's notes see, by id, with their pages as they are written; the most often noted first."""

    def notes(self, *concepts: str) -> bool:
        """Whether the book's notes see one of these."""
        return any(concept in self.noted for concept in concepts)

    def of(self, *measures: str) -> tuple[NumberFact, ...]:
        """The number facts that are of one of these."""
        return tuple(fact for fact in self.numbers if fact.of in measures)
