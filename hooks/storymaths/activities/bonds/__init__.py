"""Number bonds: every pair or triple of parts that makes a whole, a missing part, or the whole."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Id, Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind
from ..own_words import without_stale_words
from .found import bonds_in
from .told import told
from .versions import versions_of

Number = Annotated[int, Field(ge=0, le=10_000_000, strict=True)]


class BondsFields(ActivityFields):
    """With a ``fact``, the parts are the numbers of characters; with a cast alone, the characters hold the parts."""

    whole: Number | Id | None = None
    """The whole; a character's id stands for its fact. Left out when the parts are known and the whole is asked for."""
    parts: Annotated[int, Field(ge=2, le=5, strict=True)] = 2
    """How many parts; with a cast that holds them, as many as it has characters."""
    known: tuple[Number, ...] = ()
    """Parts that are given; a cast holds them in its order, the first character the first part."""
    smallest: Number = 0
    """The least a part may be."""
    largest: Number | None = None
    """The most a part may be; if not stated, the whole."""
    step: Annotated[int, Field(ge=1, le=1_000_000, strict=True)] = 1
    """Parts are multiples of this: 10 for tens."""
    different: bool = False
    """Whether no two parts may be the same."""
    order: Literal["same", "counts"] = "same"
    """Whether 3 and 4 is another way than 4 and 3. Where characters hold the parts, it always counts."""
    things: Text | None = None
    """What is split, such as shells, in words."""


class Bonds(Kind[BondsFields]):
    """Steps: one for each part but the last, one more when every way is to be found."""

    name = "bonds"
    says = "Split a whole into parts in every way, in order; or find a missing part, or the whole."
    answer_shape = (
        "{whole: 7, parts: [3, 4]}: the parts rising, or in order where order counts; with a cast also "
        "who: [gull, crab], whose part is which"
    )
    example = """\
kind: bonds
title: Ballast for the rowing boat
ask: The boat wants 20 stones, no more and no fewer. Which three friends can bring them?
fact: stones
cast:
  gull: {stones: 3}
  crab: {stones: 5}
  limpet: {stones: 7}
  puffin: {stones: 8}
  whelk: {stones: 10}
  seal: {stones: 12}
whole: 20
parts: 3
answers: 3
"""
    practises: ClassVar[Mapping[str, str]] = {
        "1NF-1": "pairs that make a number to ten",
        "1AS-1": "splits a number to ten into two parts in every way",
        "2NF-1": "pairs that make a number to ten, again and quickly",
        "2AS-1": "parts that make a number past ten",
        "2AS-3": "tens that make a hundred",
        "2NPV-1": "splits a two-digit number in more than one way",
    }
    fields = BondsFields

    def solve(self, fields: BondsFields, context: Context) -> Solution:
        """Every way, the first part rising from its smallest, then the second."""
        return told(fields, context, bonds_in(fields, context))

    def versions(
        self, fields: BondsFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[BondsFields, Context, str]]:
        """Wholes that suit the year, in its ones, tens or hundreds; with a fact, the cast's numbers remade."""
        yield from without_stale_words(fields, context, versions_of(fields, context, year))


KIND = Bonds()
