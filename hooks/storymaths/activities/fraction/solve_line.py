"""Fractions on a line: where a number stands, and which number stands at a mark."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from ...expression.number import WrittenNumber
from ...model.activity import Answer, Figure, Line, Solution, Task
from ...model.demands import Number
from ...model.figures.fractions import FractionLine, PlaceOnLine
from ..given import need_some
from ..kind import Unsolvable
from ..saying import alike
from . import say_line as say
from .answers import LineAnswer, NumberAtMark, PlaceAtMark, PlaceBetween
from .demands import demands_of_numbers, demands_of_words, demands_of_written
from .drawing import cards_for_written
from .number import as_amount
from .tasks import LineTask


def find_on_line(task: LineTask) -> Solution[LineAnswer]:
    """Where each number stands on a line cut into equal parts; or, with ``marks``, what stands at each mark."""
    need_some(task, numbers=task.numbers, marks=task.marks)
    start, end = task.ends
    if not start < end:
        raise Unsolvable(("ends",), "The line does not go from a smaller number to a larger.", "write it as [0, 1].")
    found: list[LineAnswer] = [_place(number, index, task) for index, number in enumerate(task.numbers)]
    found += [_read(mark, index, task) for index, mark in enumerate(task.marks)]
    places = tuple(PlaceOnLine(n.text, (n.value - start) / (end - start)) for n in task.numbers)
    if not task.numbers:
        places = tuple(PlaceOnLine(alike(task.number_at(mark)), Fraction(mark, task.parts)) for mark in task.marks)
    return Solution(
        task=Task(
            say.ask_for_places(task),
            lines=tuple(Line((number.text,)) for number in task.numbers),
            figures=(_draw(task, (), task.marks),),
        ),
        answers=tuple(Answer(say.say_place(one), say.explain_place(one, task), one) for one in found),
        demands=demands_of_numbers([start, end, task.step])
        | demands_of_written(task.numbers)
        | demands_of_numbers(number for one in found for number in _numbers_told(one, task))
        | demands_of_words([], "part", *(["parts"] if any(say.counts_parts(one) for one in found) else [])),
        steps=2,
        note=say.NOTE_ON_LINES,
        likely_error=say.expect_counting_marks(task),
        answer_figures=(_draw(task, places, ()),),
        cards=cards_for_written([number for one in found for number in _laid(one)], {}),
    )


def _place(number: WrittenNumber, index: int, task: LineTask) -> PlaceAtMark | PlaceBetween:
    start, end = task.ends
    if not start <= number.value <= end:
        message = f"{number.text} is not on a line from {alike(start)} to {alike(end)}."
        raise Unsolvable(("numbers", index), message, "choose a number on the line, or a longer line.")
    before, further = divmod(task.count_parts_to(number.value), 1)
    return PlaceBetween(number, (before, before + 1)) if further else PlaceAtMark(number, before)


def _read(mark: int, index: int, task: LineTask) -> NumberAtMark:
    if mark > task.parts:
        message = f"There is no mark {mark} on a line in {task.parts} parts."
        raise Unsolvable(("marks", index), message, f"choose a mark from 0 to {task.parts}.")
    return NumberAtMark(mark, task.number_at(mark))


def _laid(one: LineAnswer) -> list[WrittenNumber]:
    match one:
        case PlaceAtMark(number=number, mark=mark):
            return [*([as_amount(mark)] if mark else []), number]
        case PlaceBetween(number=number, between=(before, after)):
            return [as_amount(before), as_amount(after), number]
        case NumberAtMark(mark=mark, number=value):
            return [as_amount(mark), as_amount(value)]


def _numbers_told(one: LineAnswer, task: LineTask) -> list[Number]:
    match one:
        case PlaceBetween(number=number, between=between):
            return [*between, task.count_parts_to(number.value) - between[0]]
        case PlaceAtMark(mark=mark):
            return [mark]
        case NumberAtMark(mark=mark, number=value):
            return [mark, value]


def _draw(task: LineTask, places: Sequence[PlaceOnLine], marks: Sequence[int]) -> Figure:
    start, end = map(alike, task.ends)
    alt = say.describe_line(task, [place.text for place in places])
    return Figure(FractionLine(start, end, task.parts, tuple(marks), tuple(places)), alt)
