"""Angles worked out: what sort they are, how large turns are, and the one that is missing."""

from __future__ import annotations

from fractions import Fraction
from string import ascii_uppercase

from ...expression.number import WrittenNumber
from ...model.activity import Answer, Context, Figure, LikelyError, Line, Solution, Task
from ...model.demands import Amount, Demands, Operation, amounts, number_sentences, operation
from ...model.fields import year_name
from ...model.figures.shapes import AngleFan
from ..kind import Unsolvable
from ..saying import written
from ..sentences import write_calculation
from . import say
from .tasks import (
    RIGHT,
    TOTALS,
    WHOLE_TURN,
    AngleAnswer,
    AngleTask,
    FindAround,
    FindInShape,
    MeasureTurns,
    Missing,
    MissingTask,
    NameAngles,
    Named,
    Turned,
    name_of,
)

_WORDS = {"acute": "acute angle", "obtuse": "obtuse angle"}


def solve(task: AngleTask, context: Context) -> Solution[AngleAnswer]:
    """An answer for each angle or turn, in the order given; or the one that is missing. Raises ``Unsolvable``."""
    match task:
        case NameAngles():
            return _name(task, context)
        case MeasureTurns():
            return _measure(task, context)
        case _:
            return _find_missing(task)


def _name(task: NameAngles, context: Context) -> Solution[AngleAnswer]:
    year = context.year
    named = [
        Named(letter, degrees, name_of(degrees)) for letter, degrees in zip(ascii_uppercase, task.angles, strict=False)
    ]
    late = next((one for one in named if one.degrees >= 180 and one.name not in year.practice.angle.names), None)
    if late:
        message = f"{year_name(year.year)} does not yet look at angles as large as {late.degrees}°."
        fix = "choose angles less than 180, or an older year."
        raise Unsolvable(("angles", named.index(late)), message, fix, "activity-beyond-year")
    known = year.knows("°")
    words = [_WORDS[one.name] for one in named if one.name in _WORDS and one.name in year.practice.angle.names]
    return Solution(
        Task(
            say.ask_for_names(year),
            lines=tuple(
                Line((f"Angle {one.angle}: {one.degrees}°, " if known else f"Angle {one.angle}: ", "")) for one in named
            ),
            figures=tuple(
                Figure(AngleFan((one.degrees,), (one.angle,)), say.describe_fan([one.angle])) for one in named
            ),
        ),
        tuple(Answer(say.say_named(one, year), say.explain_name(one, year), one) for one in named),
        _degrees([*task.angles, RIGHT] if known else []) | Demands(words=tuple(dict.fromkeys((*words, "right angle")))),
        1,
        say.HOW_NAMED,
    )


def _degrees(degrees: list[int]) -> Demands:
    return Demands(amounts(degrees), signs=frozenset("°" if degrees else ""))


def _measure(task: MeasureTurns, context: Context) -> Solution[AngleAnswer]:
    year = context.year
    unit, size = ("degrees", 1) if year.knows("°") else ("right angles", RIGHT)
    turned = [_turned(turn, index, unit, size) for index, turn in enumerate(task.turns)]
    steps = [_share_turn(turn.value, WHOLE_TURN // size) for turn in task.turns]
    whole = f"A whole turn is {WHOLE_TURN // size} {unit}"
    told = ["; ".join(map(write_calculation, some)) or whole for some in steps]
    return Solution(
        Task(say.ask_for_turns(year), lines=tuple(Line((f"{say.name_turn(turn.text)}: ", "")) for turn in task.turns)),
        tuple(Answer(say.say_turned(one, year), f"{why}.", one) for one, why in zip(turned, told, strict=True)),
        (_degrees([WHOLE_TURN, *(one.degrees for one in turned)]) if size == 1 else Demands())
        | number_sentences(*(step for some in steps for step in some))
        | Demands(tuple(Amount(turn.value) for turn in task.turns), words=("turn", "right angle")),
        1 + any(turn.value.numerator > 1 for turn in task.turns),
        say.HOW_TURNED,
        None,
    )


def _turned(turn: WrittenNumber, index: int, unit: str, size: int) -> Turned:
    degrees = turn.value * WHOLE_TURN
    if not 0 < degrees <= WHOLE_TURN or (degrees / size).denominator > 1:
        message = f"{turn.text} of a turn is no whole number of {unit}."
        raise Unsolvable(("turns", index), message, "write a part such as 1/4 or 1/2, up to 1.")
    return Turned(turn.text, int(degrees))


def _share_turn(turn: Fraction, whole: int) -> list[Operation]:
    """A whole turn shared into equal parts, and so many of them taken."""
    over, under = turn.as_integer_ratio()
    part = Fraction(whole, under)
    shared = [operation("÷", whole, under, part)] if under > 1 else []
    return [*shared, *([operation("×", over, part, over * part)] if over > 1 else [])]


def _find_missing(task: MissingTask) -> Solution[AngleAnswer]:
    total, taken = task.total, sum(task.known)
    around = isinstance(task, FindAround)
    if isinstance(task, FindInShape) and len(task.known) + task.equal != task.sides:
        message = f"A shape with {task.sides} sides has {task.sides} angles; here are {len(task.known) + task.equal}."
        raise Unsolvable(("known",), message, "give all angles but the one that is missing, or say how many are equal.")
    rest = total - taken
    if rest <= 0 or (around and not task.known and task.equal == 1):
        message = f"The angles known come to {taken}°, and all together to {total}°."
        raise Unsolvable(("known",), message, "make them smaller, so that something is left.")
    each = Fraction(rest, task.equal)
    steps = [operation("+", *task.known, taken)] if len(task.known) > 1 else []
    steps += [operation("−", total, taken, rest)] if task.known else []
    steps += [operation("÷", rest, task.equal, each)] if task.equal > 1 else []
    figure = AngleFan((*task.known, *[each] * task.equal), (*(f"{one}°" for one in task.known), *"?" * task.equal))
    return Solution(
        Task(
            say.ask_for_missing(task),
            lines=(Line(("", "°")),),
            figures=(Figure(figure, say.describe_fan(figure.labels)),) if around else (),
        ),
        (
            Answer(
                say.say_missing(written(each, 3), task),
                "; ".join([say.say_total(task), *(write_calculation(step, 3) for step in steps)]) + ".",
                Missing(each),
            ),
        ),
        _degrees([*task.known, total]) | number_sentences(*steps) | Demands(amounts([each]), words=("degree",)),
        max(1, len(steps)),
        say.ONE_TOTAL,
        _expect_other_total(task, taken),
    )


def _expect_other_total(task: MissingTask, taken: int) -> LikelyError | None:
    """Taking from 180 where it should be 360, or the other way."""
    if task.equal > 1:
        return None
    other = TOTALS["straight line"] if task.total != TOTALS["straight line"] else WHOLE_TURN
    return say.expect_other_total(other, other - taken) if other > taken else None
