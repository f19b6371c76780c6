"""Number bonds: every pair or triple of parts that makes a whole, a missing part, or the whole."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind
from ..own_words import without_stale_words
from .solve import solve
from .tasks import Bond, BondsTask, CastTask, MissingTask, SplitTask, WholeTask
from .versions import steps_of, versions_of


class Bonds(Kind[BondsTask, Bond]):
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
    tasks = (SplitTask, MissingTask, WholeTask, CastTask)

    def schema_for(self, raw: Mapping[str, Any]) -> type[ActivityFields]:
        """Characters with a fact bring their own numbers; else the task is told by whether whole and parts are known."""
        if raw.get("fact") is not None:
            return CastTask
        if "known" in raw:
            return MissingTask if "whole" in raw else WholeTask
        return SplitTask

    def solve(self, fields: BondsTask, context: Context) -> Solution[Bond]:
        """Every way, the first part rising from its smallest, then the second."""
        return solve(fields, context)

    def steps_of(self, fields: BondsTask, context: Context) -> int:
        """Where characters are chosen, each choice is looked at."""
        return steps_of(fields, context)

    def versions(
        self, fields: BondsTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[BondsTask, Context, str]]:
        """Wholes that suit the year, in its ones, tens or hundreds; with a fact, the cast's numbers remade."""
        yield from without_stale_words(fields, context, versions_of(fields, context, year))


KIND = Bonds()
