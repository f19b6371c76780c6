"""Sequences: counting in steps with gaps, repeating patterns, what comes at a place, and the mistake in a row."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Exact, Kind, Unsolvable
from ..own_words import without_stale_words
from .numbers import numbers_solved
from .patterns import pattern_solved
from .versions import versions_of

Place = Annotated[int, Field(ge=1, le=1_000_000, strict=True)]


class SequenceFields(ActivityFields):
    """Either ``terms``, which are numbers, or a ``pattern`` of characters or things.

    Asked for is, by what is written: the mistake; what comes at ``places``; which numbers are ``said``; else what
    stands in the gaps, or, in a pattern without gaps, the unit.
    """

    terms: Annotated[tuple[Exact | Literal["___"], ...], Field(max_length=24)] = ()
    """Numbers in a row; ``___`` for a gap."""
    rule: Literal["step", "growing", "times"] = "step"
    """What numbers do: equal steps; steps that grow by the same each time; so many times the one before."""
    step: Exact | None = None
    """The step, below nought when counting back. Needed only where one term is known."""
    pattern: Annotated[tuple[Text, ...], Field(max_length=40)] = ()
    """Things that repeat, by a character's id or any word; ``___`` for a gap."""
    places: Annotated[tuple[Place, ...], Field(max_length=12)] = ()
    """Places asked about, the first being 1."""
    said: Annotated[tuple[Exact, ...], Field(max_length=24)] = ()
    """Numbers asked about: which are said in the count, if it goes on?"""
    mistake: bool = False
    """Whether one term is wrong and is to be found and put right."""


class Sequence(Kind[SequenceFields]):
    """Steps: one to find the rule or unit, one for each thing to be found (counted once where each is an answer)."""

    name = "sequence"
    says = "Go on with a count or a pattern: fill its gaps, find what comes at a place, find the mistake."
    answer_shape = (
        "{terms: [2, 4, 6], gaps: [4]} for gaps, with unit: [gull, crab] in a pattern; {unit: [gull, crab]}; "
        "{place: 10, term: 20}; {said: 24, place: 4}; {place: 3, is: 7, should_be: 6}"
    )
    example = """\
kind: sequence
title: The parade along the wall
ask: They stand along the harbour wall in a repeating pattern. Who stands at the 12th, the 20th and the 31st post?
cast:
  gull: {legs: 2}
  crab: {legs: 10}
  puffin: {legs: 2}
pattern: [gull, crab, crab, puffin, crab, gull, crab, crab, puffin, crab]
places: [12, 20, 31]
answers: 3
"""
    practises: ClassVar[Mapping[str, str]] = {
        "1NPV-1": "counts on and back in ones and fills the gaps",
        "1NF-2": "counts on and back in twos, fives and tens",
        "2NPV-2": "numbers before and after on a line, across the tens",
        "2MD-1": "counts in twos, fives and tens as steps of a table",
    }
    fields = SequenceFields

    def solve(self, fields: SequenceFields, context: Context) -> Solution:
        """Every answer, in the order of the places or numbers asked about."""
        if len(context.characters) > context.caps.characters:
            message = f"{len(context.characters)} characters are more than one activity can hold."
            raise Unsolvable(("cast",), message, f"choose at most {context.caps.characters}.")
        if bool(fields.terms) == bool(fields.pattern):
            message = "There are terms and a pattern." if fields.terms else "There is nothing in a row."
            raise Unsolvable(("terms",), message, "write terms, which are numbers, or a pattern.", "activity-broken")
        asked = [name for name in ("places", "said", "mistake") if getattr(fields, name)]
        if len(asked) > 1:
            message = f'"{asked[0]}" and "{asked[1]}" ask for two things at once.'
            raise Unsolvable((asked[1],), message, "make them two activities.", "activity-broken")
        return numbers_solved(fields, context) if fields.terms else pattern_solved(fields, context)

    def versions(
        self, fields: SequenceFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[SequenceFields, Context, str]]:
        """Counts with a start and step of the year, still rising or falling; patterns with places nearer or further on."""
        yield from without_stale_words(fields, context, versions_of(fields, context, year))


KIND = Sequence()
