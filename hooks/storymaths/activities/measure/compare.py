"""Which of two amounts is more and by how much; amounts in order; amounts told in another unit."""

from __future__ import annotations

from fractions import Fraction
from itertools import groupby
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, ending_places, listed, plain, written
from .amount import MORE, SIZES, Amount, in_sum, made_like, say, shown
from .words import Named, all_alike, like_units, named_amounts, solution, turned

if TYPE_CHECKING:
    from . import MeasureFields


def compare(fields: MeasureFields, context: Context) -> Solution:
    """Which of two is more, and by how much: into one unit, then the difference."""
    things = named_amounts(fields, context)
    if len(things) != 2:
        raise Unsolvable(("find",), f"There are {len(things)} amounts to compare.", "give two amounts.")
    amounts = [amount for _, _, amount in things]
    unit, year = like_units(amounts, ("amounts",)), context.year
    one, other = (amount.into(unit) for amount in amounts)
    gap = Amount(abs(one.number - other.number), unit)
    word = MORE.get(one.kind, ("more", "less"))[0]
    more = 0 if one.number > other.number else 1
    names = [name or shown(amount, year) for _, name, amount in things]
    sentences = all_alike(amounts, unit, context)
    if gap.number:
        says = f"{capital(names[more])} is {say(gap, year)} {word} than {names[1 - more]}."
        if one.kind == "temperature":
            says = f"{capital(names[more])} is {written(gap.number, 3)} degrees {word} than {names[1 - more]}."
        sentences.append(_difference(max(one, other, key=_number), min(one, other, key=_number), gap, context))
    else:
        says = f"{capital(names[0])} and {names[1]} are the same."
        sentences.append(f"{in_sum(one, year)} = {in_sum(other, year)}")
    keys = [id_ or ("first", "second")[place] for place, (id_, _, _) in enumerate(things)]
    data = {"more": keys[more] if gap.number else "same", "difference": plain(gap.number), "unit": unit}
    lines = tuple(f"{name}: {shown(amount, year)}" if name else shown(amount, year) for _, name, amount in things)
    asked = {"length": "longer", "mass": "heavier", "temperature": "warmer", "time": "longer"}.get(one.kind, "more")
    task = Task(
        f"Which is {asked}, and by how much?",
        context.characters if fields.fact else (),
        tuple(shown(amount, year) for amount in amounts) if fields.fact else (),
        () if fields.fact else lines,
    )
    likely_error = None
    if (amounts[0].number - amounts[1].number) * (one.number - other.number) < 0:
        likely_error = LikelyError("Looks at the numbers and not at the units.", names[1 - more])
    note = "Two amounts of one kind are compared in one way."
    return solution(task, [Answer(says, ". ".join(sentences) + ".", data)], 1 + len(sentences), note, likely_error)


def _number(amount: Amount) -> Fraction:
    return amount.number


def _difference(more: Amount, less: Amount, gap: Amount, context: Context) -> str:
    """Taking the less from the more; by way of nought when it lies between."""
    if less.number < 0 < more.number:
        steps = [written(number, 3) for number in (-less.number, more.number, gap.number)]
        return f"Up to 0 and then on: {steps[0]} + {steps[1]} = {steps[2]}"
    if more.number <= 0 and less.number < 0:
        steps = [written(-number, 3) for number in (less.number, more.number)]
        return f"Both are counted down from 0: {steps[0]} − {steps[1]} = {written(gap.number, 3)}"
    return f"{in_sum(more, context.year)} − {in_sum(less, context.year)} = {in_sum(gap, context.year)}"


