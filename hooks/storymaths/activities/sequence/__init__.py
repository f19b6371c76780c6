"""Sequences: counting in steps with gaps, repeating patterns, what comes at a place, and the mistake in a row."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from ..own_words import without_stale_words
from .solve import solve_row
from .solve_pattern import solve_pattern
from .tasks import (
    GapsTask,
    MistakeTask,
    PatternFields,
    PatternGapsTask,
    PatternMistakeTask,
    PatternPlacesTask,
    PlacesTask,
    SaidTask,
    SequenceAnswer,
    SequenceTask,
    UnitTask,
    schema_for,
)
from .versions import versions_of


class Sequence(Kind[SequenceTask, SequenceAnswer]):
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
    tasks = (
        GapsTask,
        PlacesTask,
        SaidTask,
        MistakeTask,
        UnitTask,
        PatternGapsTask,
        PatternPlacesTask,
        PatternMistakeTask,
    )

    def schema_for(self, raw: Mapping[str, Any]) -> type[SequenceTask]:
        """Told by whether there is a pattern, and by what is asked of it."""
        return schema_for(raw)

    def solve(self, fields: SequenceTask, context: Context) -> Solution[SequenceAnswer]:
        """Every answer, in the order of the places or numbers asked about."""
        return solve_pattern(fields, context) if isinstance(fields, PatternFields) else solve_row(fields, context)

    def versions(
        self, fields: SequenceTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[SequenceTask, Context, str]]:
        """Counts with a start and step of the year, still rising or falling; patterns with places nearer or further on."""
        yield from without_stale_words(fields, context, versions_of(fields, context, year))


KIND = Sequence()
