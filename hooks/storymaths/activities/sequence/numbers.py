"""Numbers in a row: the rule they follow, and what is asked of it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, Solution
from ..kind import Unsolvable
from ..ordinals import ordinal
from ..saying import capital, listed, written
from .number_rules import NEEDED, Known, Rule, Times, mistakes_in, place_of, rule_through, uneven
from .steps import count_along, step_from, term_worked
from .told import told

if TYPE_CHECKING:
    from . import SequenceFields

_FURTHEST_TIMES = 40
"""So far along, doubling is long past ten million."""


def numbers_solved(fields: SequenceFields, context: Context) -> Solution:
    """The solution for ``terms``. Raises ``Unsolvable``."""
    known = {place: term for place, term in enumerate(fields.terms, 1) if isinstance(term, Fraction)}
    if fields.step is not None and fields.rule != "step":
        message = f"A step is given, and the rule is {fields.rule}."
        raise Unsolvable(("step",), message, "leave out the step, or the rule.", "activity-broken")
    if fields.mistake:
        return _mistake(fields, context, known)
    rule = _rule(fields, known)
    if fields.said:
        answers = _said(fields, rule)
    elif fields.places:
        answers = [_at_place(rule, place, context) for place in fields.places]
    else:
        answers = [_gaps(fields, rule, context)]
    return told(fields, context, rule, answers)


def _rule(fields: SequenceFields, known: Known) -> Rule:
    needed = 1 if fields.step is not None else NEEDED[fields.rule]
    if len(known) < needed:
        count = f"{len(known)} {'term is' if len(known) == 1 else 'terms are'} known"
        message = f"{count}, and a rule of this sort is settled by {needed}."
        raise Unsolvable(("terms",), message, "write more of the terms, or the step.")
    rule = rule_through(known, fields.rule, fields.step)
    if rule is None:
        shown = listed([written(term, 3) for term in known.values()])
        why = f": {uneven(known)}" if fields.rule == "step" else ""
        message = f"{shown} do not follow one rule of this sort{why}."
        raise Unsolvable(("terms",), message, "correct a term, choose another rule, or ask for the mistake.")
    return rule


def _value(rule: Rule, place: int, context: Context, loc: str) -> Fraction:
    if isinstance(rule, Times) and place > _FURTHEST_TIMES:
        raise Unsolvable((loc,), f"Place {place:,} is too far along to work out.", "ask for an earlier place.")
    term = rule.at(place)
    if abs(term) > context.caps.number or term.denominator > context.caps.number:
        message = f"The {ordinal(place)} number would be beyond {context.caps.number:,}."
        raise Unsolvable((loc,), message, "ask for an earlier place, or use smaller numbers.")
    return term


def plain(number: Fraction) -> int | str:
    """A whole number as such, another as written."""
    return number.numerator if number.denominator == 1 else written(number, 3)


def _gaps(fields: SequenceFields, rule: Rule, context: Context) -> Answer:
    gaps = [place for place, term in enumerate(fields.terms, 1) if not isinstance(term, Fraction)]
    if not gaps:
        message = "No number is missing, so there is nothing to find."
        fix = "put ___ in place of a term, or add places, said or mistake."
        raise Unsolvable(("terms",), message, fix, "activity-broken")
    terms = [_value(rule, place, context, "terms") for place in range(1, len(fields.terms) + 1)]
    found = [terms[place - 1] for place in gaps]
    says = f"{listed([written(term, 3) for term in found])} {'is' if len(found) == 1 else 'are'} missing"
    worked = [step_from(rule, place, context) for place in gaps]
    data = {"terms": [plain(term) for term in terms], "gaps": [plain(term) for term in found]}
    return Answer(says, f"{capital(rule.says())}. {'; '.join(worked)}.", data)


def _at_place(rule: Rule, place: int, context: Context) -> Answer:
    term = _value(rule, place, context, "places")
    says = f"The {ordinal(place)} number is {written(term, 3)}"
    return Answer(says, f"{term_worked(rule, place, context)}.", {"place": place, "term": plain(term)})


def _said(fields: SequenceFields, rule: Rule) -> list[Answer]:
    if isinstance(rule, Times) or rule.grows:
        message = "Which numbers are said can be asked of a count in equal steps only."
        raise Unsolvable(("said",), message, "leave out the rule, or ask for places.", "activity-broken")
    answers = []
    for number in fields.said:
        place = place_of(rule, number)
        if place is not None:
            says = f"{written(number, 3)} is said"
            worked = f"It is the {ordinal(place)} number: {count_along(rule, place)}."
            answers.append(Answer(says, worked, {"said": plain(number), "place": place}))
    return answers


def _mistake(fields: SequenceFields, context: Context, known: Known) -> Solution:
    needed = 3 if fields.step is not None else NEEDED[fields.rule] + 2
    if len(known) < needed:
        message = f"With fewer than {needed} known terms nobody can tell which is wrong."
        raise Unsolvable(("terms",), message, "write more terms.")
    found = mistakes_in(known, fields.rule, fields.step)
    right = rule_through(known, fields.rule, fields.step)
    if not found and right is None:
        message = "No single change gives all the numbers one rule of this sort."
        raise Unsolvable(("terms",), message, "leave one term wrong and no more, or choose another rule.")
    answers = []
    for place, term in found:
        others = {other: value for other, value in known.items() if other != place}
        rule = rule_through(others, fields.rule, fields.step)
        assert rule is not None, "a mistake is where the others follow a rule"
        right = right or rule
        _value(rule, place, context, "terms")
        says = f"{written(known[place], 3)} should be {written(term, 3)}"
        data = {"place": place, "is": plain(known[place]), "should_be": plain(term)}
        answers.append(Answer(says, f"{capital(rule.says())}. {step_from(rule, place, context)}.", data))
    assert right is not None, "the terms follow a rule, or all but one do"
    return told(fields, context, right, answers)
