"""Judges a statement by trying every case, and finds what that demands."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from ...model.activity import Answer, Context, LikelyError, Line, Solution, Task
from ...model.demands import Demands, amounts, operation
from ...model.demands import Operation as Calculation
from ...model.year import YearLimits
from ..rule_language.reasons import demands_of_numbers, explain, find_reasons
from ..rule_language.tree import Operation, decider
from ..rule_language.words import signs_in_clause, tables_in, words_in
from . import say
from .cases_tried import Tried, choose_telling, try_all, value_or_none
from .draw import draw_cases
from .statement import Statement, read_statement
from .tasks import JudgeTask, NumberCase, Verdict

LISTED = 12
"""At most so many examples, and so many counter-examples, are listed in an answer."""


def solve(task: JudgeTask, context: Context) -> Solution[Verdict]:
    """The one answer: the verdict, with what shows it. Raises ``Unsolvable``."""
    statement, year = read_statement(task, context.caps), context.year
    tried = try_all(statement, context.caps)
    letters = task.statement is None
    told = [(so, choose_telling(cases)) for so, cases in ((True, tried.true), (False, tried.false)) if cases]
    when = {so: say.say_case(case, letters) for so, case in told}
    return Solution(
        task=Task(
            say.ask_to_judge(statement.letters, next(iter(context.characters), None)),
            context.characters[:1],
            lines=(Line((task.statement or say.say_statement(statement, year),)),),
        ),
        answers=(
            Answer(
                say.say_verdict(tried.verdict, tried.spoken_of, when.get(True, ""), when.get(False, ""), year),
                say.explain_verdict((so, when[so], explain(statement.then, case, year)) for so, case in told),
                judge(tried),
            ),
        ),
        demands=_demands(statement, tried, [case for _, case in told], year)
        | (_demands_of_letters(statement, year) if letters else Demands()),
        steps=len(statement.letters) + (statement.say is not None) + 1,
        note=say.note_on_trying(tried.spoken_of, tried.passed_over, task.because),
        likely_error=_find_error(tried, letters),
        answer_figures=draw_cases(statement, tried),
    )


def judge(tried: Tried) -> Verdict:
    """The verdict on what was tried."""
    return Verdict(
        verdict=tried.verdict,
        tried=tried.spoken_of,
        true=len(tried.true),
        false=len(tried.false),
        examples=tuple(tried.true[:LISTED]),
        counter_examples=tuple(tried.false[:LISTED]),
    )


def _find_error(tried: Tried, letters: bool) -> LikelyError | None:
    """Stopping early, or turning the statement round, when these numbers let it happen."""
    if tried.verdict == "sometimes":
        return say.expect_stopping_early(say.say_case(tried.first, letters), tried.first in tried.true)
    if not tried.outside:
        return None
    return say.expect_other_numbers(tried.verdict, say.say_case(choose_telling(tried.outside), letters))


def _demands_of_letters(statement: Statement, year: YearLimits) -> Demands:
    """What the statement demands where it is not in its author's words; cases are told as a = 3."""
    return Demands(signs=frozenset("=").union(*(signs_in_clause(rule, year) for rule in statement.rules)))


def _demands(statement: Statement, tried: Tried, told: Sequence[NumberCase], year: YearLimits) -> Demands:
    """What the numbers, the sums in every case and the reasons ask of a year."""
    ends = [numbers[i] for numbers in statement.letters.values() for i in (0, -1)]
    sums = tuple(_find_extremes(statement, tried))
    demands = Demands(
        amounts=amounts([*ends, *(value for case in told for value in case.values()), *(s.numbers[-1] for s in sums)]),
        operations=sums,
        tables=frozenset().union(*map(tables_in, statement.rules)),
    )
    for rule in statement.rules:
        demands |= demands_of_numbers(rule) | Demands(words=words_in(rule, year))
    for case in told:
        for reason in find_reasons(statement.then, case, year):
            demands |= reason.demands
    return demands


def _find_extremes(statement: Statement, tried: Tried) -> Iterator[Calculation]:
    """Each sum of the statement where it comes to the least and where it comes to the most."""
    cases = [*tried.true, *tried.false]
    for part in statement.parts:
        match part:
            case Operation(sign=("+" | "−" | "×" | "÷") as sign, left=left, right=right):
                work = decider(part)
                found = [(Fraction(value), case) for case in cases if (value := value_or_none(work, case)) is not None]
                for worth, case in dict((min(found, key=_worth), max(found, key=_worth))).items() if found else ():
                    yield operation(sign, decider(left)(case), decider(right)(case), worth)


def _worth(one: tuple[Fraction, NumberCase]) -> Fraction:
    return one[0]
