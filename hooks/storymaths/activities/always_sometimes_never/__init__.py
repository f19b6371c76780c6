"""Always, sometimes or never true: a statement about whole numbers, tried in every case of a stated stretch."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar

from ...model.activity import Answer, Context, Solution
from ...model.fields import Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind, Unsolvable
from ..met import as_task
from .case_report import (
    LISTED,
    ask_of,
    figures_of,
    line_of,
    note_of,
    slip_of,
    uses_of,
    verdict_data,
    verdict_says,
    verdict_worked,
)  # fmt: skip
from .case_statement import OverNumbers, Statement, up_to


class AlwaysFields(ActivityFields):
    """A statement ``if say, then then`` about letters that stand for whole numbers."""

    say: Text | None = None
    """What the statement supposes, such as ``odd(a) and odd(b)``; it speaks of every case when left out."""
    then: Text
    """What it claims, such as ``even(a + b)``."""
    over: OverNumbers = "1 to 20"
    """The whole numbers every letter stands for, ``1 to 20`` or a list; or these letter by letter."""
    statement: Text | None = None
    """The statement in the author's own words."""
    because: Text | None = None
    """The reason behind it, for the adult: trying is not a proof."""


class AlwaysSometimesNever(Kind[AlwaysFields]):
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
    tasks = (AlwaysFields,)
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

    def solve(self, fields: AlwaysFields, context: Context) -> Solution:
        """The one answer: the verdict, with what shows it."""
        statement, year = _statement(fields, context), context.year
        tried = statement.tried
        letters = fields.statement is None
        why = verdict_worked(statement, year, letters)
        answer = Answer(verdict_says(tried, letters), why, verdict_data(tried))
        line = fields.statement or line_of(statement, year)
        task = as_task(fields.ask or ask_of(statement, context), context.characters[:1], lines=(line,))
        demands = uses_of(statement, (task.ask, line, answer.worked), year)
        steps = len(statement.letters) + (1 if statement.say else 0) + 1
        note = note_of(tried, fields.because)
        return Solution(task, (answer,), demands, steps, note, slip_of(tried, letters), tuple(figures_of(statement)))

    def versions(
        self, fields: AlwaysFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[AlwaysFields, Context, str]]:
        """The same statement over a stretch of numbers that suits the year, while the verdict stays the same."""
        if year.year == context.year.year:
            yield fields, context, "The same numbers."
        verdict = _statement(fields, context).tried.verdict
        for top in (100, 50, 20, 12, 10, 6, 5):
            if top > min(year.largest_calculated, year.largest_number):
                continue
            changed = fields.model_copy(update={"over": up_to(fields.over, top)})
            try:
                if _statement(changed, context).tried.verdict == verdict:
                    yield changed, context, f"Numbers up to {top}."
            except Unsolvable:
                continue
        yield fields, context, "The same numbers."


def _statement(fields: AlwaysFields, context: Context) -> Statement:
    if len(context.characters) > context.caps.characters:
        raise Unsolvable(("cast",), "There are too many characters.", "name the one who says it.")
    return Statement(fields.say, fields.then, fields.over, context.caps)


KIND = AlwaysSometimesNever()
