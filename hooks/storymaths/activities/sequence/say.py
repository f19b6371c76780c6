"""A row of numbers in words: what is asked, an answer, why, and how one knows that these are all."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from ...model.activity import GAP
from ...model.demands import Operation
from ...model.year import YearLimits
from ..ordinals import ordinal
from ..saying import capital, counted, listed, written
from ..sentences import write_calculation
from .number_rules import Rule, Times, place_of
from .steps import CountAlong, Jump, Working
from .tasks import (
    FilledRow,
    GapsTask,
    Known,
    Mistake,
    MistakeTask,
    PlacesTask,
    RowAnswer,
    RowTask,
    SaidNumber,
    SaidTask,
    TermAt,
)

_NAMED = {Fraction(2): "double", Fraction(1, 2): "halve"}
"""Multiplying that has a name of its own."""
_MOST_TOLD = 5


def write_terms(task: RowTask) -> list[str]:
    """The row as pupils see it, with its gaps."""
    return [number(term, task.decimals) if isinstance(term, Fraction) else GAP for term in task.terms]


def number(term: Fraction, places: int = 3) -> str:
    """A number of a row, with up to so many decimal places."""
    return written(term, places)


def ask_for(task: RowTask, rule: Rule) -> str:
    """The task."""
    match task:
        case MistakeTask():
            return "One number in the row is wrong. Which? Put it right."
        case SaidTask():
            count = f"Count on from {number(rule.at(1), task.decimals)}"
            if not isinstance(rule, Times):
                way, step = "on" if rule.step >= 0 else "back", number(abs(rule.step), task.decimals)
                count = f"Count {way} from {number(rule.at(1), task.decimals)} in steps of {step}"
            said = listed([number(one, task.decimals) for one in task.said], "or")
            return f"{count}. Which of these do you say: {said}?"
        case PlacesTask():
            places = listed([f"the {ordinal(place)}" for place in task.places])
            return f"The numbers go on in the same way. What {'is' if len(task.places) == 1 else 'are'} {places}?"
        case GapsTask():
            return "What are the missing numbers?" if len(task.gaps) > 1 else "What is the missing number?"


def find_words(task: RowTask, found: Sequence[tuple[RowAnswer, Rule]], workings: Sequence[Working]) -> tuple[str, ...]:
    """The words of the word bank in what is asked, and in the answers and why they are so."""
    counts = isinstance(task, SaidTask) or any(isinstance(one, CountAlong) for one in workings)
    doubles = any(
        isinstance(rule, Times) and rule.factor == 2 for value, rule in found if isinstance(value, (FilledRow, Mistake))
    )
    return (*(["count"] if counts else []), *(["double"] if doubles else []))


# The rule.


def say_rule(rule: Rule) -> str:
    """What is done each time."""
    if isinstance(rule, Times):
        if rule.factor < 1 and rule.factor.numerator == 1:
            return _NAMED.get(rule.factor, f"divide by {rule.factor.denominator}") + " each time"
        return _NAMED.get(rule.factor, f"multiply by {number(rule.factor)}") + " each time"
    step = number(abs(rule.step), rule.places)
    change = f"add {step}" if rule.step >= 0 else f"take away {step}"
    if not rule.grows:
        return f"{change} each time"
    return f"{change}, then {number(abs(rule.grows), rule.places)} {'more' if rule.grows > 0 else 'less'} each time"


def numbers_in_rule(rule: Rule) -> Iterator[Fraction]:
    """The numbers that are said with the rule."""
    if not isinstance(rule, Times):
        yield from (abs(rule.step), *([abs(rule.grows)] if rule.grows else []))
    elif rule.factor not in _NAMED:
        yield 1 / rule.factor if rule.factor < 1 and rule.factor.numerator == 1 else rule.factor


def explain_uneven(known: Known) -> str:
    """The first two steps that differ; for terms that follow no equal step."""
    shown = [
        (f"from {number(known[a])} to {number(known[b])}", (known[b] - known[a]) / (b - a))
        for a, b in pairwise(sorted(known))
    ]
    for (before, one), (after, other) in pairwise(shown):
        if one != other:
            return f"{before} each step is {number(abs(one))}, {after} {number(abs(other))}"
    return "the steps are not as stated"


# An answer, and why.


def say_answer(value: RowAnswer, places: int) -> str:
    """An answer as a person says it, its numbers with up to so many decimal places."""
    match value:
        case FilledRow():
            missing = listed([number(term, places) for term in value.gaps])
            return f"{missing} {'is' if len(value.gaps) == 1 else 'are'} missing"
        case TermAt():
            return f"The {ordinal(value.place)} number is {number(value.term, places)}"
        case SaidNumber():
            return f"Counting reaches {number(value.said, places)}"
        case Mistake():
            return f"{_shown(value.here, places)} should be {_shown(value.should_be, places)}"


def _shown(term: Fraction | str, places: int) -> str:
    return term if isinstance(term, str) else number(term, places)


def explain(value: RowAnswer, rule: Rule, workings: Sequence[Working], year: YearLimits) -> str:
    """Why it is so; of many gaps the first few, since the others go on in the same way."""
    told = workings if len(workings) <= _MOST_TOLD or not isinstance(value, FilledRow) else workings[: _MOST_TOLD - 1]
    why = "; ".join(_work_out(working, year, rule.places) for working in told)
    why += "; and so on" if len(told) < len(workings) else ""
    match value:
        case FilledRow() | Mistake():
            return f"{capital(say_rule(rule))}. {why}."
        case SaidNumber():
            return f"It is the {ordinal(value.place)} number: {why}."
        case TermAt() if any(isinstance(working, CountAlong) for working in workings):
            return f"Count along: {why}."
        case TermAt():
            return f"{why}."


def is_in_words(calculation: Operation, year: YearLimits) -> bool:
    """Whether the year tells such a step in words, and not with signs."""
    return calculation.sign in ("+", "−") and year.practice.sequence.tells_steps == "in words"


def _work_out(working: Working, year: YearLimits, places: int) -> str:
    match working:
        case CountAlong():
            first, last = ([number(one, places) for one in some] for some in (working.first, working.last))
            return ", ".join([*first, *(["…", *last] if last else [])])
        case Jump():
            there = "; ".join(write_calculation(one, places) for one in working.calculations)
            return f"{counted(working.steps, 'steps')} from {number(working.first, places)}: {there}"
        case Operation(sign=sign, numbers=numbers) if is_in_words(working, year):
            before, by, after = (number(one, places) for one in numbers)
            return f"{by} {'more' if sign == '+' else 'less'} than {before} is {after}"
        case Operation():
            return write_calculation(working, places)


def explain_all(task: RowTask, rule: Rule, values: Sequence[RowAnswer]) -> str:
    """How one knows that these are all; of numbers that are not said, why."""
    if isinstance(task, SaidTask):
        missed = [one for one in task.said if place_of(rule, one) is None]
        return " ".join(_explain_unsaid(rule, one) for one in missed) or "Counting reaches all of them."
    if isinstance(task, MistakeTask):
        if not values:
            return f"Nothing is wrong: {say_rule(rule)}."
        return "Leave out each number in turn: only without this one do the others follow one rule."
    return f"The numbers show the rule: {say_rule(rule)}."


def _explain_unsaid(rule: Rule, one: Fraction) -> str:
    unsaid = f"Counting misses {number(one, rule.places)}"
    if isinstance(rule, Times) or rule.step == 0:
        return f"{unsaid}: the numbers stay the same."
    gone = (one - rule.first) / rule.step
    if gone < 0:
        return f"{unsaid}: it comes before the start."
    below = rule.at(int(gone) + 1)
    return f"{unsaid}: after {number(below, rule.places)} comes {number(below + rule.step, rule.places)}."
