"""How a term of a row is worked out: from its neighbour, or from the first term by so many steps."""

from __future__ import annotations

from fractions import Fraction

from ...model.activity import Context
from ..saying import counted, written
from .number_rules import Rule, Steps, Times

_MOST_COUNTED = 12
"""A count is written out up to so many numbers."""


def step_from(rule: Rule, place: int, context: Context) -> str:
    """A term worked out from the one before it, or the first from the second; in words until Year 2."""
    before, here = rule.at(max(1, place - 1)), rule.at(place)
    if place == 1:
        return _first(rule, context)
    if isinstance(rule, Times):
        return _multiplied(before, rule.factor, here)
    return _stepped(before, here - before, context)


def _stepped(before: Fraction, step: Fraction, context: Context) -> str:
    start, by, end = written(before, 3), written(abs(step), 3), written(before + step, 3)
    if context.year.year < 2:
        return f"{by} {'more' if step >= 0 else 'less'} than {start} is {end}"
    return f"{start} {'+' if step >= 0 else '−'} {by} = {end}"


def _first(rule: Rule, context: Context) -> str:
    if isinstance(rule, Times):
        return _multiplied(rule.at(2), 1 / rule.factor, rule.first)
    return _stepped(rule.at(2), rule.first - rule.at(2), context)


def _multiplied(before: Fraction, factor: Fraction, here: Fraction) -> str:
    if factor < 1 and factor.numerator == 1:
        return f"{written(before, 3)} ÷ {factor.denominator} = {written(here, 3)}"
    return f"{written(before, 3)} × {written(factor, 3)} = {written(here, 3)}"


def count_along(rule: Rule, place: int) -> str:
    """The count up to a place, shortened in its middle where it is long."""
    places = range(1, place + 1)
    if place <= _MOST_COUNTED:
        return ", ".join(written(rule.at(n), 3) for n in places)
    ends = [*(written(rule.at(n), 3) for n in (1, 2, 3)), "…", *(written(rule.at(n), 3) for n in (place - 1, place))]
    return ", ".join(ends)


def term_worked(rule: Rule, place: int, context: Context) -> str:
    """A term worked out in so many equal steps from the first; counted out where there is no such short cut."""
    if isinstance(rule, Steps) and not rule.grows and context.year.year >= 2 and place > 2 and rule.step:
        size, gone = abs(rule.step), place - 1
        moved = size * gone
        there = f"{gone:,} × {written(size, 3)} = {written(moved, 3)}"
        sign = "+" if rule.step > 0 else "−"
        if rule.first == 0 and rule.step > 0:
            return f"{counted(gone, 'steps')} from 0: {there}"
        end = f"{written(rule.first, 3)} {sign} {written(moved, 3)} = {written(rule.at(place), 3)}"
        return f"{counted(gone, 'steps')} from {written(rule.first, 3)}: {there}; {end}"
    return f"Count along: {count_along(rule, place)}"
