"""A row of numbers put into words and drawings: the task, and how one knows."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, Figure, Solution, Task
from ..met import demands_met
from ..ordinals import ordinal
from ..saying import listed, written
from ..tables_used import tables_of
from .number_rules import Rule, Steps, Times, place_of
from .slips import slip_in

if TYPE_CHECKING:
    from . import SequenceFields

_WORDS = ("count", "pattern", "sequence", "double", "next", "odd", "even")
_TALLEST, _MOST_TOWERS = 24, 8
"""Towers of squares are drawn up to this height and number."""


def told(fields: SequenceFields, context: Context, rule: Rule, answers: Sequence[Answer]) -> Solution:
    """The solution of a row of numbers whose rule and answers are found."""
    shown = [written(term, 3) if isinstance(term, Fraction) else "___" for term in fields.terms]
    numbers = ", ".join(shown)
    task = Task(
        ask=fields.ask or _ask(fields, rule),
        lines=(f"{numbers}, …" if fields.places or fields.said else numbers,),
        figures=_figures(fields, shown),
    )
    products: list[tuple[int | Fraction, int | Fraction]] = []
    if isinstance(rule, Steps) and not rule.grows and context.year.year >= 2:
        products = [(place - 1, abs(rule.step)) for place in fields.places if place > 2]
    demands = demands_met(task, answers, _WORDS, tables_of(products, context.year))
    if not _is_counted(rule, context.year.year):
        demands = replace(demands, calculated=tuple(sorted({*demands.calculated, *demands.numbers})))
    return Solution(
        task=task,
        answers=tuple(answers),
        demands=demands,
        steps=1 + (max(1, shown.count("___")) if not (fields.places or fields.said or fields.mistake) else 1),
        note=_note(fields, rule, answers),
        likely_error=slip_in(fields, rule, answers),
    )


def _is_counted(rule: Rule, year: int) -> bool:
    """Whether the year counts in such steps; what it does not count it reckons, though no sign is written."""
    if year >= 2:
        return True  # there it is written with signs, and met as such
    counted = (1, 2, 5, 10) if year else (1,)
    return isinstance(rule, Steps) and not rule.grows and abs(rule.step) in counted


def _figures(fields: SequenceFields, shown: Sequence[str]) -> tuple[Figure, ...]:
    row = track(["" if term == "___" else term for term in shown])
    heights = [term if isinstance(term, Fraction) else Fraction(0) for term in fields.terms]
    small = all(height.denominator == 1 and 0 <= height <= _TALLEST for height in heights)
    if fields.rule == "step" or not small or len(heights) > _MOST_TOWERS or fields.mistake:
        return (row,)
    said = listed([str(height) if height else "one to be found" for height in heights])
    return (row, Figure("towers", {"heights": [int(height) for height in heights]}, f"Towers of squares: {said}."))


def track(cells: Sequence[str]) -> Figure:
    """The numbers or things in boxes in a row; an empty text is an empty box."""
    said = listed([cell or "an empty box" for cell in cells])
    return Figure("track", {"cells": list(cells)}, f"Boxes in a row: {said}.")


def _ask(fields: SequenceFields, rule: Rule) -> str:
    if fields.mistake:
        return "One number in the row is wrong. Which? Put it right."
    if fields.said:
        count = f"Count on from {written(rule.at(1), 3)}"
        if not isinstance(rule, Times):
            way = "on" if rule.step >= 0 else "back"
            count = f"Count {way} from {written(rule.at(1), 3)} in steps of {written(abs(rule.step), 3)}"
        return f"{count}. Which of these do you say: {listed([written(n, 3) for n in fields.said], 'or')}?"
    if fields.places:
        places = listed([f"the {ordinal(place)}" for place in fields.places])
        return f"The numbers go on in the same way. What {'is' if len(fields.places) == 1 else 'are'} {places}?"
    return "What are the missing numbers?" if fields.terms.count("___") > 1 else "What is the missing number?"


def _note(fields: SequenceFields, rule: Rule, answers: Sequence[Answer]) -> str:
    if fields.said:
        missed = [number for number in fields.said if place_of(rule, number) is None]
        return " ".join(_why_not_said(rule, number) for number in missed) or "All of them are said."
    if fields.mistake:
        if not answers:
            return f"Nothing is wrong: {rule.says()}."
        return "Leave out each number in turn: only without this one do the others follow one rule."
    return f"The rule is settled by the numbers that are known: {rule.says()}."


def _why_not_said(rule: Rule, number: Fraction) -> str:
    shown = written(number, 3)
    if isinstance(rule, Times) or rule.step == 0:
        return f"{shown} is not said: the numbers stay the same."
    gone = (number - rule.first) / rule.step
    if gone < 0:
        return f"{shown} is not said: it comes before the start."
    below = rule.at(int(gone) + 1)
    return f"{shown} is not said: after {written(below, 3)} comes {written(below + rule.step, 3)}."
