"""Equal sharing and grouping: how many each, how many groups, what is left over, every way, and whose can be shared."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Id, Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind
from ..own_words import without_stale_words
from .found import shares_in
from .told import told
from .versions import versions_of

Whole = Annotated[int, Field(strict=True)]


class ShareFields(ActivityFields):
    """What is asked for is what is left out.

    ``total`` and ``among``: how many each. ``total`` and ``each``: how many groups. ``among`` and ``each``: how many
    altogether. ``total`` alone: every way of making equal groups. ``piles``, or a cast with a ``fact`` and no total:
    which can be shared. ``parts``: shares that are not equal, such as twice as many.
    """

    total: Whole | Id | None = None
    """How many things; a character's id stands for its fact."""
    things: Text | None = None
    """What they are, in the plural, such as shells."""
    among: Whole | None = None
    """How many groups, or children; a cast without a fact is shared among."""
    each: Whole | None = None
    """How many in each group."""
    left_over: Whole | None = None
    """How many are to be left over, where ways or piles are asked for; if not stated, none."""
    piles: Annotated[tuple[Whole, ...], Field(max_length=24)] = ()
    """Amounts of which some can be shared ``among`` so many, or put in groups of ``each``."""
    parts: Mapping[Id, Whole] = Field(default_factory=dict)
    """How many equal parts each character gets: ``{gull: 2, crab: 1}``."""
    fewest: Whole = 1
    """Every way: the fewest groups."""
    most: Whole | None = None
    """Every way: the most groups."""


class Share(Kind[ShareFields]):
    """Steps: one to share or group, one for what is left over, one more when every way is to be found."""

    name = "share"
    says = "Share things equally or put them in equal groups: how many each, what is left over, every way."
    answer_shape = (
        "{groups: 4, each: 5, left: 2}, with gets: {gull: 5, crab: 5} where characters share "
        "and total: 20 where that is asked for; {gets: {gull: 8, crab: 4}, left: 0} for parts; {pile: 12, groups: 2, "
        "each: 6, left: 0}, with who: gull for a character's pile"
    )
    example = """\
kind: share
title: Lamps for the fishing boats
ask: >-
  There are 20 lamps. The same number goes into each boat, more than one, and none stays behind. How many boats can
  there be, if there are more than one?
total: 20
things: lamps
fewest: 2
most: 10
answers: 4
"""
    practises: ClassVar[Mapping[str, str]] = {
        "1NF-2": "counts equal groups in twos, fives and tens",
        "1AS-1": "finds which amounts are odd and which even by sharing between two",
        "2MD-1": "equal groups as repeated addition and as a times sentence",
        "2MD-2": "how many groups, as a missing factor and as a division",
    }
    fields = ShareFields

    def solve(self, fields: ShareFields, context: Context) -> Solution:
        """Every answer: groups rising, or in the order of the piles."""
        return told(fields, context, shares_in(fields, context))

    def versions(
        self, fields: ShareFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[ShareFields, Context, str]]:
        """Totals in the tables of the year, leaving as many over as before."""
        yield from without_stale_words(fields, context, versions_of(fields, context, year))


KIND = Share()
