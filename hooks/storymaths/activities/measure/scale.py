"""Reading a scale of any interval: first what each small part is worth, then where the pointer stands."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import counted, listed, plain, written
from .amount import Amount, say
from .words import solution

if TYPE_CHECKING:
    from . import MeasureFields

_ADDED_UP_TO = 4
_NAMES = "ABCDEFGHIJKLMNOPQRSTUVWX"


def read_scale(fields: MeasureFields, context: Context) -> Solution:
    """What each pointer shows, in order: the mark it stands at, or the two it stands between and the nearer."""
    start, end = fields.ends
    parts, numbered = fields.parts or 1, fields.numbered or 1
    if not start < end:
        raise Unsolvable(("ends",), "The scale does not go from a smaller number to a larger.", "write it as [0, 100].")
    if parts % numbered:
        message = f"A number at every {numbered} marks does not fit a scale in {parts} parts."
        raise Unsolvable(("numbered",), message, f"choose a number that goes into {parts}.")
    step, unit = (end - start) / parts, fields.unit or ""
    answers = []
    for index, value in enumerate(fields.pointers):
        if not start <= value <= end:
            message = f"{written(value, 3)} is not on a scale from {written(start, 3)} to {written(end, 3)}."
            raise Unsolvable(("pointers", index), message, "choose a number on the scale.")
        answers.append(_reading(_NAMES[index], value, start, step, numbered, unit, context))
    shown = Figure("measure-scale", _drawn(fields, step, unit), _described(fields, step, unit, context))
    task = Task(
        f"What does each arrow show{f', in {unit}' if unit else ''}?",
        lines=tuple(f"{name}: ___ {unit}".strip() for name in _NAMES[: len(fields.pointers)]),
        figures=(shown,),
    )
    between = _said(Amount(step * numbered, unit), context)
    part = _said(Amount(step, unit), context)
    note = (
        f"From one number to the next is {between}, in {counted(numbered, 'equal parts')}, so a part is worth {part}."
    )
    steps = 2 + any((value - start) % step for value in fields.pointers)
    return solution(task, answers, steps, note, _slip_of_ones(fields, step, context))


def _reading(
    name: str, value: Fraction, start: Fraction, step: Fraction, numbered: int, unit: str, context: Context
) -> Answer:
    at = (value - start) / step
    before = at.numerator // at.denominator
    last_number = before // numbered * numbered
    told, past = start + last_number * step, before - last_number
    worked = _part_worth(step, numbered, context)
    low = start + before * step
    if past and past <= _ADDED_UP_TO:
        worked += f" {_n(told, context)} + {' + '.join([_n(step, context)] * past)} = {_n(low, context)}."
    elif past:
        worked += f" {counted(past, 'parts')} on from {_n(told, context)} is {_n(low, context)}."
    if at.denominator == 1:
        says = f"Arrow {name} shows {_said(Amount(value, unit), context)}."
        worked += " The arrow is at that mark." if past else f" The arrow is at {_n(low, context)}."
        return Answer(says, worked, {"arrow": name, "reading": plain(value), "unit": unit})
    high = low + step
    nearer = "halfway" if at - before == Fraction(1, 2) else plain(low if at - before < Fraction(1, 2) else high)
    where = "halfway" if nearer == "halfway" else f"nearer {_n(Fraction(nearer), context)}"
    says = f"Arrow {name} is between {_n(low, context)} and {_said(Amount(high, unit), context)}, {where}."
    data = {"arrow": name, "between": [plain(low), plain(high)], "nearer": nearer, "unit": unit}
    return Answer(says, f"{worked} The next mark is {_n(high, context)}.", data)


def _part_worth(step: Fraction, numbered: int, context: Context) -> str:
    if numbered == 1:
        return f"Each part is {_n(step, context)}."
    whole = step * numbered
    if context.year.year < 2:
        return f"{numbered} parts make {_n(whole, context)}, so each part is {_n(step, context)}."
    return f"{_n(whole, context)} ÷ {numbered} = {_n(step, context)}, so each part is {_n(step, context)}."


def _n(number: Fraction, context: Context) -> str:
    return written(number, context.year.decimal_places)


def _said(amount: Amount, context: Context) -> str:
    return say(amount, context.year)


def _slip_of_ones(fields: MeasureFields, step: Fraction, context: Context) -> LikelyError | None:
    """Taking every small mark for one more."""
    numbered = fields.numbered or 1
    for value in fields.pointers:
        at = (value - fields.ends[0]) / step
        past = at.numerator // at.denominator % numbered
        if past and step != 1 and at.denominator == 1:
            wrong = value - past * step + past
            return LikelyError(
                "Counts every small mark as one.", f"{_n(wrong, context)} in place of {_n(value, context)}"
            )
    return None


def _drawn(fields: MeasureFields, step: Fraction, unit: str) -> dict[str, object]:
    start, end = fields.ends
    parts, numbered = fields.parts or 1, fields.numbered or 1
    labels = [[mark, written(start + mark * step, 3)] for mark in range(0, parts + 1, numbered)]
    pointers = [
        [_NAMES[i], ((value - start) / (end - start)).numerator, ((value - start) / (end - start)).denominator]
        for i, value in enumerate(fields.pointers)
    ]
    return {"form": fields.form, "parts": parts, "labels": labels, "pointers": pointers, "unit": unit}


def _described(fields: MeasureFields, step: Fraction, unit: str, context: Context) -> str:
    start, end = fields.ends
    ends = f"from {_n(start, context)} to {_said(Amount(end, unit), context)}"
    parts, numbered = fields.parts or 1, fields.numbered or 1
    at = [(value - start) / step for value in fields.pointers]
    where = [
        f"{name} at mark {mark}" if mark.denominator == 1 else f"{name} between marks {int(mark)} and {int(mark) + 1}"
        for name, mark in zip(_NAMES, at, strict=False)
    ]
    every = "every mark" if numbered == 1 else f"every {numbered} marks"
    return f"A {fields.form} {ends} in {parts} equal parts, with a number at {every}. Arrows, marks counted from 0: {listed(where)}."
