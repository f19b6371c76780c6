"""The likely error in a row of numbers, and what it would give."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...model.activity import LikelyError
from ..ordinals import ordinal
from .number_rules import Rule, Times
from .say import number
from .tasks import GapsTask, Mistake, MistakeTask, PlacesTask, RowAnswer, RowTask, SaidNumber, SaidTask


def find_error(task: RowTask, rule: Rule, values: Sequence[RowAnswer]) -> LikelyError | None:
    """The likely error for what is asked; None where none is likely to show."""
    match task, list(values):
        case MistakeTask(), [Mistake(place=place, here=Fraction() as wrong), *_]:
            return _go_on_from(wrong, rule, place) if place < len(task.terms) else None
        case SaidTask(), [_, *_]:
            return _by_last_digit(task, values)
        case PlacesTask(), [_, *_]:
            return _as_a_table(rule, task.places[-1])
        case GapsTask(gaps=[gap, *_]), _ if gap > 1:
            return _at_gap(rule, gap)
        case _:
            return None


def _go_on_from(wrong: Fraction, rule: Rule, place: int) -> LikelyError | None:
    if isinstance(rule, Times):
        return None
    after = wrong + rule.at(place + 1) - rule.at(place)
    return LikelyError(
        "Goes on from the wrong number and changes the next.",
        f"{number(after, rule.places)} after {number(wrong, rule.places)}.",
    )


def _by_last_digit(task: SaidTask, values: Sequence[RowAnswer]) -> LikelyError | None:
    said = {value.said for value in values if isinstance(value, SaidNumber)}
    last_digits = {int(one) % 10 for one in said if one.denominator == 1}
    for one in task.said:
        if one not in said and one.denominator == 1 and int(one) % 10 in last_digits:
            return LikelyError("Goes by the last digit alone.", f"{number(one)} as well.")
    return None


def _as_a_table(rule: Rule, place: int) -> LikelyError | None:
    if isinstance(rule, Times) or rule.grows or rule.first == rule.step:
        return None
    wrong, right = place * rule.step, rule.at(place)
    if wrong == right or wrong < 0 <= right:
        return None
    return LikelyError(
        "Takes the place times the step, without the start.", f"{number(wrong, rule.places)} for the {ordinal(place)}."
    )


def _at_gap(rule: Rule, gap: int) -> LikelyError | None:
    before, here = rule.at(gap - 1), rule.at(gap)
    if isinstance(rule, Times) or rule.grows:
        if gap == 2:
            return None
        wrong = before + before - rule.at(gap - 2)
        return (
            LikelyError("Takes the same step as before.", f"{number(wrong, rule.places)}.") if wrong != here else None
        )
    if rule.step < 0:
        return LikelyError("Counts on, not back.", f"{number(before - rule.step, rule.places)}.")
    if rule.step == 1 and before % 10 == 9:
        return LikelyError("Starts the same ten again.", f"{number(before - 9, rule.places)}.")
    if 1 < rule.step <= 10:
        return LikelyError("Goes on in ones.", f"{number(before + 1, rule.places)}.")
    return None
