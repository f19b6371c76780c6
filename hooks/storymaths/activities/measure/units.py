"""Measuring with things against measuring with standard units, and the volume of a cuboid."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, listed, plain, written
from .amount import Amount, in_sum, say, shown
from .words import all_alike, leaned, like_units, solution

if TYPE_CHECKING:
    from . import MeasureFields

_ADDED_UP_TO = 8


def units(fields: MeasureFields, context: Context) -> Solution:
    """How many of each unit make the amount, and what is left over, in the order of the units."""
    whole, by, year = fields.amount, fields.by or {}, context.year
    if whole is None or whole.number <= 0 or any(one.number <= 0 for one in by.values()):
        raise Unsolvable(("by",), "Nothing can be measured with a unit of no size.", "give sizes more than 0.")
    unit = like_units([whole, *by.values()], ("by",))
    total = whole.into(unit)
    answers, counts = [], {}
    for name, one in by.items():
        size = one.into(unit)
        count = total.number // size.number
        left = Amount(total.number - count * size.number, unit)
        rest = f", with {say(left, year)} left" if left.number else ""
        says = f"{capital(name)}: {count:,} of them{rest}."
        data = {"unit": name, "count": int(count), "left": plain(left.number)}
        sentences = [*all_alike([whole, one], unit, context), *_laid_end_to_end(int(count), size, left, total, context)]
        answers.append(Answer(says, ". ".join(sentences) + ".", data))
        counts[name] = count
    sizes = listed([f"a {name} is {shown(one, year)}" for name, one in by.items()])
    task = Task(
        f"{capital(sizes)}. How many of each make {shown(whole, year)}?",
        lines=tuple(f"{name}: ___" for name in by),
    )
    likely_error = None
    if len(counts) > 1 and len(set(counts.values())) > 1:
        largest = max(by, key=lambda name: by[name].size)
        likely_error = LikelyError(
            "Thinks that a larger unit gives a larger count.", f"more of “{largest}” than of the others"
        )
    note = "The larger the unit, the fewer of it are needed; each was laid end to end until no more would fit."
    steps = 1 + any(answer.data["left"] != 0 for answer in answers)
    sizes_met = [one.into(unit).number for one in by.values()]
    tables = [
        table for name, size in zip(by, sizes_met, strict=True) for table in leaned(int(counts[name]), size, context)
    ]
    return solution(task, answers, steps, note, likely_error, tables=tables)


def _laid_end_to_end(count: int, size: Amount, left: Amount, total: Amount, context: Context) -> list[str]:
    year = context.year
    one, filled, all_ = (in_sum(a, year) for a in (size, Amount(size.number * count, size.unit), total))
    if not count:
        return [f"{capital(say(total, year))} is less than {say(size, year)}"]
    if year.year < 2 and count <= _ADDED_UP_TO:
        sentences = [f"{' + '.join([one] * count)} = {filled}"]
    else:
        sentences = [f"{count:,} × {one} = {filled}"]
    return [*sentences, f"{filled} + {in_sum(left, year)} = {all_}"] if left.number else sentences


def volume(fields: MeasureFields, context: Context) -> Solution:
    """The volume of a cuboid: the layer first, then the layers. A step for each multiplication."""
    sides, year = list(fields.sides), context.year
    unit = like_units(sides, ("sides",))
    if len(sides) != 3 or any(side.number <= 0 for side in sides) or sides[0].kind != "length":
        message = "A cuboid has three lengths, each more than 0."
        raise Unsolvable(("sides",), message, 'write three, such as ["12 cm", "2 cm", "2 cm"].')
    numbers = [side.into(unit).number for side in sides]
    layer = numbers[0] * numbers[1]
    whole = layer * numbers[2]
    texts = [written(number, year.decimal_places) for number in (*numbers, layer, whole)]
    worked = [
        *all_alike(sides, unit, context),
        f"{texts[0]} × {texts[1]} = {texts[3]}",
        f"{texts[3]} × {texts[2]} = {texts[4]}",
    ]
    lengths = listed([shown(side, year) for side in sides])
    task = Task(f"A cuboid has sides of {lengths}. What is its volume, in {unit}³?", lines=(f"___ {unit}³",))
    answer = Answer(
        f"Its volume is {texts[4]} {unit}³.", ". ".join(worked) + ".", {"volume": plain(whole), "unit": f"{unit}³"}
    )
    added = sum(numbers)
    likely_error = None
    if added != whole:
        likely_error = LikelyError("Adds the sides in place of multiplying them.", written(added, year.decimal_places))
    return solution(task, [answer], 2, "A cuboid is filled by so many layers of so many unit cubes.", likely_error)