def order(fields: MeasureFields, context: Context) -> Solution:
    """The amounts from the least, or from the greatest; equals share a place. A step for each comparison."""
    things = named_amounts(fields, context)
    if len(things) < 2:
        raise Unsolvable(("find",), "There is nothing to put in order.", "give two amounts or more.")
    amounts, year = [amount for _, _, amount in things], context.year
    unit = like_units(amounts, ("amounts",))
    ordered = sorted(things, key=lambda thing: thing[2].size, reverse=fields.greatest_first)
    places = [list(group) for _, group in groupby(ordered, key=lambda thing: thing[2].size)]
    says = ", then ".join(listed([_called(thing, context) for thing in place]) for place in places)
    sentences = all_alike(amounts, unit, context)
    sign = " > " if fields.greatest_first else " < "
    if year.year >= 2:
        same = [[in_sum(amount.into(unit), year) for _, _, amount in place] for place in places]
        sentences.append(sign.join(" = ".join(place) for place in same))
    end = "greatest" if fields.greatest_first else "least"
    lines = tuple(f"{name}: {shown(amount, year)}" if name else shown(amount, year) for _, name, amount in things)
    task = Task(
        f"Put these in order, the {end} first.",
        context.characters if fields.fact else (),
        tuple(shown(amount, year) for amount in amounts) if fields.fact else (),
        () if fields.fact else lines,
    )
    by_number = sorted(things, key=lambda thing: thing[2].number, reverse=fields.greatest_first)
    likely_error = None
    if [thing[2].size for thing in by_number] != [thing[2].size for thing in ordered]:
        gives = listed([_called(thing, context) for thing in by_number])
        likely_error = LikelyError("Looks at the numbers and not at the units.", gives)
    worked = ". ".join(sentences or [f"{capital(says)}: each is more than the one before"]) + "."
    data = {
        "order": [_key(thing, context) for thing in ordered],
        "together": [[_key(thing, context) for thing in place] for place in places if len(place) > 1],
    }
    note = "In one unit amounts have one order; equal amounts share a place."
    return solution(task, [Answer(f"{capital(says)}.", worked, data)], len(things) - 1, note, likely_error)


def _called(thing: Named, context: Context) -> str:
    return thing[1] or shown(thing[2], context.year)


def _key(thing: Named, context: Context) -> str:
    return thing[0] or shown(thing[2], context.year)


def convert(fields: MeasureFields, context: Context) -> Solution:
    """Each amount told in another unit, in order."""
    to, year = fields.to or "", context.year
    answers, lines = [], []
    things = named_amounts(fields, context)
    for id_, name, amount in things:
        if amount.kind not in {kind for kind, _ in SIZES.values()}:
            message = f"An amount of {amount.unit or 'no unit'} is in no standard unit."
            raise Unsolvable(("amounts",), message, "use units such as cm, kg, ml, minutes or weeks.")
        other = turned(amount, to, ("to",))
        sentences = made_like(amount, to, year) or [f"{in_sum(amount, year)} = {in_sum(other, year)}"]
        who = f"{name}: " if id_ else ""
        data = {"amount": say(amount, year), "number": plain(other.number), "unit": to} | (
            {"thing": id_} if id_ else {}
        )
        answers.append(
            Answer(f"{capital(who)}{shown(amount, year)} is {say(other, year)}.", ". ".join(sentences) + ".", data)
        )
        lines.append(f"{shown(amount, year)} = ___ {to}")
    task = Task(f"Tell each in {_unit_word(to)}.", context.characters if fields.fact else (), lines=tuple(lines))
    note = "The same amount has one number in each unit."
    steps = 1 + any(len(answer.worked.split(". ")) > 1 for answer in answers)
    return solution(task, answers, steps, note, _slip_of_turning_the_wrong_way(things, to, context))


def _unit_word(unit: str) -> str:
    return {"£": "pounds", "p": "pence", "l": "litres", "litre": "litres"}.get(unit, unit)


def _slip_of_turning_the_wrong_way(things: list[Named], to: str, context: Context) -> LikelyError | None:
    for _, _, amount in things:
        one = Amount(Fraction(1), amount.unit).into(to).number
        if one != 1 and ending_places(amount.number / one) is not None:
            wrong = Amount(amount.number / one, to)
            does = "Divides where it should multiply." if one > 1 else "Multiplies where it should divide."
            return LikelyError(does, f"{say(wrong, context.year)} for {shown(amount, context.year)}")
    return None
