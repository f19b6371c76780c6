"""Fractions of an amount: the part, what is left, and the whole from a part of it."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import NoReturn

from ...expression.number import WrittenNumber
from ...model.activity import Answer, CastMember, Context, Shown, Solution, Task
from ...model.demands import Demands, Operation, operation
from ..given import need_cast, need_one
from ..kind import Unsolvable, whole_fact
from ..saying import alike, written
from ..sentences import as_line
from . import say_amounts as say
from .answers import PartFound, Rest, Whole
from .calculation import part_of_one, put_together
from .demands import (
    demands_of_numbers,
    demands_of_parts,
    demands_of_steps,
    demands_of_tables,
    demands_of_words,
    demands_of_written,
    places_beside,
)
from .drawing import cards_for_written, draw_bar
from .number import as_amount
from .tasks import PartTask, RestTask, WholeTask


def find_parts(task: PartTask, context: Context) -> Solution[PartFound]:
    """A fraction of one amount, or of what each of the cast has, in the cast's order."""
    owned = _amounts(task, context)
    fraction, value, things = task.fraction, part_of_one(task.fraction), say.things_of(task, context)
    amounts = [amount for _, amount in owned]
    places = max(map(places_beside, amounts))
    first, one_part = alike(amounts[0], amounts[0]), amounts[0] / max(fraction.under, value.denominator)
    return Solution(
        task=Task(
            say.ask_for_part(task, amounts, things),
            context.characters if task.fact else (),
            tuple(Shown(written(amount), amount) for amount in amounts) if task.fact else (),
            tuple(as_line((fraction.text, "of", amount, "=", None), places) for amount in amounts),
            figures=draw_bar(fraction, first),
        ),
        answers=tuple(
            Answer(
                say.say_part(amount, value, owner.name if owner else "", things),
                say.explain_part(amount, value, context.year),
                PartFound(amount, amount * value, owner.id if owner else None),
            )
            for owner, amount in owned
        ),
        demands=Demands(signs=frozenset("="))
        | demands_of_written([fraction])
        | demands_of_numbers((amount * value for amount in amounts), places)
        | demands_of_numbers(amounts, places, things)
        | demands_of_parts(amounts, value, context.year),
        steps=1 if value.numerator == 1 else 2,
        note=say.NOTE_ON_PARTS,
        likely_error=say.expect_error_in_part(amounts[0], value),
        answer_figures=draw_bar(fraction, first, alike(one_part, amounts[0])),
        cards=cards_for_written([fraction, *_as_amounts((*amounts, *(a * value for a in amounts)), places)], {"=": 1}),
    )


def _amounts(task: PartTask, context: Context) -> list[tuple[CastMember | None, Fraction]]:
    """Each who has an amount, with it; a single amount belongs to nobody. Raises ``Unsolvable``."""
    need_one(task, of=task.of, fact=task.fact)
    if task.fact:
        need_cast(context)
        values = whole_fact(context, task.fact)
        return [(character, Fraction(values[character.id])) for character in context.characters]
    if task.of is None or task.of <= 0:
        _refuse_nothing()
    return [(None, task.of)]


def _refuse_nothing() -> NoReturn:
    raise Unsolvable(("of",), "There is nothing to take a part of.", "write a number more than 0.")


def _as_amounts(numbers: Iterable[Fraction], places: int) -> list[WrittenNumber]:
    return [as_amount(number, places) for number in numbers]


def find_rest(task: RestTask, context: Context) -> Solution[Rest]:
    """What is left of an amount when a fraction of it has gone, and then perhaps more."""
    value, year = part_of_one(task.fraction), context.year
    if task.of <= 0:
        _refuse_nothing()
    gone = task.of * value
    rest = Rest(gone, task.of - gone - sum(task.taken, Fraction(0)))
    if rest.left < 0 or any(more <= 0 for more in task.taken):
        raise Unsolvable(("taken",), *say.refuse_rest(task, rest.left))
    places = max(map(places_beside, (task.of, *task.taken)))
    taking = operation("−", task.of, gone, *task.taken, rest.left)
    taken = [part for more in task.taken for part in ("−", more)]
    return Solution(
        task=Task(
            say.ask_for_rest(task),
            lines=(as_line((task.of, "−", None, *taken, "=", None), places),),
            figures=draw_bar(task.fraction, alike(task.of, task.of)),
        ),
        answers=(Answer(say.say_rest(task, rest), say.explain_rest(task, taking, places, year), rest),),
        demands=demands_of_numbers([task.of, rest.left], 0, task.things or "")
        | demands_of_parts([task.of], value, year)
        | demands_of_steps([taking], places),
        steps=2 + len(task.taken),
        note=say.NOTE_ON_RESTS,
        likely_error=say.expect_error_in_rest(task, rest),
        cards=cards_for_written(
            _as_amounts((task.of, *task.taken, rest.left), places), {"−": 1 + len(task.taken), "=": 1}
        ),
    )


def find_whole(task: WholeTask, context: Context) -> Solution[Whole]:
    """The whole, from a part of it (``part``) or from what is not that part (``rest``): first one equal part."""
    fraction, year = task.fraction, context.year
    known, share = _known_part(task)
    whole, steps = Whole(known / share), _steps_to_whole(known, share, context)
    over, under = share.as_integer_ratio()
    told = fraction if task.part is not None else WrittenNumber.over(over, under)
    places = places_beside(known)
    return Solution(
        task=Task(
            say.ask_for_whole(task, known, share),
            lines=(as_line((told.text, "of", None, "=", known), places),),
            figures=draw_bar(fraction, ""),
        ),
        answers=(Answer(say.say_whole(task, whole), say.explain_whole(known, share, steps), whole),),
        demands=Demands(signs=frozenset("="))
        | demands_of_written([told])
        | demands_of_numbers([known, whole.whole], places, task.things or "")
        | demands_of_numbers([fraction.value])
        | demands_of_steps(steps, places)
        | demands_of_words([fraction.value, share] if told is not fraction else [share], "whole")
        | demands_of_tables([over, under], year),
        steps=1 + len(steps),
        note=say.NOTE_ON_WHOLES,
        likely_error=say.expect_error_in_whole(known, share),
        answer_figures=draw_bar(fraction, alike(whole.whole, known)),
        cards=cards_for_written([told, *_as_amounts((known, whole.whole), places)], {"=": 1}),
    )


def _known_part(task: WholeTask) -> tuple[Fraction, Fraction]:
    """The amount that is known, and what fraction of the whole it is. Raises ``Unsolvable``."""
    need_one(task, part=task.part, rest=task.rest)
    fraction = part_of_one(task.fraction)
    field, known, share = ("rest", task.rest, 1 - fraction) if task.part is None else ("part", task.part, fraction)
    if known is None or known <= 0 or share == 0:
        message = "That part is nothing, so it says nothing of the whole."
        raise Unsolvable((field,), message, "give a part that is there.")
    return known, share


def _steps_to_whole(known: Fraction, share: Fraction, context: Context) -> list[Operation]:
    over, under = share.as_integer_ratio()
    steps = [operation("÷", known, over, known / over)] if over > 1 else []
    return steps + ([put_together(under, known / over, context.year)] if under > 1 else [])
