"""Fractions on a line: where a number stands, and which number stands at a mark."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import alike, counted, listed, mixed, plain
from .number import WrittenNumber
from .words import solution

if TYPE_CHECKING:
    from . import FractionFields


def line(fields: FractionFields, context: Context) -> Solution:
    """Where each number stands on a line cut into equal parts; or, with ``marks``, what stands at each mark."""
    (start, end), parts = fields.ends, fields.parts or 0
    if not start < end:
        raise Unsolvable(("ends",), "The line does not go from a smaller number to a larger.", "write it as [0, 1].")
    step = (end - start) / parts
    answers = []
    for index, number in enumerate(fields.numbers):
        if not start <= number.value <= end:
            message = f"{number.text} is not on a line from {alike(start)} to {alike(end)}."
            raise Unsolvable(("numbers", index), message, "choose a number on the line, or a longer line.")
        answers.append(_place(number, (number.value - start) / step, step))
    for index, mark in enumerate(fields.marks):
        if mark > parts:
            message = f"There is no mark {mark} on a line in {parts} parts."
            raise Unsolvable(("marks", index), message, f"choose a mark from 0 to {parts}.")
        value = start + mark * step
        says = f"Mark {mark} is {alike(value)}."
        worked = (
            f"Each part is {mixed(step)}, and mark {mark} is {counted(Fraction(mark), 'parts')} on from {alike(start)}."
        )
        answers.append(Answer(says, worked, {"mark": mark, "number": plain(value)}))
    places = [(n.text, (n.value - start) / (end - start)) for n in fields.numbers]
    places += [(alike(start + mark * step), Fraction(mark, parts)) for mark in fields.marks if not fields.numbers]
    blank = _line(start, end, parts, [], list(fields.marks))
    solved = _line(start, end, parts, places, [])
    ask = "Where does each number stand on the line?" if fields.numbers else "Which number is at each mark?"
    task = Task(ask, lines=tuple(n.text for n in fields.numbers), figures=(blank,))
    note = "Every number has one place on a line."
    likely_error = None
    if start == 0 and parts > 1:
        likely_error = LikelyError("Counts the marks and not the parts between them.", f"1/{parts + 1} for each part")
    return solution(task, answers, context, 2, note, likely_error, figures=(solved,))


def _place(number: WrittenNumber, at: Fraction, step: Fraction) -> Answer:
    part = f"Each part is {mixed(step)}."
    if at.denominator == 1:
        says = f"{number.text} is at mark {at}." if at else f"{number.text} is at the start."
        return Answer(
            says,
            f"{part} {number.text} is {counted(at, 'parts')} on from the start.",
            {"number": number.text, "mark": int(at)},
        )
    before = at.numerator // at.denominator
    says = f"{number.text} is between mark {before} and mark {before + 1}."
    far = at - before
    worked = f"{part} {number.text} is {counted(before, 'parts')} and {far} of a part on from the start."
    return Answer(says, worked, {"number": number.text, "between": [before, before + 1]})


def _line(start: Fraction, end: Fraction, parts: int, places: list[tuple[str, Fraction]], marks: list[int]) -> Figure:
    shown = f" with {listed([text for text, _ in places])} marked" if places else ""
    alt = f"A line from {alike(start)} to {alike(end)} in {parts} equal parts{shown}."
    data = {
        "start": alike(start), "end": alike(end), "parts": parts, "arrows": marks,
        "places": [[text, at.numerator, at.denominator] for text, at in places],
    }  # fmt: skip
    return Figure("fraction-line", data, alt)
