"""Fractions of an amount: the part, what is left, and the whole from a part of it."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable, whole_fact
from ..saying import alike, capital, counted, owner, plain, spoken
from .words import a_part, bar, shared_out, slip_with_part, so_many, solution

if TYPE_CHECKING:
    from . import FractionFields


def part(fields: FractionFields, context: Context) -> Solution:
    """A fraction of one amount, or of what each of the cast has, in the cast's order."""
    fraction = a_part(fields.fraction)
    value, things = fraction.value, _things(fields, context)
    amounts = _amounts(fields, context)
    answers = []
    for id_, name, amount in amounts:
        got = amount * value
        whose = f"{owner(name)} " if name else ""
        says = f"{capital(spoken(value))} of {whose}{counted(amount, things)} is {alike(got, amount)}."
        data = {"of": plain(amount), "part": plain(got)} | ({"player": id_} if id_ else {})
        answers.append(Answer(says, shared_out(amount, value, context), data))
    first = amounts[0][2]
    whole = alike(first, first)
    task = Task(
        f"What is {spoken(value)} of {counted(first, things) if len(amounts) == 1 else 'each amount'}?",
        context.characters if fields.fact else (),
        tuple(alike(amount) for _, _, amount in amounts) if fields.fact else (),
        tuple(f"{fraction.text} of {alike(amount, amount)} = ___" for _, _, amount in amounts),
        figures=bar(fraction, whole),
    )
    note = "Sharing into equal parts comes out one way, so each amount has one answer."
    steps = 1 if value.numerator == 1 else 2
    solved = bar(fraction, whole, alike(first / max(fraction.under, value.denominator), first))
    likely_error = slip_with_part(first, value)
    return solution(task, answers, context, steps, note, likely_error, [value.denominator], solved)


def rest(fields: FractionFields, context: Context) -> Solution:
    """What is left of an amount when a fraction of it has gone, and then perhaps more."""
    fraction = a_part(fields.fraction)
    [(_, _, whole)] = _amounts(fields, context)
    gone = whole * fraction.value
    left = whole - gone - sum(fields.taken, Fraction(0))
    if left < 0 or any(more <= 0 for more in fields.taken):
        message = f"More would go than the {alike(whole, whole)} there are." if left < 0 else "Nothing would go."
        raise Unsolvable(("taken",), message, "take away numbers that are more than 0 and leave something.")
    beside = (whole, *fields.taken)
    chain = " − ".join(alike(number, *beside) for number in (whole, gone, *fields.taken))
    worked = f"{shared_out(whole, fraction.value, context)} {chain} = {alike(left, *beside)}."
    things = fields.things or ""
    then = "".join(f" Then {alike(more, *beside)} more go." for more in fields.taken)
    task = Task(
        f"There are {counted(whole, things)}. {capital(spoken(fraction.value))} of them go.{then} How many are left?",
        lines=(" − ".join([alike(whole, *beside), "___", *(alike(n, *beside) for n in fields.taken)]) + " = ___",),
        figures=bar(fraction, alike(whole, whole)),
    )
    answer = Answer(f"{capital(counted(left, things))} left.", worked, {"gone": plain(gone), "left": plain(left)})
    likely_error = None if gone == left else LikelyError("Stops at the part that went.", alike(gone, *beside))
    note = "Each part that goes is taken away once, so there is one answer."
    return solution(task, [answer], context, 2 + len(fields.taken), note, likely_error, [fraction.value.denominator])


def whole(fields: FractionFields, context: Context) -> Solution:
    """The whole, from a part of it (``part``) or from what is not that part (``rest``): first one equal part."""
    fraction = a_part(fields.fraction)
    field, known, share = (
        ("part", fields.part, fraction.value) if fields.part is not None else ("rest", fields.rest, 1 - fraction.value)
    )
    if known is None or known <= 0 or share == 0:
        raise Unsolvable(
            (field,), "That part is nothing, so it says nothing of the whole.", "give a part that is there."
        )
    each, total = known / share.numerator, known / share
    steps = [f"{alike(known, known)} is {spoken(share)} of the whole."]
    if share.numerator > 1:
        steps.append(f"{alike(known, known)} ÷ {share.numerator} = {alike(each, known)}.")
    if share.denominator > 1:
        steps.append(so_many(share.denominator, each, known, context))
    things = fields.things or ""
    told = (
        f"{capital(spoken(share))} of the whole is {counted(known, things)}."
        if field == "part"
        else f"{capital(spoken(fraction.value))} of them go one way and the other {counted(known, things)} go another."
    )
    gap = fraction.text if field == "part" else f"{share.numerator}/{share.denominator}"
    task = Task(
        f"{told} How many are there in all?",
        lines=(f"{gap} of ___ = {alike(known, known)}",),
        figures=bar(fraction, ""),
    )
    answer = Answer(f"There are {counted(total, things)} in all.", " ".join(steps), {"whole": plain(total)})
    likely_error = None
    if share < 1:
        likely_error = LikelyError("Takes the fraction of the number that is given.", alike(known * share, known))
    note = "One equal part is known and the whole is all of them, so there is one answer."
    parts = [share.numerator, share.denominator]
    return solution(task, [answer], context, len(steps), note, likely_error, parts, bar(fraction, alike(total, known)))


def _amounts(fields: FractionFields, context: Context) -> list[tuple[str, str, Fraction]]:
    """Id, name and amount of each who has one; a single amount belongs to nobody."""
    if fields.fact:
        values = whole_fact(context, fields.fact)
        return [(character.id, character.name, Fraction(values[character.id])) for character in context.characters]
    if fields.of is None or fields.of <= 0:
        raise Unsolvable(("of",), "There is nothing to take a part of.", "write a number more than 0.")
    return [("", "", fields.of)]


def _things(fields: FractionFields, context: Context) -> str:
    about = context.facts.get(fields.fact) if fields.fact else None
    return fields.things or (about.unit if about else "")
