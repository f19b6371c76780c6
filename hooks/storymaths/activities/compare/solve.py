"""Statements worked out: which are true, every sign and number that makes one true, and what it demands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from ...expression.tokens import Token
from ...expression.tree import Number, numbers_in
from ...model.activity import Answer, Context, Figure, Line, Shown, Solution, Task
from ...model.demands import Demands
from ...model.figures.amounts import TwoBars
from ...model.quantity import UNITS
from ..arithmetic import cards_of, demand_numbers, find_operations, find_tables
from ..kind import Unsolvable, whole_fact
from . import say
from .completed import Completed, Filling, number_in, write_amount
from .gap import fillings_for
from .statement import GAP, SIGN_GAP, Statement, read_statement, whole_terms
from .tasks import CompareTask, Comparison, Outcome


def solve(task: CompareTask, context: Context) -> Solution[Comparison]:
    """Line by line; where several numbers fill a gap, the smallest first. Raises ``Unsolvable``."""
    outcomes = find_outcomes(task, context)
    found = [one for outcome in outcomes for one in outcome.found]
    if len(found) > context.caps.answers:
        raise Unsolvable(
            ("statements",),
            f"There are {len(found):,} answers in all.",
            "write fewer statements, or close the gaps in from both sides.",
            "activity-too-many-answers",
        )
    statements = [outcome.statement for outcome in outcomes]
    numbers = list(_numbers_of(task, context).values())
    laid = [*numbers, *(number for outcome in outcomes for number in _numbers_in(outcome))]
    return Solution(
        task=Task(
            ask=say.ask_for(statements, task.signs),
            characters=context.characters if numbers else (),
            shows=tuple(Shown(write_amount(one), Fraction(one.shown.replace(",", ""))) for one in numbers),
            lines=tuple(Line(tuple(statement.text.split(GAP))) for statement in statements),
            figures=_draw(statements) if len(statements) == 1 else (),  # beside another line it tells an untruth
        ),
        answers=tuple(Answer(one.statement.text, say.explain(one.statement), one) for one in found),
        demands=_demands(task, outcomes, laid, context),
        steps=max(statement.calculations for statement in statements) + 1,
        note=say.explain_all(outcomes, context.year),
        likely_error=say.find_error(outcomes),
        cards=cards_of(laid, (signs for outcome in outcomes for signs in _signs_in(outcome))),
    )


def find_outcomes(task: CompareTask, context: Context) -> list[Outcome]:
    """What comes of each statement. Raises ``Unsolvable``."""
    names = _names(_numbers_of(task, context), context)
    read = [
        read_statement(text, names, context.caps.number, ("statements", index))
        for index, text in enumerate(task.statements)
    ]
    return [_find(statement, line, task, context) for line, statement in enumerate(read, start=1)]


def _numbers_of(task: CompareTask, context: Context) -> dict[str, Number]:
    """What each character stands for, by id; empty where no fact is stated."""
    if not task.fact or not context.characters:
        return {}
    about = context.facts.get(task.fact)
    unit = task.unit if task.unit is not None else about.unit if about else ""
    numbers = whole_fact(context, task.fact, ("cast",))
    return {id_: number_in(Fraction(number), unit if unit in UNITS else "") for id_, number in numbers.items()}


def _names(numbers: dict[str, Number], context: Context) -> dict[str, Token]:
    """A token for each way of writing a character: by id, and by name."""
    tokens = {
        id_: Token("name", write_amount(one), one.value, one.unit, number=one.shown) for id_, one in numbers.items()
    }
    return tokens | {character.name: tokens[character.id] for character in context.characters if tokens}


def _find(statement: Statement, line: int, task: CompareTask, context: Context) -> Outcome:
    if statement.gap_side is not None:
        fillings = fillings_for(statement, context.year.largest_number, min(task.at_most, context.caps.answers))
        filled = ((Completed.of(statement, statement.signs, fill), fill) for fill in fillings)
        return Outcome(statement, tuple(Comparison(line, completed, fill) for completed, fill in filled))
    if statement.sign_gap is not None:
        signed = [(_with_sign(statement, sign), sign) for sign in task.signs]
        return Outcome(
            statement, tuple(Comparison(line, completed, sign) for completed, sign in signed if completed.holds())
        )
    completed = Completed.of(statement, statement.signs)
    if completed.holds():
        return Outcome(statement, (Comparison(line, completed, "true"),))
    return Outcome(statement, (), completed)


def _with_sign(statement: Statement, sign: str) -> Completed:
    return Completed.of(statement, tuple(sign if given == SIGN_GAP else given for given in statement.signs))


def _numbers_in(outcome: Outcome) -> Iterator[Number]:
    """The numbers that are read in a line, or written in it."""
    trees = [tree for completed in outcome.completed for tree in completed.trees]
    yield from (number for tree in trees or outcome.statement.trees for number in numbers_in(tree))
    yield from (one.fill.number for one in outcome.found if isinstance(one.fill, Filling))


def _signs_in(outcome: Outcome) -> Iterator[tuple[str, ...]]:
    """The signs of each way a line is written."""
    operators = tuple(sign for side in outcome.statement.operators for sign in side)
    lines = [completed.signs for completed in outcome.completed] or [outcome.statement.signs]
    yield from ((*operators, *(sign for sign in line if sign != SIGN_GAP)) for line in lines)


def _demands(task: CompareTask, outcomes: Sequence[Outcome], laid: Sequence[Number], context: Context) -> Demands:
    """All that is read and worked out, the false lines included, for those are worked out too."""
    completed = [one for outcome in outcomes for one in outcome.completed]
    results = [number for one in completed for _, number in one.results()]
    operations = tuple(dict.fromkeys(step for one in completed for step in find_operations(one.trees)))
    signs = {sign for outcome in outcomes for line in _signs_in(outcome) for sign in line}
    if results and context.year.knows("="):
        signs.add("=")  # what a side comes to is written beside it
    to_choose = any(outcome.statement.sign_gap is not None for outcome in outcomes)
    return demand_numbers([*laid, *results]) | Demands(
        operations=operations,
        signs=frozenset(signs | (set(task.signs) if to_choose else set())),
        words=tuple(say.find_words([outcome.statement for outcome in outcomes])),
        tables=find_tables(operations, context.year),
    )


def _draw(statements: Sequence[Statement]) -> tuple[Figure, ...]:
    """Two bars for the first line whose sides are sums of whole numbers: as long as what they come to."""
    for statement in statements:
        if len(statement.trees) == 2 and statement.gap_side is None:
            top, bottom = map(whole_terms, statement.trees)
            if top and bottom:
                said = " and ".join(", then ".join(map(str, bar)) for bar in (top, bottom))
                return (Figure(TwoBars(top, bottom), f"Two bars, one above the other: {said}."),)
    return ()
