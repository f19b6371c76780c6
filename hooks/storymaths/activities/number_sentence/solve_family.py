"""Fact families worked out: every family that the given numbers belong to."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...expression.tree import Number
from ...model.activity import Answer, Context, Figure, Line, Solution, Task
from ...model.demands import Demands, operation
from ...model.figures.amounts import PartWhole
from ..arithmetic import cards_of, demand_numbers, find_tables
from ..kind import Unsolvable
from ..saying import listed, written
from ..sentences import as_line, signs_in
from . import say_family as say
from .filled import PLACES
from .tasks import UNDOES, Family, FamilyTask, NumberSentenceAnswer


def solve_family(task: FamilyTask, context: Context) -> Solution[NumberSentenceAnswer]:
    """Every family the given numbers belong to, the missing number rising. Raises ``Unsolvable``."""
    families = _find_families(task, context)
    numbers = [Number(number, written(number, PLACES)) for family in families for number in family.numbers]
    signs = [[sign for sentence in family.sentences() for sign in signs_in(sentence).elements()] for family in families]
    lines: list[Line] = [as_line((None, sign, None, "=", None)) for sign in (task.family_of, UNDOES[task.family_of])]
    return Solution(
        task=Task(say.ask_for(task), lines=tuple(lines), figures=_draw(task, families)),
        answers=tuple(Answer(say.say_family(family), say.explain(family), family) for family in families),
        demands=_demands(task, families, context) | demand_numbers(numbers),
        steps=2 + len(families),
        note=say.explain_all(task),
        likely_error=say.find_error(families[0]),
        cards=cards_of(numbers, signs),
    )


def _demands(task: FamilyTask, families: Sequence[Family], context: Context) -> Demands:
    operations = [operation(family.sign, *family.numbers) for family in families]
    taken = [operation(UNDOES[family.sign], family.whole, *family.parts) for family in families]
    return Demands(
        operations=(*operations, *taken),
        signs=frozenset({task.family_of, UNDOES[task.family_of], "="}),
        words=tuple(say.find_words(task)),
        tables=find_tables(operations, context.year),
    )


def _find_families(task: FamilyTask, context: Context) -> list[Family]:
    known, sign = task.known, task.family_of
    if len(known) < 2:
        raise Unsolvable(("family",), "Two of the three numbers have to be known.", "leave out one at most.")
    if known[0] < 0 or (sign == "×" and (known[0] <= 0 or any(number.denominator > 1 for number in known))):
        unfit = next((number for number in known if number.denominator > 1), known[0])
        shown = written(unfit, PLACES)
        raise Unsolvable(("family",), f"{shown} cannot stand in this family.", "use whole numbers from 1.")
    a, b = known[0], known[1]
    if len(known) == 3:
        if (a + b if sign == "+" else a * b) != known[2]:
            small, large, whole = (written(number, PLACES) for number in known)
            message = f"{listed([small, large, whole])} are no family: {small} {sign} {large} ≠ {whole}."
            raise Unsolvable(("family",), message, "correct one of the three numbers.")
        return [Family((a, b), known[2], sign)]
    families = list(dict.fromkeys(_with_missing(task, a, b)))
    if families[-1].whole > context.caps.number:
        raise Unsolvable(("family",), f"The whole would be beyond {context.caps.number:,}.", "use smaller numbers.")
    return families


def _with_missing(task: FamilyTask, small: Fraction, large: Fraction) -> list[Family]:
    """The families of two numbers: the missing one a part, then the whole."""
    if task.family_of == "+":
        return [Family(_rising(small, large - small), large, "+"), Family((small, large), small + large, "+")]
    found = [Family((small, large), small * large, "×")]
    if (large / small).denominator == 1:
        found.insert(0, Family(_rising(small, large / small), large, "×"))
    return found


def _rising(one: Fraction, other: Fraction) -> tuple[Fraction, Fraction]:
    return min(one, other), max(one, other)


def _draw(task: FamilyTask, families: Sequence[Family]) -> tuple[Figure, ...]:
    if task.family_of != "+" or len(task.known) < len(task.family):
        return ()
    a, b, whole = (written(number, PLACES) for number in families[0].numbers)
    return (Figure(PartWhole(whole, (a, b)), f"A part–whole model: the whole is {whole}, the parts are {a} and {b}."),)
