"""Measure activities for another year: so many times as much, in units the year has met, in the same order."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import chain, combinations, product

from ...model.activity import CastMember, Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import easier_first
from ..saying import ending_places, plain, written
from .amount import ONE_CM, Amount, is_met
from .measured import measured_of_cast
from .tasks import (
    AmountChange,
    ChooseUnit,
    CompareAmounts,
    ConvertAmounts,
    FindPerimeter,
    LevelLoad,
    MeasureTask,
    OrderAmounts,
    ReachLoads,
    ReadScale,
    WithMeasured,
    WithUnit,
)

Version = tuple[MeasureTask, Context, str]
_WHOLE_TENS = (Fraction(100), Fraction(10), Fraction(5), Fraction(2), Fraction(1, 10), Fraction(1, 100))
"""Factors that keep weights handy."""
_WHOLE = (Fraction(12), Fraction(7), Fraction(3), Fraction(25), Fraction(1, 10), Fraction(1, 5), Fraction(1, 2))
"""Factors that do more than move the digits, where an amount is told in another unit."""
_FIVES_FROM = 30
_GRAMS_FROM = 10
_NEXT_TO: Mapping[str, str] = {"mm": "cm", "km": "m"}
"""The unit to take where one is not met yet."""
_EVERYDAY: Mapping[str, str] = {"length": "cubes", "mass": "cubes", "capacity": "cups"}
"""What is measured with before standard units."""


class _CannotBecome(Exception):
    """An amount that the year cannot write."""


@dataclass(frozen=True, slots=True)
class _NumberChange:
    """What becomes of the number of one amount, and of its unit; of as many equal amounts if it was several."""

    number: Callable[[Fraction], Fraction]
    unit: Callable[[str], str]

    def of(self, amount: Amount) -> Amount:
        """The amount changed."""
        return Amount(self.number(amount.each.number) * amount.count, self.unit(amount.unit), amount.count)


def versions_of(task: MeasureTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """For a younger year the same amounts first; for an older, its own first."""
    there, harder = replace(context, year=year), year.year > context.year.year
    same = (task, there, "The same amounts.")
    if isinstance(task, ChooseUnit):
        return chain([same], _fewer_units(task, there))
    if isinstance(task, FindPerimeter) and task.squares and not task.side:
        task = task.with_side(ONE_CM)
    if isinstance(task, ReadScale):
        return easier_first(same, _other_scales(task, there), harder)
    return easier_first(same, chain(_many_times(task, there, harder), _near(task, there, harder)), harder)


def _fewer_units(task: ChooseUnit, context: Context) -> Iterator[Version]:
    """Only the units that the year has met, and what is measured in them: nothing else is as large as it is."""
    units = tuple(unit for unit in task.units if is_met(unit, context.year))
    things = {name: amount for name, amount in task.things.items() if is_met(amount.unit, context.year)}
    if len(units) > 1 and things:
        yield task.with_units(units, things), context, "Only units the year knows."


def _many_times(task: MeasureTask, context: Context, harder: bool) -> Iterator[Version]:
    """Every amount so many times what it was, where the year can write them all."""
    year, weighing = context.year, isinstance(task, (LevelLoad, ReachLoads))
    converting = isinstance(task, ConvertAmounts)
    for factor in _WHOLE_TENS if weighing else _WHOLE if converting else year.practice.measure.times:
        if harder == (factor > 1):
            in_grams = weighing and factor >= _GRAMS_FROM
            changed = _changed(task, context, _NumberChange(_multiply_by(factor, year), _unit_for(year, in_grams)))
            if changed:
                yield *changed, f"Every number is {written(factor, 3)} times what it was."


def _multiply_by(factor: Fraction, year: YearLimits) -> Callable[[Fraction], Fraction]:
    def times(number: Fraction) -> Fraction:
        places = ending_places(number * factor)
        if places is None or places > year.decimal_places:
            raise _CannotBecome
        return number * factor

    return times


def _near(task: MeasureTask, context: Context, harder: bool) -> Iterator[Version]:
    """Every number about so much as much, whole, what was more still being more; only where one unit can be used."""
    try:
        task = task if harder else _in_one_unit(task, _amounts(task, context))
        every = _amounts(task, context)
    except Unsolvable:
        return
    if len({amount.unit for amount in every}) != 1 or min(amount.number for amount in every) <= 0:
        return
    levels = sorted({amount.each.number for amount in every})
    largest_first = chain.from_iterable(some.all() for some in context.year.practice.measure.largest)
    for largest, step in product(largest_first, (5, 1)):
        if step == 1 or largest >= _FIVES_FROM:
            new = _rising(levels, largest / levels[-1], step)
            changed = _changed(task, context, _NumberChange(new.__getitem__, _unit_for(context.year)))
            if changed:
                yield *changed, "Other numbers, in the same order."


def _rising(levels: Sequence[Fraction], factor: Fraction, step: int) -> dict[Fraction, Fraction]:
    new, last = {}, 0
    for level in levels:
        last = max(last + step, round(level * factor / step) * step)
        new[level] = Fraction(last)
    return new


def _in_one_unit(task: MeasureTask, every: Sequence[Amount]) -> MeasureTask:
    """Amounts that are only compared or put in order, all in the smallest of their units; any other task as it is."""
    units = sorted({amount.unit for amount in every}, key=lambda unit: Amount(Fraction(1), unit).size)
    if task.fact or len({amount.kind for amount in every}) != 1 or not isinstance(task, (CompareAmounts, OrderAmounts)):
        return task
    return task.with_amounts(AmountChange(lambda amount: amount.into(units[0]), str))


def _keeps_order(before: Sequence[Amount], after: Sequence[Amount]) -> bool:
    """Whether amounts of one kind are still of one kind, and what was more is still more."""
    pairs = list(zip(before, after, strict=True))
    return all(
        one.kind != other.kind
        or (new.kind == new_other.kind and _sign(one.size - other.size) == _sign(new.size - new_other.size))
        for (one, new), (other, new_other) in combinations(pairs, 2)
    )


def _sign(number: Fraction) -> int:
    return (number > 0) - (number < 0)


def _unit_for(year: YearLimits, in_grams: bool = False) -> Callable[[str], str]:
    """The unit if the year has met it; else the next one of the same kind, or an everyday one."""

    def unit_of(unit: str) -> str:
        if in_grams and unit == "kg":
            return "g"
        if is_met(unit, year):
            return unit
        if unit in _NEXT_TO and is_met(_NEXT_TO[unit], year):
            return _NEXT_TO[unit]
        return _EVERYDAY.get(Amount(Fraction(1), unit).kind, unit)

    return unit_of


def _amounts(task: MeasureTask, context: Context) -> list[Amount]:
    """Every amount that changes. Raises ``Unsolvable``."""
    seen: list[Amount] = []

    def note(amount: Amount) -> Amount:
        seen.append(amount)
        return amount

    task.with_amounts(AmountChange(note, str))
    return [*seen, *_values(task, context)]


def _values(task: MeasureTask, context: Context) -> list[Amount]:
    """The amounts of the cast. Raises ``Unsolvable``."""
    if task.fact and isinstance(task, (WithMeasured, LevelLoad)):
        return [one.amount for one in measured_of_cast(task, context)]
    return []


def _changed(task: MeasureTask, context: Context, change: _NumberChange) -> tuple[MeasureTask, Context] | None:
    """The task and the context with every amount changed; None when one of them cannot be."""
    about = context.facts.get(task.fact or "")
    try:
        before = _amounts(task, context)
        if not _keeps_order(before, [change.of(amount) for amount in before]):
            return None
        values = [change.of(amount) for amount in _values(task, context)]
        if about and isinstance(task, WithUnit):
            task = task.with_unit(about.unit)
        changed = task.with_amounts(AmountChange(change.of, change.unit))
    except _CannotBecome:
        return None
    if values:
        each = zip(context.characters, values, strict=True)
        characters = tuple(_with_amount(one, task.fact or "", amount) for one, amount in each)
        context = replace(context, characters=characters)
    return changed, context


def _with_amount(character: CastMember, fact: str, amount: Amount) -> CastMember:
    value = plain(amount.number)
    if not isinstance(character.facts.get(fact), int) or isinstance(value, str):
        value = f"{value} {amount.unit}".strip()
    return replace(character, facts={**character.facts, fact: value})


def _other_scales(task: ReadScale, context: Context) -> Iterator[Version]:
    """The arrows on another scale, as far along it as they were, each at a mark of its own."""
    start, end = task.ends
    if end <= start:  # as an author may pin it, which is told when it is worked out as it stands
        return
    levels = sorted(set(task.pointers))
    unit = _unit_for(context.year)(task.unit) if task.unit else None
    for new_end, parts, numbered in context.year.practice.measure.scales:
        marks: dict[Fraction, int] = {}
        last = 0
        for level in levels:
            last = max(last + 1, round((level - start) / (end - start) * parts))
            marks[level] = last
        if last <= parts:
            pointers = tuple(Fraction(marks[pointer] * new_end, parts) for pointer in task.pointers)
            yield task.with_scale(new_end, parts, numbered, pointers, unit), context, "Another scale."
