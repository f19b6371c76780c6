"""Number sentences with something missing: a number, a digit or a sign, on either side; and fact families."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from typing import Annotated, Any, ClassVar, Literal

from pydantic import BeforeValidator, Field, PlainValidator

from ...expression.number import read_stretch
from ...model.activity import Context, Solution
from ...model.fields import Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Exact, Kind, Unsolvable
from ..own_words import without_stale_words
from .fact_family import family_solution, family_versions
from .sentence_solution import solution_of
from .sentence_versions import remade


def _gaps(value: Any) -> Any:
    if value == "cast" or isinstance(value, range):
        return value
    stretch = read_stretch(value) if isinstance(value, str) else None
    if stretch and stretch[0] <= stretch[1]:
        return range(stretch[0], stretch[1] + 1)
    if isinstance(value, (list, tuple)) and value and all(type(number) is int for number in value):
        return tuple(sorted(set(value)))
    raise ValueError('should be a range such as 0-20, a list such as [2, 5, 10], or "cast"')


Gaps = Annotated[range | tuple[int, ...] | Literal["cast"], PlainValidator(_gaps)]
"""The numbers that may stand in gaps, in rising order; ``cast`` for the numbers of the characters."""

OneOrMore = Annotated[tuple[Text, ...], BeforeValidator(lambda value: (value,) if isinstance(value, str) else value)]
Sign = Literal["+", "−", "×", "÷", "=", "≠", "<", ">"]


class NumberSentenceFields(ActivityFields):
    """Either ``sentences`` or a ``family``."""

    sentences: Annotated[OneOrMore, Field(max_length=12)] = ()
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
    """Which signs may stand in a gap for one; if not stated, those the year has met (of the relations = and ≠,
    from Year 2 < = >)."""
    family: Annotated[tuple[Exact | Literal["___"], ...], Field(min_length=3, max_length=3)] | None = None
    """Three numbers of a fact family in any order; one may be missing, written ``___``."""
    family_of: Literal["+", "×"] = "+"
    """Whether the family adds and takes away, or multiplies and divides."""


class NumberSentence(Kind[NumberSentenceFields]):
    """Steps: the operations of the hardest sentence, one for each gap after its first, one more if a gap is undone.

    For a family: two, and one for each family.
    """

    name = "number-sentence"
    says = "Find the missing numbers, digits or signs of number sentences, or write out a fact family."
    answer_shape = (
        "{line: 1, gaps: [5, +], sentence: 7 + 5 = 12}: which sentence, what stands in its gaps from left to right, "
        "and the sentence filled in (with gaps: cast also who: [gull, crab]); {line: 1, true: false} for one without "
        "gaps; {family: [3, 4, 7], sentences: [...]} for a family"
    )
    example = """\
kind: number-sentence
title: Two for the weighing plank
ask: The plank is level when both ends are worth the same. Who can stand in the gaps?
fact: mass
cast:
  gull: {mass: 4}
  crab: {mass: 5}
  puffin: {mass: 8}
  seal: {mass: 9}
  limpet: {mass: 3}
sentences:
  - 7 + ___ + ___ = 20
gaps: cast
swapped: same
answers: 2
"""
    practises: ClassVar[Mapping[str, str]] = {
        "1AS-2": "reads and completes sentences with + − =, with = in any place",
        "1NF-1": "uses facts within ten to find a missing number",
        "2NF-1": "uses facts within ten to find a missing number",
        "2AS-1": "missing numbers where the sum crosses ten",
        "2AS-2": "how many more, as a missing number added",
        "2AS-3": "adds and takes away ones or tens",
        "2AS-4": "adds and takes away two-digit numbers",
        "2MD-2": "a missing factor, for how many groups",
    }
    tasks = (NumberSentenceFields,)

    def solve(self, fields: NumberSentenceFields, context: Context) -> Solution:
        """Every filling, sentence by sentence; in each, the first gap's number rising, then the next."""
        if bool(fields.sentences) == bool(fields.family):
            message = "There is nothing to work out." if not fields.family else "There are sentences and a family."
            raise Unsolvable(
                ("sentences",), message, "write sentences, or a family of three numbers.", "activity-broken"
            )
        if fields.family:
            return family_solution(fields.family, fields.family_of, context)
        return solution_of(fields, context)

    def versions(
        self, fields: NumberSentenceFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[NumberSentenceFields, Context, str]]:
        """Remade numbers and the same ones: the same first for a younger year, last for an older one."""
        yield from without_stale_words(fields, context, _versions(fields, context, year))


def _versions(
    fields: NumberSentenceFields, context: Context, year: YearLimits
) -> Iterator[tuple[NumberSentenceFields, Context, str]]:
    there = replace(context, year=year)
    harder = year.year > context.year.year
    if not harder:
        yield fields, there, "The same numbers."
    if year.year > 0:  # Reception has met no signs
        yield from family_versions(fields, there) if fields.family else remade(fields, context, year)
    if harder:
        yield fields, there, "The same numbers."


KIND = NumberSentence()
