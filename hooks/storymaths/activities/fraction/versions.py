"""Fraction activities remade for another year: its own denominators, amounts that share out, the same order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, islice
from math import gcd

from ...expression.number import WrittenNumber
from ...model.activity import Context
from ...model.year import YearLimits
from ..revalue import SAME_NUMBERS, easier_first, revalued, with_values
from ..saying import spoken
from .shape_in_parts import FractionShape
from .tasks import (
    EqualTask,
    FractionTask,
    GroupsTask,
    LineTask,
    NumbersTask,
    PartTask,
    RestTask,
    SetTask,
    ShapeTask,
    ShareTask,
    WholeTask,
)

_MOST_TRIED = 2000
_UP_TO_TIMES = 6
"""So many counts share out where the counts end anew."""
AmountTask = PartTask | RestTask | WholeTask | ShareTask | GroupsTask
Version = tuple[FractionTask, Context, str]


def versions_of(task: FractionTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """For a younger year the same numbers first; for an older, its own fractions and amounts first."""
    there, harder = replace(context, year=year), year.year > context.year.year
    yield from easier_first((task, there, SAME_NUMBERS), islice(_remade(task, there, harder), _MOST_TRIED), harder)


def _remade(task: FractionTask, context: Context, harder: bool) -> Iterator[Version]:
    match task:
        case SetTask():
            return
        case PartTask() | RestTask() | WholeTask() | ShareTask() | GroupsTask():
            yield from _of_amounts(task, context, harder)
        case _:
            yield from (
                (changed, context, "Other fractions, in the same order.") for changed in _of_numbers(task, context)
            )


def _of_amounts(task: AmountTask, context: Context, harder: bool) -> Iterator[Version]:
    for fraction in _fractions(task.fraction, context.year, harder):
        # An older year's own amounts come before the old amount, a younger year's after it.
        now = task if fraction is task.fraction else task.with_fraction(fraction)
        says = f"The fraction is {spoken(fraction.value)}."
        if not harder:
            yield now, context, says
        match now:
            case PartTask() | ShareTask() | GroupsTask() if now.fact:
                others = _scenes(task, now.fact, fraction.value.denominator, context)
                yield from ((now, other, says) for other in others)
            case PartTask() | RestTask() | WholeTask():
                for each in context.year.practice.fraction.each:
                    yield now.with_each(fraction, each), context, f"{says} The amount shares out."
            case ShareTask() if now.up_to:
                shorter = now.with_up_to(_UP_TO_TIMES * fraction.value.denominator)
                yield shorter, context, f"{says} The counts are fewer."


def _fractions(fraction: WrittenNumber, year: YearLimits, harder: bool) -> list[WrittenNumber]:
    """The fraction itself, and one of the same sort over each denominator of the year, its own new ones first."""
    unit = fraction.value.numerator == 1
    others = [WrittenNumber.over(1 if unit else under - 1, under) for under in year.practice.fraction.denominators]
    others = [other for other in others if other.value != fraction.value]
    return [*others, fraction] if harder else [fraction, *others]


def _scenes(task: AmountTask, fact: str, under: int, context: Context) -> Iterator[Context]:
    """The cast's values remade as multiples of the denominator, in the same order; for groups, remade in any way."""
    if isinstance(task, GroupsTask):
        yield from (other for other, _ in revalued(context, fact, context.year))
        return
    values = [character.facts.get(fact) for character in context.characters]
    levels = sorted({value for value in values if isinstance(value, int)})
    if not all(isinstance(value, int) for value in values):
        return
    shared_before = {level: level % task.fraction.value.denominator == 0 for level in levels}
    for least in (2 * under, under, 4 * under):
        new, last = {}, least - 1
        for level in levels:
            # Who could share before can share still, and who could not still cannot.
            shares = shared_before[level] or not isinstance(task, ShareTask)
            last = next(n for n in range(last + 1, last + under + 2) if (n % under == 0) == shares)
            new[level] = last
        yield with_values(context, fact, new)


def _of_numbers(task: NumbersTask, context: Context) -> Iterator[NumbersTask]:
    """Fractions in place of fractions: smaller stays smaller, and equal stays equal in the same number of ways."""
    old = _written_in(task)
    shapes = task.shapes if isinstance(task, ShapeTask) else ()
    in_parts = [shape.fraction for shape in shapes if shape.in_whole_parts and shape.shaded]
    fixed = {shape.fraction for shape in shapes if not shape.in_whole_parts}
    values = sorted({number.value for number in old} | set(in_parts))
    if not values or any("/" not in number.text for number in old) or (old and not 0 < values[0] <= values[-1] < 1):
        return
    unders = context.year.practice.fraction.denominators
    easy = [Fraction(over, under) for under in unders for over in range(1, under) if gcd(over, under) == 1]
    for chosen in combinations(easy, len(values)):
        new = dict(zip(values, sorted(chosen), strict=True))
        if any(_over_new(number, new).under not in unders for number in old):
            continue
        if not _is_in_order({**new, **{fraction: fraction for fraction in fixed}}):
            continue
        changed = _with_fractions(task, new, unders)
        if changed != task:
            yield changed.model_copy(update={"ask": None})


def _written_in(task: NumbersTask) -> list[WrittenNumber]:
    fraction = task.fraction if isinstance(task, (ShapeTask, EqualTask)) else None
    numbers = () if isinstance(task, ShapeTask) else task.numbers
    return [*([fraction] if fraction else []), *numbers]


def _with_fractions(task: NumbersTask, new: Mapping[Fraction, Fraction], unders: Sequence[int]) -> NumbersTask:
    if isinstance(task, ShapeTask):
        fraction = _over_new(task.fraction, new) if task.fraction else None
        return task.with_shapes(tuple(_reshaded(shape, new, unders) for shape in task.shapes), fraction)
    numbers = tuple(_over_new(number, new) for number in task.numbers)
    match task:
        case EqualTask():
            up_to = min(task.up_to, max(unders)) if task.up_to else None
            return task.with_numbers(numbers, _over_new(task.fraction, new) if task.fraction else None, up_to)
        case LineTask():
            return task.with_numbers(numbers, max(value.denominator for value in new.values()))
        case _:
            return task.with_numbers(numbers)


def _is_in_order(new: Mapping[Fraction, Fraction]) -> bool:
    rising = [new[old] for old in sorted(new)]
    return rising == sorted(set(rising))


def _over_new(number: WrittenNumber, new: Mapping[Fraction, Fraction]) -> WrittenNumber:
    """The new number in place of an old one, not made simpler where the old one was not."""
    times, value = number.under // number.value.denominator, new[number.value]
    return WrittenNumber.over(value.numerator * times, value.denominator * times)


def _reshaded(shape: FractionShape, new: Mapping[Fraction, Fraction], unders: Sequence[int]) -> FractionShape:
    """The shape with its new fraction shaded, cut as finely as it was where the year has met such parts."""
    value = new.get(shape.fraction)
    if value is None or not shape.in_whole_parts:
        return shape
    finer = len(shape.sizes) // shape.fraction.denominator
    times = next((n for n in range(finer, 1, -1) if value.denominator * n in unders), 1)
    return shape.with_shaded(value.numerator * times, value.denominator * times)
