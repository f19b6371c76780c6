"""A session: one lesson taught from some pages of a book."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from .bend import Bend
from .fields import AdultText, Claims, Count, FileName, Minutes, PageRange, Pages, Strict, Text, Year
from .page_fields import Named, OfBook, names_in
from .picked import AreaId, BankWord, CautionId, ConceptId, MaterialId, ThemeId
from .prose import Loc

Per = Literal["child", "pair", "group", "class"]


class Stop(Strict):
    """A place to stop reading and talk: the very question, and answers one may hear."""

    page: Count
    """The page on which to stop."""
    ask: Text
    """The very question to ask."""
    hear: Annotated[tuple[Text, ...], Field(min_length=1)]
    """Answers you may hear, right and wrong, in children's words."""
    listen_for: Text | None = None
    """What a good answer has in it."""


class Reading(Strict):
    """Pages read aloud in one go, with the stops on the way."""

    pages: PageRange
    """The pages read in one go."""
    stops: tuple[Stop, ...] = ()
    """Where to stop and talk, in the order of the pages."""
    going_back: bool = False
    """true where these pages were read before."""


class Step(Strict):
    """A part of the session. The body holds what happens, under a heading of the same name."""

    name: Text
    """The name of the step. A heading of the same name stands in the text below."""
    minutes: Minutes
    """How long it takes. The steps add up to the minutes of the session."""
    models: tuple[MaterialId, ...] = ()
    """What an adult shows the use of in this step, from the list of materials."""
    alone: tuple[MaterialId, ...] = ()
    """What children use on their own in this step. An adult has shown it before."""


class NewAndAgain(Strict):
    """Words: met for the first time here, and used again as known."""

    new: tuple[BankWord, ...] = ()
    """Met for the first time."""
    again: tuple[BankWord, ...] = ()
    """Known already, and used again."""


def _sign(sign: str) -> str:
    if set(sign) & _QUOTES:
        raise ValueError('a sign stands between straight quotes, such as "="')
    return sign


_QUOTES = frozenset("“”‘’\"'")
Sign = Annotated[Text, AfterValidator(_sign)]


class Signs(Strict):
    """Signs met for the first time here, and used again as known."""

    new: tuple[Sign, ...] = ()
    """Met for the first time."""
    again: tuple[Sign, ...] = ()
    """Known already, and used again."""


class Task(Strict):
    """The main task from real things, through pictures, to symbols."""

    objects: Text
    """What children do with real things."""
    pictures: Text
    """What they draw."""
    symbols: Text
    """What they write in numbers and signs."""


class Misconception(Strict):
    """A wrong idea in a child's words, what it shows, and what to try at once."""

    says: Text
    """The wrong idea in a child's words."""
    shows: Text
    """What it tells you about the child's thinking."""
    try_this: Text = Field(alias="try")
    """What to do at once."""


class OwnDrawing(Strict):
    """A drawing of your own that a question points at, and what it shows, for those who cannot see it."""

    picture: FileName
    """The name of its file, which lies beside the page."""
    alt: Text
    """What it shows, for somebody who cannot see it."""


class ExitQuestion(Strict):
    """One question at the end that would catch a child who has not got it."""

    ask: Text
    """One question at the end that a child who has not got it cannot answer."""
    answer: Text
    """The answer, and what a wrong one tells."""
    picture: OwnDrawing | None = None
    """What the question points at, for the page and the printed slips."""


