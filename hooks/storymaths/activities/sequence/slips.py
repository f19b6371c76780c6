"""The likely slip in a row of numbers, and what it would give."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, LikelyError
from ..ordinals import ordinal
from ..saying import written
from .number_rules import Rule, Times

if TYPE_CHECKING:
    from . import SequenceFields


def slip_in(fields: SequenceFields, rule: Rule, answers: Sequence[Answer]) -> LikelyError | None:
    """The slip for what is asked; None where none is likely to show."""
    if not answers:
        return None
    if fields.mistake:
        place = int(answers[0].data["place"])
        wrong = fields.terms[place - 1]
        if place == len(fields.terms) or not isinstance(wrong, Fraction) or isinstance(rule, Times):
            return None
        after = wrong + rule.at(place + 1) - rule.at(place)
        return LikelyError(
            "Goes on from the wrong number and changes the next.", f"{written(after, 3)} after {written(wrong, 3)}."
        )
    if fields.said:
        return _by_last_digit(fields, rule, answers)
    if fields.places:
        return _as_a_table(rule, fields.places[-1])
    gap = next(place for place, term in enumerate(fields.terms, 1) if not isinstance(term, Fraction))
    return _at_gap(rule, gap) if gap > 1 else None


def _by_last_digit(fields: SequenceFields, rule: Rule, answers: Sequence[Answer]) -> LikelyError | None:
    said = {int(answer.data["said"]) % 10 for answer in answers if isinstance(answer.data["said"], int)}
    for number in fields.said:
        missed = all(answer.data["said"] != number for answer in answers)
        if missed and number.denominator == 1 and int(number) % 10 in said:
            return LikelyError("Goes by the last digit alone.", f"{written(number)} as well.")
    return None


def _as_a_table(rule: Rule, place: int) -> LikelyError | None:
    if isinstance(rule, Times) or rule.grows or rule.first == rule.step:
        return None
    wrong = place * rule.step
    right = rule.at(place)
    if wrong == right or wrong < 0 <= right:
        return None
    return LikelyError(
        "Takes the place times the step, without the start.", f"{written(wrong, 3)} for the {ordinal(place)}."
    )


def _at_gap(rule: Rule, gap: int) -> LikelyError | None:
    before, here = rule.at(gap - 1), rule.at(gap)
    if isinstance(rule, Times) or rule.grows:
        if gap == 2:
            return None
        wrong = before + before - rule.at(gap - 2)
        return LikelyError("Takes the same step as before.", f"{written(wrong, 3)}.") if wrong != here else None
    if rule.step < 0:
        return LikelyError("Counts on, not back.", f"{written(before - rule.step, 3)}.")
    if rule.step == 1 and before % 10 == 9:
        return LikelyError("Starts the same ten again.", f"{written(before - 9)}.")
    if 1 < rule.step <= 10:
        return LikelyError("Goes on in ones.", f"{written(before + 1, 3)}.")
    return None
