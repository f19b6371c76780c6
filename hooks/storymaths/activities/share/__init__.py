"""Equal sharing and grouping: how many each, how many groups, what is left over, every way, and whose can be shared."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind
from ..own_words import without_stale_words
from .solve import solve
from .tasks import (
    CastPilesTask,
    EachTask,
    GroupsTask,
    PartsTask,
    PilesTask,
    ShareAnswer,
    ShareTask,
    TotalTask,
    WaysTask,
)
from .versions import versions_of


class Share(Kind[ShareTask, ShareAnswer]):
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
    tasks = (WaysTask, EachTask, GroupsTask, TotalTask, PartsTask, PilesTask, CastPilesTask)

    def schema_for(self, raw: Mapping[str, Any]) -> type[ActivityFields]:
        """The task whose question is what is left out; characters without a fact are among whom it is shared."""
        cast_has_fact = raw.get("fact") is not None
        among = "among" in raw or (bool(raw.get("cast")) and not cast_has_fact)
        if "parts" in raw:
            return PartsTask
        if "piles" in raw:
            return PilesTask
        if cast_has_fact and "total" not in raw:
            return CastPilesTask
        if among:
            return TotalTask if "each" in raw and "total" not in raw else EachTask
        return GroupsTask if "each" in raw else WaysTask

    def solve(self, fields: ShareTask, context: Context) -> Solution[ShareAnswer]:
        """Every answer: groups rising, or in the order of the piles."""
        return solve(fields, context)

    def versions(
        self, fields: ShareTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[ShareTask, Context, str]]:
        """Totals in the tables of the year, leaving as many over as before."""
        yield from without_stale_words(fields, context, versions_of(fields, context, year))


KIND = Share()
