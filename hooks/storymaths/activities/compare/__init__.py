"""Statements that compare two sides: which are true, which sign belongs, which number fills the gap."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Answer, Context, Solution, Task
from ...model.fields import Text
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind, Unsolvable, whole_fact
from .gap import numbers_for
from .statement import SIGN_GAP, Statement, read_statement
from .told import Completed, in_unit
from .versions import versions_of
from .words import ask, demands, figures, likely_error, note

Sign = Literal["=", "≠", "<", ">"]
_ALL: tuple[Sign, ...] = ("<", "=", ">")


class CompareFields(ActivityFields):
    """Fields of a comparison."""

    statements: Annotated[tuple[Text, ...], Field(min_length=1, max_length=20)]
    """Each compares sides that are sums of numbers, amounts or characters: ``6 + 3 = 5 + 4`` to be judged,
    ``6 + 3 ? 8`` with the sign missing, ``6 + 3 = ___ + 4`` with a number missing."""
    signs: Annotated[tuple[Sign, ...], Field(min_length=2)] = _ALL
    """The signs to choose from where one is missing."""
    unit: str | None = None
    """The unit of the fact that characters stand for; the book's own if not stated."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What came of one statement: its true completions, or the false statement put right."""

    statement: Statement
    answers: tuple[Answer, ...]
    completed: tuple[Completed, ...]
    false: Completed | None = None


class Compare(Kind[CompareFields]):
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
    fields = CompareFields
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

    def solve(self, fields: CompareFields, context: Context) -> Solution:
        """Line by line; where several numbers fill a gap, the smallest first."""
        outcomes = self._outcomes(fields, context)
        answers = tuple(answer for outcome in outcomes for answer in outcome.answers)
        if len(answers) > context.caps.answers:
            raise Unsolvable(
                ("statements",),
                f"There are {len(answers):,} answers in all.",
                "write fewer statements, or close the gaps in from both sides.",
                "activity-too-many-answers",
            )
        statements = [outcome.statement for outcome in outcomes]
        values = _values(fields, context)
        shows = tuple(values[character.id] for character in context.characters) if values else ()
        task = Task(
            ask=ask(statements, fields.signs),
            characters=context.characters if shows else (),
            shows=shows,
            lines=tuple(statement.text for statement in statements),
            figures=figures(statements),
        )
        return Solution(
            task=task,
            answers=answers,
            demands=demands(task, outcomes, fields.signs, context.year),
            steps=max(statement.calculations for statement in statements) + 1,
            note=note(outcomes, context.year),
            likely_error=likely_error(outcomes),
        )

    def _outcomes(self, fields: CompareFields, context: Context) -> list[Outcome]:
        if len(context.characters) > context.caps.characters:
            message = f"{len(context.characters)} characters are too many for one activity."
            raise Unsolvable(("cast",), message, f"choose at most {context.caps.characters}.")
        values = _values(fields, context)
        read = [
            read_statement(text, values, context.caps.number, ("statements", index))
            for index, text in enumerate(fields.statements)
        ]
        return [_outcome(statement, line, fields, context) for line, statement in enumerate(read, start=1)]

    def versions(
        self, fields: CompareFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[CompareFields, Context, str]]:
        """Versions in which the same lines are true and the same signs belong; see ``compare_versions``."""
        yield from versions_of(self, fields, context, year)


def _values(fields: CompareFields, context: Context) -> dict[str, str]:
    """What each character stands for, by name and by id; empty where no fact is stated."""
    if not fields.fact or not context.characters:
        return {}
    about = context.facts.get(fields.fact)
    unit = fields.unit if fields.unit is not None else about.unit if about else ""
    numbers = whole_fact(context, fields.fact, ("cast",))
    values = {
        character.id: f"{numbers[character.id]:,} {unit}" if unit in UNITS else f"{numbers[character.id]:,}"
        for character in context.characters
    }
    return values | {character.name: values[character.id] for character in context.characters}


def _outcome(statement: Statement, line: int, fields: CompareFields, context: Context) -> Outcome:
    if statement.gap_side is not None:
        filled = numbers_for(statement, context.year.largest_number, min(fields.at_most, context.caps.answers))
        as_fraction = "/" in " ".join(statement.sides) and "." not in " ".join(statement.sides)
        fills = [in_unit(number, unit, as_fraction) for number, unit in filled]
        done = [(Completed.of(statement, statement.signs, fill), fill) for fill in fills]
    elif statement.sign_gap is not None:
        done = [(completed, sign) for sign in fields.signs for completed in _with_sign(statement, sign)]
    else:
        completed = Completed.of(statement, statement.signs)
        if not completed.holds():
            return Outcome(statement, (), (), completed)
        done = [(completed, "true")]
    answers = tuple(
        Answer(completed.text, completed.worked(), {"line": line, "statement": completed.text, "fill": fill})
        for completed, fill in done
    )
    return Outcome(statement, answers, tuple(completed for completed, _ in done))


def _with_sign(statement: Statement, sign: str) -> Iterator[Completed]:
    signs = tuple(sign if given == SIGN_GAP else given for given in statement.signs)
    completed = Completed.of(statement, signs)
    if completed.holds():
        yield completed


KIND = Compare()
