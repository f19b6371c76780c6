"""The nearest of some numbers or calculations, with how far away the others are."""

from __future__ import annotations

from fractions import Fraction

from ...expression.tree import Number
from ...model.activity import Answer, Context, LikelyError, Line, Solution, Task
from ...model.demands import Demands, Operation, operation
from ..arithmetic import demand_numbers, find_tables
from ..choices import Choice, read_choice
from ..kind import Unsolvable
from ..saying import capital, listed, written
from ..sentences import write_calculation
from .tasks import Nearest, NearestTask

_PLACES = 3


def solve(task: NearestTask, context: Context) -> Solution[Nearest]:
    """Every choice that none is nearer than, in the order given. Raises ``Unsolvable``."""
    choices = [read_choice(text, ("choices", index)) for index, text in enumerate(task.choices)]
    away = [abs(choice.worth - task.to) for choice in choices]
    least = min(away)
    if len(set(away)) == 1:
        raise Unsolvable(("choices",), "All of them are as near.", "choose some that are further away.")
    nearest = [choice for choice, far in zip(choices, away, strict=True) if far == least]
    others = [(choice, far) for choice, far in zip(choices, away, strict=True) if far > least]
    gaps = [_gap(choice.worth, task.to) for choice in choices]
    steps = [*(step for choice in choices for step in choice.steps), *(gap for gap in gaps if gap)]
    numbers = [number for choice in choices for number in choice.numbers]
    numbers += [Number(number, written(number, _PLACES)) for step in steps for number in step.numbers]
    return Solution(
        Task(f"Which is nearest to {written(task.to, _PLACES)}?", lines=tuple(Line((one.text,)) for one in choices)),
        tuple(Answer(_say(one, least), _explain(one, task), Nearest(one.text, one.worth, least)) for one in nearest),
        demand_numbers(numbers)
        | Demands(
            operations=tuple(dict.fromkeys(steps)),
            signs=frozenset({"=", *(step.sign for step in steps)} if steps else ()),
            tables=find_tables(steps, context.year),
        ),
        len(choices),
        capital(listed([f"{one.text} is {written(far, _PLACES)} away" for one, far in others])) + ".",
        _expect_below(choices, task, nearest),
    )


def _gap(worth: Fraction, to: Fraction) -> Operation | None:
    """How far a number is from the one to be near."""
    more, less = max(worth, to), min(worth, to)
    return operation("−", more, less, more - less) if more > less >= 0 else None


def _say(one: Choice, far: Fraction) -> str:
    so = f"only {written(far, _PLACES)} away" if far else "just that"
    return f"{one.text}: {so}"


def _explain(one: Choice, task: NearestTask) -> str:
    gap = _gap(one.worth, task.to)
    steps = [write_calculation(step, _PLACES) for step in (*one.steps, *([gap] if gap else []))]
    return "; ".join(steps) + "." if steps else f"{one.text} is {written(abs(one.worth - task.to), _PLACES)} away."


def _expect_below(choices: list[Choice], task: NearestTask, nearest: list[Choice]) -> LikelyError | None:
    """Looking only at what is less."""
    below = [choice for choice in choices if choice.worth <= task.to]
    wrong = max(below, key=lambda choice: choice.worth, default=None)
    if wrong is None or wrong in nearest:
        return None
    return LikelyError("Looks only at what is less.", f"{wrong.text}.")
