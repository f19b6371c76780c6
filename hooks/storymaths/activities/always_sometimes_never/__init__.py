"""Always, sometimes or never true: a statement about whole numbers, tried in every case of a stated stretch."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import LISTED, solve
from .tasks import JudgeTask, Verdict
from .versions import versions_of


class AlwaysSometimesNever(Kind[JudgeTask, Verdict]):
    """Steps: one for each letter a number is chosen for, one for the if-part, one for the verdict."""

    name = "always-sometimes-never"
    says = "A statement about whole numbers: is it true always, sometimes or never, and what shows it?"
    answer_shape = (
        "{verdict: always | sometimes | never, tried: 100, true: 25, false: 0, examples: [{a: 1, b: 3}], "
        f"counter_examples: []}}; each list holds the first {LISTED} at most"
    )
    practises: ClassVar[Mapping[str, str]] = {
        "1AS-1": "odd and even numbers, joined and judged",
        "1NF-2": "numbers met when counting in twos, fives and tens",
        "2NF-1": "facts within ten, said about every number at once",
        "2AS-1": "adding across ten, case after case",
    }
    tasks = (JudgeTask,)
    example = """\
kind: always-sometimes-never
title: What Puffin says about odd numbers
cast:
  puffin: {beak: true}
say: odd(a) and odd(b)
then: even(a + b)
over: 1 to 10
statement: When you add two odd numbers, the answer is even.
because: >-
  Each odd number is pairs and one more. Put the two odd ones together and they make a pair, so nothing is left over.
years: {1: {}, 3: {}}
answers: 1
"""

    def solve(self, fields: JudgeTask, context: Context) -> Solution[Verdict]:
        """The one answer: the verdict, with what shows it."""
        return solve(fields, context)

    def versions(
        self, fields: JudgeTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[JudgeTask, Context, str]]:
        """The same statement over a stretch of numbers that suits the year, while the verdict stays the same."""
        return versions_of(fields, context, year)


KIND = AlwaysSometimesNever()