class Needed(Strict):
    """Something to get out of the cupboard, how many, and for whom."""

    item: MaterialId
    """What it is, from the list of materials."""
    count: Count = 1
    """How many."""
    per: Per = "class"
    """For each child, pair or group, or once for the class."""
    note: AdultText | None = None
    """A word about it, to whoever gets it ready."""

    def for_class(self, children: int, group_size: int) -> int:
        """How many are needed for a class of so many children, part groups counted whole."""
        size = {"child": 1, "pair": 2, "group": group_size, "class": max(children, 1)}[self.per]
        return self.count * -(-children // size)


class CautionNote(Strict):
    """The author's own note on one risk; the standard line is printed with it."""

    risk: CautionId
    """The risk, from the list of cautions."""
    note: Text
    """What you do about it here. The usual line is printed beside it."""


class SetOut(Strict):
    """What is set out in one area for the week, and what an adult says and sees while children play there."""

    area: AreaId
    """Where, from the list of areas."""
    put_out: Text
    """What is there when the children come."""
    say: Annotated[tuple[Text, ...], Field(min_length=1)]
    """What an adult says while they play, in the very words."""
    notice: Annotated[tuple[Text, ...], Field(min_length=1)]
    """What a child who has it says or does there."""


class Session(OfBook):
    """One lesson: what is read, asked, done and recorded, in the order it is taught."""

    kind: Literal["session"]
    number: Count
    """Its place among the sessions of the book."""
    year: Year
    """The school year it is planned for."""
    minutes: Minutes
    """How long it takes in all."""
    summary: Text
    group_size: Annotated[int, Field(ge=2, le=15, strict=True)] = 5
    """How many children are in a group. 5 if you say nothing."""
    objectives: Claims
    """What it teaches, by framework. After a code you can name the parts of it that are taught, or all."""
    revisits: Claims = Field(default_factory=dict)
    """Objectives of the year before, or taught by an earlier session, that are taken up again."""
    concepts: Annotated[tuple[ConceptId, ...], Field(min_length=1)]
    """The ideas it is about, from the list of concepts."""
    themes: tuple[ThemeId, ...] = ()
    """What the story touches in this session, from the list of themes."""
    reads: Annotated[tuple[Reading, ...], Field(min_length=1)]
    """What is read aloud, and where you stop to talk."""
    steps: Annotated[tuple[Step, ...], Field(min_length=1)]
    """The parts of the session, in their order."""
    set_out: tuple[SetOut, ...] = ()
    """What is set out for the week round the session, area by area. Reception has something set out with each."""
    words: NewAndAgain = NewAndAgain()
    """Words of the subject, from the word bank."""
    symbols: Signs = Signs()
    """Signs, in quotes."""
    task: Task
    """The main task, first with things, then in pictures, then in symbols."""
    stem_sentences: Annotated[tuple[Text, ...], Field(min_length=1)]
    """Sentences with ___ for children to finish aloud."""
    misconceptions: Annotated[tuple[Misconception, ...], Field(min_length=1)]
    """Wrong ideas to expect."""
    easier: Annotated[tuple[Text, ...], Field(min_length=1)]
    """How to carry less and keep the idea."""
    harder: Annotated[tuple[Text, ...], Field(min_length=1)]
    """How to go deeper with the same idea."""
    access: tuple[Text, ...] = ()
    """How children who hear, see, move, read or speak English differently join in."""
    look_for: Annotated[tuple[Text, ...], Field(min_length=1)]
    """What a child who has it says or does."""
    exit_question: ExitQuestion
    """The last question."""
    materials: tuple[Needed, ...] = ()
    """What to get ready."""
    cautions: tuple[CautionNote, ...] = ()
    """What to take care of."""
    bends: Mapping[Year, Bend] = Field(default_factory=dict)
    """What changes for another year, by year."""
    needs: tuple[Count, ...] = ()
    """Numbers of the sessions of this book that come first."""
    next: Text | None = None
    """What comes next, in a sentence to the class."""

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
        for index, area in enumerate(self.set_out):
            yield Named("areas", ("set_out", index, "area"), area.area)
        for index, caution in enumerate(self.cautions):
            yield Named("cautions", ("cautions", index, "risk"), caution.risk)

    def pages_named(self) -> Iterator[tuple[Loc, Pages]]:
        """What it reads."""
        for index, reading in enumerate(self.reads):
            yield ("reads", index, "pages"), reading.pages
