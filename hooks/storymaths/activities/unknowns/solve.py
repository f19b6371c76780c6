"""Unknowns worked out: every way that makes all lines true, in words, and what it demands."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import islice

from ...expression.tree import Number, numbers_in, operations_in
from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.activity import Line as Asked
from ...model.demands import Demands
from ..arithmetic import demand_numbers, find_operations, find_tables, signs_of
from ..kind import Unsolvable
from ..number_sentence.filled import fill_in
from ..saying import listed, written
from .search import Line, find_all, read_lines
from .tasks import Found, Numbers, UnknownsTask


def solve(task: UnknownsTask, context: Context) -> Solution[Found]:
    """Every way that makes all lines true, the first unknown rising, then the second. Raises ``Unsolvable``."""
    lines = read_lines(task)
    found = list(islice(find_all(task, lines), context.caps.answers + 1))
    if len(found) > context.caps.answers:
        message = f"There are more than {context.caps.answers} answers."
        raise Unsolvable(("gaps",), message, "add a line, or allow fewer numbers.", "activity-too-many-answers")
    if task.hidden and not task.ask:
        raise Unsolvable(("hidden",), "The lines are hidden, and nothing tells what is asked.", 'add "ask".')
    return Solution(
        task=Task(
            _ask(task),
            lines=(
                *(() if task.hidden else (Asked((line.text,)) for line in lines)),
                *(Asked((f"{name} = ", "")) for name in task.asked),
            ),
        ),
        answers=tuple(Answer(_say(task, numbers), _explain(lines, numbers), Found(numbers)) for numbers in found),
        demands=_demands(task, lines, found, context),
        steps=sum(max(1, sum(map(operations_in, line.sentence.sides))) for line in lines),
        note=_note(task, found),
        likely_error=_expect_stopping(task, lines, found),
    )


def _ask(task: UnknownsTask) -> str:
    ways = " Find every way." if len(task.lines) < len(task.unknowns) else ""
    return f"What {'is' if len(task.asked) == 1 else 'are'} {listed(task.asked)}?{ways}"


def _say(task: UnknownsTask, numbers: Numbers) -> str:
    return listed([f"{name} = {written(numbers[name])}" for name in task.asked])


def _explain(lines: Sequence[Line], numbers: Numbers) -> str:
    """Each line with the numbers put in."""
    return "; ".join(line.sentence.written([written(number) for number in line.gaps(numbers)]) for line in lines) + "."


def _note(task: UnknownsTask, found: Sequence[Numbers]) -> str:
    assert not isinstance(task.gaps, str), "refused before"
    tried = f"Every number from {written(task.gaps[0])} to {written(task.gaps[-1])} was tried"
    if isinstance(task.gaps, tuple):
        tried = f"Each of {listed(list(map(written, task.gaps)))} was tried"
    if not found:
        return f"{tried}: none makes every line true."
    return "Begin with the line that has one unknown." if len(found) == 1 and len(task.lines) > 1 else f"{tried}."


def _expect_stopping(task: UnknownsTask, lines: Sequence[Line], found: Sequence[Numbers]) -> LikelyError | None:
    """Stopping at the first step of several, or at the first way."""
    if len(found) > 1:
        return LikelyError("Stops at the first way that works.", f"1 answer, and there are {len(found)}.")
    if not found or len(lines) < 2:
        return None
    first = next((name for line in lines if len(set(line.names)) == 1 for name in line.names), None)
    if first is None or first in task.asked[-1:] or found[0][first] == found[0][task.asked[-1]]:
        return None
    return LikelyError("Stops after the first step.", f"{written(found[0][first])}.")


def _demands(task: UnknownsTask, lines: Sequence[Line], found: Sequence[Numbers], context: Context) -> Demands:
    filled = [(line, line.gaps(numbers)) for numbers in found for line in lines]
    steps = [step for line, gaps in filled for step in find_operations(line.sentence.sides, gaps)]
    numbers: list[Number] = [
        number for line, gaps in filled for side in line.sentence.sides for number in numbers_in(fill_in(side, gaps))
    ]
    numbers += [Number(number, written(number, 3)) for step in steps for number in step.numbers]
    signs = {sign for line in lines for sign in signs_of(line.sentence.tokens)}
    return demand_numbers(numbers) | Demands(
        operations=tuple(dict.fromkeys(steps)), signs=frozenset(signs), tables=find_tables(steps, context.year)
    )
