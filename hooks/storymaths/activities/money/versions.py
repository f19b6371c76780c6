"""Money activities for another year: all of it so many times as much, or amounts and coins of that year."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import chain, product

from ...model.activity import Context
from ...model.year import YearLimits
from ..revalue import with_values
from .money_fields import MoneyChange
from .tasks import GiveChange, MakeAmount, MakeInFewest, MakeTask, MoneyTask

Version = tuple[MoneyTask, Context, str]
_KEEPING_COINS_REAL = (10, 100, 5, 2)
_FINE_STEP, _FINE_UP_TO = 5, 30


class _CannotBecome(Exception):
    """An amount that is no whole number of pence, or a coin that does not exist."""


def versions_of(task: MoneyTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """For a younger year the same money first; for an older, its own amounts first."""
    there, harder = replace(context, year=year), year.year > context.year.year
    if not harder:
        yield task, there, "The same money."
    made_of_coins = isinstance(task, (MakeAmount, MakeInFewest))
    yield from _many_times(task, there, harder, made_of_coins)
    if not isinstance(task, (MakeAmount, MakeInFewest)):
        yield from _near(task, there)
    elif task.purse:
        yield from _other_purses(task, there)
    else:
        for amount, coins in product(year.practice.money.make, year.practice.money.coins):
            yield task.with_coins(amount, coins, ()), there, "Another amount, and other coins."
    if harder:
        yield task, there, "The same money."


def _many_times(task: MoneyTask, context: Context, harder: bool, made_of_coins: bool) -> Iterator[Version]:
    """All the money times a number, or a part of it."""
    practice = context.year.practice.money
    for many in _KEEPING_COINS_REAL if made_of_coins else practice.times if harder else practice.parts:
        factor = Fraction(many) if harder else Fraction(1, many)
        changed = _changed(task, context, _exact_change(factor, context.money.worths))
        if changed:
            yield *changed, f"All the money is {f'{many} times as much' if harder else f'1/{many} of what it was'}."


def _exact_change(factor: Fraction, real: Sequence[int]) -> MoneyChange:
    """Everything times a factor. A coin may become one that is no real coin if it was none before."""

    def amount(worth: int) -> int:
        new = worth * factor
        if new.denominator > 1:
            raise _CannotBecome
        return int(new)

    def coin(worth: int) -> int:
        new = amount(worth)
        if new not in real and worth in real:
            raise _CannotBecome
        return new

    return MoneyChange(amount, coin)


def _other_purses(task: MakeTask, context: Context) -> Iterator[Version]:
    """The purse with each coin become another real one, in the same order, and amounts it may hold."""
    old, real = sorted(set(task.purse)), context.money.worths
    for first in range(len(real) - len(old), -1, -1):
        new = dict(zip(old, real[first : first + len(old)], strict=True))
        purse = tuple(new[worth] for worth in task.purse)
        for amount in _largest_in(context.year):
            if purse != task.purse and amount < sum(purse):
                changed = task.with_coins(amount, task.coins, purse)
                yield changed, context, "Other coins in the purse, in the same order."


def _near(task: MoneyTask, context: Context) -> Iterator[Version]:
    """All the money about so much as much, in steps of 5p or 1p, what was more still being more."""
    levels = sorted(set(_amounts(task, context)))
    for largest in _largest_in(context.year) if levels and levels[-1] else ():
        factor = Fraction(largest, levels[-1])
        for step in (_FINE_STEP, 1) if largest > _FINE_UP_TO else (1,):
            change = MoneyChange(_rising(levels, factor, step).__getitem__, _real_coin(factor, context.money.worths))
            changed = _changed(task, context, change)
            if changed and not _is_all_spent(changed[0]):
                yield *changed, "Other amounts, in the same order."


def _largest_in(year: YearLimits) -> Iterator[int]:
    return chain.from_iterable(amounts.all() for amounts in year.practice.money.largest)


def _is_all_spent(task: MoneyTask) -> bool:
    """Whether there is no change to find."""
    return isinstance(task, GiveChange) and task.bill.total >= sum(task.paid)


def _amounts(task: MoneyTask, context: Context) -> list[int]:
    """Every amount that is no coin."""
    seen: list[int] = []

    def note(amount: int) -> int:
        seen.append(amount)
        return amount

    task.with_money(MoneyChange(note, lambda coin: coin))
    return [*seen, *_values(task, context)]


def _values(task: MoneyTask, context: Context) -> list[int]:
    """What the cast has or costs."""
    values = (character.facts.get(task.fact or "") for character in context.characters)
    return [value for value in values if isinstance(value, int)]


def _rising(levels: Sequence[int], factor: Fraction, step: int) -> Mapping[int, int]:
    new, last = {}, 0
    for level in levels:
        last = max(last + step, round(level * factor / step) * step)
        new[level] = last
    return new


def _real_coin(factor: Fraction, real: Sequence[int]) -> Callable[[int], int]:
    """The largest real coin no larger than a coin times a factor."""

    def coin(worth: int) -> int:
        new = max((one for one in real if one <= worth * factor), default=0)
        if not new:
            raise _CannotBecome
        return new

    return coin


def _changed(task: MoneyTask, context: Context, change: MoneyChange) -> tuple[MoneyTask, Context] | None:
    """The task and the context with other money; None where some of it cannot be."""
    values = _values(task, context)
    try:
        new = {value: change.amount(value) for value in values}
        changed = task.with_money(change)
    except _CannotBecome:
        return None
    if task.fact and len(values) == len(context.characters):
        context = with_values(context, task.fact, new)
    return changed, context
