"""Statements that compare two sides: which are true, which sign belongs, which number fills the gap."""

from __future__ import annotations

from collections.abc import Iterator
from typing import ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import CompareTask, Comparison
from .versions import versions_of


class Compare(Kind[CompareTask, Comparison]):
    """Statements to judge or complete.

    Steps of thought: for the longest statement, every sign of calculation, and one to set the sides side by side.
    """

    name: ClassVar[str] = "compare"
    says: ClassVar[str] = (
        "Statements with =, ≠, < or > between two sides: true or not, or with a sign or a number missing."
    )
    answer_shape: ClassVar[str] = (
        '{"line": number from 1, "statement": completed, "fill": the sign or number, or "true"}, in the order of the lines'
    )
    tasks = (CompareTask,)
    example: ClassVar[str] = """\
kind: compare
title: Which loads are level?
fact: mass
cast:
  gull: {mass: 4}
  crab: {mass: 6}
  whelk: {mass: 7}
  seal: {mass: 13}
statements:
  - crab + whelk = seal
  - seal = gull + crab
  - seal + gull = crab + whelk + gull
  - whelk + gull < seal
answers: 3
years: {1: {}, 3: {}}
"""
    practises: ClassVar[dict[str, str]] = {
        "1NPV-2": "two numbers compared with <, > and =",
        "1AS-2": "= read as “is worth the same as”, wherever the sum stands",
        "2AS-1": "both sides added across ten before they are compared",
        "2AS-2": "how much more one side is than the other",
        "2AS-4": "two-digit numbers added on both sides",
    }

    def solve(self, fields: CompareTask, context: Context) -> Solution[Comparison]:
        """Line by line; where several numbers fill a gap, the smallest first."""
        return solve(fields, context)

    def steps_of(self, fields: CompareTask, context: Context) -> int:
        """Each line is worked out on both sides."""
        return 60 * len(fields.statements)

    def versions(
        self, fields: CompareTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[CompareTask, Context, str]]:
        """Versions in which the same lines are true and the same signs belong."""
        yield from versions_of(fields, context, year)


KIND = Compare()
