"""The tasks of number sentences, filling or judging some, a fact family, a choice of calculations, and what their answers are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any, ClassVar, Literal, Self

from pydantic import BeforeValidator, Field, PlainValidator

from ...expression.gapped import GappedSentence
from ...expression.number import read_stretch
from ...model.fields import Text
from ...model.plain import Plain
from ..given import Castless
from ..kind import ActivityFields, Exact
from ..saying import plain, written
from ..sentences import Sentence
from .filled import PLACES, Filled


def _gaps(value: Any) -> Any:
    if value == "cast" or isinstance(value, range):
        return value
    stretch = read_stretch(value) if isinstance(value, str) else None
    if stretch and stretch[0] <= stretch[1]:
        return range(stretch[0], stretch[1] + 1)
    if isinstance(value, (list, tuple)) and value and all(type(number) is int for number in value):
        return tuple(sorted(set(value)))
    raise ValueError('should be a range such as 0-20, a list such as [2, 5, 10], or "cast"')


Gaps = Annotated[
    range | tuple[int, ...] | Literal["cast"],
    PlainValidator(_gaps, json_schema_input_type=Literal["cast"] | tuple[int, ...] | str),
]
"""The numbers that may stand in gaps, in rising order; ``cast`` for the numbers of the characters."""

OneOrMore = Annotated[
    tuple[Text, ...],
    BeforeValidator(
        lambda value: (value,) if isinstance(value, str) else value, json_schema_input_type=tuple[Text, ...]
    ),
]
Sign = Literal["+", "−", "×", "÷", "=", "≠", "<", ">"]


class SentencesTask(ActivityFields):
    """``sentences`` to fill, or to judge."""

    task_name: ClassVar[str] = "sentences"

    sentences: Annotated[OneOrMore, Field(min_length=1, max_length=12)]
    """Number sentences; ``___`` stands for a missing number or sign, ``_`` in a number for a missing digit.

    A character's id stands for its ``fact``. One without any gap is to be judged true or not.
    """
    gaps: Gaps | None = None
    """What may stand in a gap for a number. Needed when more than one number would do."""
    each_once: bool = False
    """Whether no number may stand in two gaps of one sentence, as with cards. With ``gaps: cast`` nobody may."""
    swapped: Literal["counts", "same"] = "counts"
    """Whether the same numbers in other gaps are another answer."""
    signs: tuple[Sign, ...] = ()
    """Which signs may stand in a gap for one; if not stated, those the year has met (of the relations < = >,
    or = and ≠ before < and > are met)."""

    def with_sentences(self, sentences: tuple[str, ...]) -> Self:
        """The task with other lines."""
        return self.model_copy(update={"sentences": sentences})

    def with_gaps(self, gaps: tuple[int, ...]) -> Self:
        """The task with other numbers for the gaps."""
        return self.model_copy(update={"gaps": gaps})


class FamilyTask(ActivityFields):
    """A fact ``family``: every number sentence with one sign that three numbers make."""

    task_name: ClassVar[str] = "family"

    family: Annotated[tuple[Exact | Literal["___"], ...], Field(min_length=3, max_length=3)]
    """Three numbers of a fact family in any order; one may be missing, written ``___``."""
    family_of: Literal["+", "×"] = "+"
    """Whether the family adds and takes away, or multiplies and divides."""

    @property
    def known(self) -> tuple[Fraction, ...]:
        """The numbers that are given, the smallest first."""
        return tuple(sorted(number for number in self.family if isinstance(number, Fraction)))

    def with_known(self, known: tuple[int, ...]) -> Self:
        """The task with other numbers, given smallest first, each in the place of one of its own."""
        new = dict(zip(self.known, map(Fraction, known), strict=True))
        family = tuple(new[number] if isinstance(number, Fraction) else number for number in self.family)
        return self.model_copy(update={"family": family})


class ChoiceTask(Castless):
    """``choices`` of calculations: which of them answer a question, or check a calculation."""

    task_name: ClassVar[str] = "choices"

    choices: Annotated[tuple[Text, ...], Field(min_length=2, max_length=8)]
    """Calculations to choose from, such as ``[12 − 4, 12 + 4]``."""
    story: Text | None = None
    """What happens and what is asked: ``Gull has 12 fish and eats 4. How many are left?``"""
    makes: Text | None = None
    """The calculation that the story makes; every other way to write it is right too."""
    checks: Text | None = None
    """In place of a story, what is to be checked, such as ``15 − 7 = 8``."""

    @property
    def own_words(self) -> tuple[str, ...]:
        """The story too."""
        return tuple(filter(None, (self.ask, self.story)))


NumberSentenceTask = SentencesTask | FamilyTask | ChoiceTask


@dataclass(frozen=True, slots=True)
class Judged:
    """Whether a line without gaps is true."""

    line: int
    """From 1."""
    sentence: GappedSentence
    true: bool

    def as_filled(self) -> Filled:
        """The line as one that has nothing to fill."""
        return Filled(self.line, self.sentence, ())

    def as_plain(self) -> Plain:
        """As the kind documents it."""
        return {"line": self.line, "true": self.true}


UNDOES: Mapping[Literal["+", "×"], Literal["−", "÷"]] = {"+": "−", "×": "÷"}


@dataclass(frozen=True, slots=True)
class Family:
    """Two parts and their whole, or two factors and their product."""

    parts: tuple[Fraction, Fraction]
    whole: Fraction
    sign: Literal["+", "×"]

    @property
    def numbers(self) -> tuple[Fraction, Fraction, Fraction]:
        """The parts, then the whole."""
        return (*self.parts, self.whole)

    def sentences(self) -> tuple[Sentence, ...]:
        """Each sentence once: parts first, then the whole first, then undone; = at the end, then at the front."""
        (a, b), whole, undo = self.parts, self.whole, UNDOES[self.sign]
        made: list[tuple[Sentence, Fraction]] = [((a, self.sign, b), whole), ((b, self.sign, a), whole)]
        if self.sign == "+" or a:
            made += [((whole, undo, a), b), ((whole, undo, b), a)]
        ends: list[Sentence] = [(*sum_, "=", result) for sum_, result in made]
        fronts: list[Sentence] = [(result, "=", *sum_) for sum_, result in made]
        return tuple(dict.fromkeys((*ends, *fronts)))

    def as_plain(self) -> Plain:
        """As the kind documents it."""
        numbers: list[Plain] = [
            number.numerator if number.denominator == 1 else written(number, PLACES) for number in self.numbers
        ]
        return {"family": numbers, "sentences": [write_sentence(sentence) for sentence in self.sentences()]}


def write_sentence(sentence: Sentence) -> str:
    """A sentence of a family as it is written."""
    return " ".join(one if isinstance(one, str) else written(one or 0, PLACES) for one in sentence)


@dataclass(frozen=True, slots=True)
class Chosen:
    """A calculation that is right, and what it comes to."""

    choice: str
    comes_to: Fraction

    def as_plain(self) -> Plain:
        """As the kind documents it."""
        return {"choice": self.choice, "comes_to": plain(self.comes_to)}


NumberSentenceAnswer = Filled | Judged | Family | Chosen
