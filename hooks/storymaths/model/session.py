"""A session: one lesson taught from some pages of a book."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Literal

from pydantic import Field

from .bend import Bend
from .fields import AdultText, Claims, Count, Minutes, PageRange, Pages, Strict, Text, Year
from .page_fields import Named, OfBook, names_in
from .picked import BankWord, CautionId, ConceptId, MaterialId, ThemeId
from .prose import Loc

Per = Literal["child", "pair", "group", "class"]


class Stop(Strict):
    """A place to stop reading and talk: the very question, and answers one may hear."""

    page: Count
    ask: Text
    hear: Annotated[tuple[Text, ...], Field(min_length=1)]
    listen_for: Text | None = None


class Reading(Strict):
    """Pages read aloud in one go, with the stops on the way."""

    pages: PageRange
    stops: tuple[Stop, ...] = ()
    going_back: bool = False


class Step(Strict):
    """A part of the session. The body holds what happens, under a heading of the same name."""

    name: Text
    minutes: Minutes
    models: tuple[MaterialId, ...] = ()
    """Apparatus the adult shows the use of in this step."""
    alone: tuple[MaterialId, ...] = ()
    """Apparatus the children use on their own in this step."""


class WordsNewAndAgain(Strict):
    """Words of the word bank: met for the first time here, and used again as known."""

    new: tuple[BankWord, ...] = ()
    again: tuple[BankWord, ...] = ()


class NewAndAgain(Strict):
    """Symbols: met for the first time here, and used again as known."""

    new: tuple[Text, ...] = ()
    again: tuple[Text, ...] = ()


class Task(Strict):
    """The main task from real things, through pictures, to symbols."""

    objects: Text
    pictures: Text
    symbols: Text


class Misconception(Strict):
    """A wrong idea in a child's words, what it shows, and what to try at once."""

    says: Text
    shows: Text
    try_this: Text = Field(alias="try")


class ExitQuestion(Strict):
    """One question at the end that would catch a child who has not got it."""

    ask: Text
    answer: Text


class Needed(Strict):
    """Something to get out of the cupboard, how many, and for whom."""

    item: MaterialId
    count: Count = 1
    per: Per = "class"
    note: AdultText | None = None

    def for_class(self, children: int, group_size: int) -> int:
        """How many are needed for a class of so many children, part groups counted whole."""
        size = {"child": 1, "pair": 2, "group": group_size, "class": max(children, 1)}[self.per]
        return self.count * -(-children // size)


class CautionNote(Strict):
    """The author's own note on one risk; the standard line is printed with it."""

    risk: CautionId
    note: Text


class Session(OfBook):
    """One lesson: what is read, asked, done and recorded, in the order it is taught."""

    kind: Literal["session"]
    number: Count
    year: Year
    minutes: Minutes
    summary: Text
    group_size: Annotated[int, Field(ge=2, le=15, strict=True)] = 5
    objectives: Claims
    revisits: Claims = Field(default_factory=dict)
    """Objectives of the year before, taken up again here."""
    concepts: Annotated[tuple[ConceptId, ...], Field(min_length=1)]
    themes: tuple[ThemeId, ...] = ()
    reads: Annotated[tuple[Reading, ...], Field(min_length=1)]
    steps: Annotated[tuple[Step, ...], Field(min_length=1)]
    words: WordsNewAndAgain = WordsNewAndAgain()
    symbols: NewAndAgain = NewAndAgain()
    task: Task
    stem_sentences: Annotated[tuple[Text, ...], Field(min_length=1)]
    misconceptions: Annotated[tuple[Misconception, ...], Field(min_length=1)]
    easier: Annotated[tuple[Text, ...], Field(min_length=1)]
    harder: Annotated[tuple[Text, ...], Field(min_length=1)]
    access: tuple[Text, ...] = ()
    """How children who hear, see, move, read or speak English differently join in."""
    look_for: Annotated[tuple[Text, ...], Field(min_length=1)]
    exit_question: ExitQuestion
    materials: tuple[Needed, ...] = ()
    cautions: tuple[CautionNote, ...] = ()
    bends: Mapping[Year, Bend] = Field(default_factory=dict)
    needs: tuple[Count, ...] = ()
    """Numbers of the sessions of this book that come first."""
    next: Text | None = None

    @property
    def best_year(self) -> int:
        """The year it is planned for."""
        return self.year

    @property
    def other_years(self) -> tuple[int, ...]:
        """The years it bends to, the youngest first."""
        return tuple(sorted(self.bends))

    @property
    def place(self) -> int:
        """Its number."""
        return self.number

    def named(self) -> Iterator[Named]:
        """What it teaches and is about, its words, what is got out and shown, and what it cautions against."""
        yield from names_in("concepts", ("concepts",), self.concepts)
        yield from names_in("themes", ("themes",), self.themes)
        yield from names_in("words", ("words", "new"), self.words.new)
        yield from names_in("words", ("words", "again"), self.words.again)
        for index, needed in enumerate(self.materials):
            yield Named("materials", ("materials", index, "item"), needed.item)
        for row, step in enumerate(self.steps):
            yield from names_in("materials", ("steps", row, "models"), step.models)
            yield from names_in("materials", ("steps", row, "alone"), step.alone)
        for index, caution in enumerate(self.cautions):
            yield Named("cautions", ("cautions", index, "risk"), caution.risk)

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """What it reads."""
        for index, reading in enumerate(self.reads):
            yield ("reads", index, "pages"), reading.pages
