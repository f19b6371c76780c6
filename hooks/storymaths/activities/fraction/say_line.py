"""Fractions on a line, in words."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import LikelyError
from ..saying import alike, counted, listed, mixed
from .answers import LineAnswer, NumberAtMark, PlaceAtMark, PlaceBetween
from .drawing import count_parts
from .tasks import LineTask

NOTE_ON_LINES = "Every number has one place on a line."


def ask_for_places(task: LineTask) -> str:
    """Where numbers stand, or which stand at marks."""
    return "Where does each number stand on the line?" if task.numbers else "Which number is at each mark?"


def say_place(one: LineAnswer) -> str:
    """``3/4 is at mark 3``."""
    match one:
        case PlaceAtMark(number=number, mark=mark):
            return f"{number.text} is at mark {mark}" if mark else f"{number.text} is at the start"
        case PlaceBetween(number=number, between=(before, after)):
            return f"{number.text} is between mark {before} and mark {after}"
        case NumberAtMark(mark=mark, number=value):
            return f"Mark {mark} is {alike(value)}"


def explain_place(one: LineAnswer, task: LineTask) -> str:
    """How long each part is, and how many parts on it stands."""
    part = f"Each part is {mixed(task.step)}"
    match one:
        case PlaceAtMark(number=number, mark=mark):
            return f"{part}. {number.text} is {counted(mark, 'parts')} on from the start."
        case PlaceBetween(number=number, between=(before, _)):
            further = task.count_parts_to(number.value) - before
            return f"{part}. {number.text} is {counted(before, 'parts')} and {further} of a part on from the start."
        case NumberAtMark(mark=mark):
            return f"{part}, and mark {mark} is {counted(mark, 'parts')} on from {alike(task.ends[0])}."


def counts_parts(one: LineAnswer) -> bool:
    """Whether it is said with "parts", and not with "1 part"."""
    return (one.between[0] if isinstance(one, PlaceBetween) else one.mark) != 1


def expect_counting_marks(task: LineTask) -> LikelyError | None:
    """Counting marks in place of parts; not where whole numbers would come to parts of one."""
    each = (task.ends[1] - task.ends[0]) / (task.parts + 1)
    if task.parts < 2 or task.step.denominator == 1 != each.denominator:
        return None
    return LikelyError("Counts the marks and not the parts between them.", f"{mixed(each)} for each part.")


def describe_line(task: LineTask, placed: Sequence[str]) -> str:
    """The drawing in words."""
    start, end = map(alike, task.ends)
    return f"A line from {start} to {end} in {count_parts(task.parts)}{f' with {listed(placed)} marked' if placed else ''}."
