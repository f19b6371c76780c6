"""Money activities remade for another year: all of it so many times as much, or amounts and coins of that year."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import partial
from itertools import product
from typing import TYPE_CHECKING, Any

from ...model.activity import CastMember, Context
from ...model.year import YearLimits
from .uk_coins import MONEY

if TYPE_CHECKING:
    from . import MoneyFields

Version = tuple["MoneyFields", Context, str]
_ONE = ("amount", "start", "change", "price", "each")
_SEVERAL = ("less", "each_less")
_COINS = ("coins", "purse", "other", "paid")
_TIMES: Mapping[int, Sequence[Fraction]] = {
    0: (Fraction(1, 10), Fraction(1, 5)),
    1: (Fraction(1, 10), Fraction(1, 5), Fraction(1, 2), Fraction(1, 100)),
    2: (Fraction(1, 10), Fraction(5), Fraction(2), Fraction(10), Fraction(1, 5), Fraction(1, 100)),
    3: (Fraction(10), Fraction(5), Fraction(1, 10)),
    4: (Fraction(25), Fraction(35), Fraction(10), Fraction(1, 10)),
    5: (Fraction(45), Fraction(75), Fraction(100), Fraction(10)),
    6: (Fraction(125), Fraction(165), Fraction(100), Fraction(10)),
}
"""How many times as much, best first: whole tens keep the coins real, the rest cross pounds."""
_WHOLE_TENS = (Fraction(10), Fraction(100), Fraction(1, 10), Fraction(5), Fraction(2), Fraction(1, 5), Fraction(1, 2))
_LARGEST: Mapping[int, Sequence[int]] = {
    0: range(10, 2, -1), 1: range(20, 3, -1), 2: [*range(100, 20, -5), *range(99, 20, -1)],
    3: [*range(1000, 200, -50), *range(990, 100, -10)], 4: range(2000, 300, -25), 5: range(10_000, 1000, -95),
    6: range(50_000, 5000, -475),
}  # fmt: skip
"""What the largest amount may become, in pence, best first."""
_PURSES: Mapping[int, tuple[Sequence[int], Sequence[tuple[int, ...]]]] = {
    0: (range(10, 2, -1), [(5, 2, 1), (2, 1)]),
    1: ((10, 12, 15, 8, 20, 9, 7, 6), [(10, 5, 2), (5, 2, 1), (10, 5, 2, 1)]),
    2: ((30, 25, 40, 50, 35, 60, 45, 100), [(20, 10, 5), (50, 20, 10), (20, 10, 5, 2)]),
    3: ((200, 150, 250, 300, 180), [(100, 50, 20), (100, 50, 20, 10), (200, 100, 50)]),
    4: ((360, 450, 500, 275, 740), [(200, 100, 50, 20), (200, 100, 50), (100, 50, 20, 5)]),
    5: ((1250, 1500, 2000, 1640), [(1000, 500, 200), (500, 200, 50), (1000, 500, 200, 20)]),
    6: ((2750, 3500, 5000, 4120), [(2000, 1000, 500), (1000, 500, 200, 50), (2000, 500, 200, 20)]),
}
"""Amounts to make in a year, and kinds of coins and notes to make them from."""


def versions_of(fields: MoneyFields, context: Context, year: YearLimits) -> Iterator[Version]:
    """For a younger year the same money first; for an older, its own amounts first."""
    there, harder = replace(context, year=year), year.year > context.year.year
    if not harder:
        yield fields, there, "The same money."
    made_of_coins = fields.find in ("ways", "fewest")
    for factor in _WHOLE_TENS if made_of_coins else _TIMES[year.year]:
        if harder == (factor < 1):
            continue
        many = f"{factor} times" if factor.denominator == 1 else f"{factor} of"
        changed = _remade(fields, there, partial(_exactly, factor=factor), _exact_coin(factor))
        if changed:
            yield (
                *changed,
                f"All the money is {many} as much." if factor > 1 else f"All the money is {many} what it was.",
            )
    if made_of_coins and not fields.purse:
        for amount, coins in product(*_PURSES[year.year]):
            new = {"amount": amount, "coins": coins, "ask": None}
            yield fields.model_copy(update=new), there, "Another amount, and other coins."
    elif made_of_coins:
        yield from _other_purses(fields, there)
    else:
        yield from _near(fields, there)
    if harder:
        yield fields, there, "The same money."


def _other_purses(fields: MoneyFields, context: Context) -> Iterator[Version]:
    """The purse with each coin become another real one, in the same order, and amounts it may hold."""
    old, real = sorted(set(fields.purse)), sorted(MONEY)
    for first in range(len(real) - len(old), -1, -1):
        new = dict(zip(old, real[first : first + len(old)], strict=True))
        purse = tuple(new[worth] for worth in fields.purse)
        for amount in _LARGEST[context.year.year]:
            if purse != fields.purse and amount < sum(purse):
                changed = {"purse": purse, "amount": amount, "ask": None}
                yield fields.model_copy(update=changed), context, "Other coins in the purse, in the same order."


def _near(fields: MoneyFields, context: Context) -> Iterator[Version]:
    """All the money about so much as much, in steps of 5p or 1p, what was more still being more."""
    largest = max(_amounts(fields, context), default=0)
    for new_largest in _LARGEST[context.year.year] if largest else ():
        factor = Fraction(new_largest, largest)
        for step in (5, 1) if new_largest > 30 else (1,):
            rising = _rising(sorted(set(_amounts(fields, context))), factor, step)
            changed = _remade(fields, context, rising.get, partial(_real_coin, factor=factor))
            if changed and not _all_spent(changed[0]):
                yield *changed, "Other amounts, in the same order."


def _all_spent(fields: MoneyFields) -> bool:
    """Whether there is no change to find."""
    price = sum(count * each for count, each in fields.items) + sum((fields.prices or {}).values())
    return fields.find == "change" and price >= sum(fields.paid)


def _amounts(fields: MoneyFields, context: Context) -> list[int]:
    """Every amount that is no coin."""
    found = [value for name in _ONE if (value := getattr(fields, name))]
    found += [value for name in _SEVERAL for value in getattr(fields, name)]
    found += [*(fields.prices or {}).values(), *(worth for _, worth in fields.items)]
    if fields.fact:
        found += [value for p in context.characters if isinstance(value := p.facts.get(fields.fact), int)]
    return found


def _rising(levels: Sequence[int], factor: Fraction, step: int) -> dict[int, int]:
    new, last = {}, 0
    for level in levels:
        last = max(last + step, round(level * factor / step) * step)
        new[level] = last
    return new


def _exactly(worth: int, factor: Fraction) -> int | None:
    new = worth * factor
    return int(new) if new.denominator == 1 and new >= 1 else None


def _exact_coin(factor: Fraction) -> Callable[[int], int | None]:
    """A coin so many times as much, if it is a real one or was not real before."""

    def coin(worth: int) -> int | None:
        new = _exactly(worth, factor)
        return new if new in MONEY or worth not in MONEY else None

    return coin


def _real_coin(worth: int, factor: Fraction) -> int | None:
    return max((coin for coin in MONEY if coin <= worth * factor), default=None)


def _remade(
    fields: MoneyFields, context: Context, amount: Callable[[int], int | None], coin: Callable[[int], int | None]
) -> tuple[MoneyFields, Context] | None:
    """Fields and context with every amount and coin remade; None when one of them cannot be."""
    update: dict[str, Any] = {name: amount(value) for name in _ONE if (value := getattr(fields, name))}
    for names, new in ((_SEVERAL, amount), (_COINS, coin)):
        update |= {name: tuple(map(new, old)) for name in names if (old := getattr(fields, name))}
    if fields.prices:
        update["prices"] = {name: amount(price) for name, price in fields.prices.items()}
    if fields.items:
        update["items"] = tuple((count, amount(worth)) for count, worth in fields.items)
    characters = tuple(_with(character, fields.fact, amount) for character in context.characters)
    every = [*update.values(), *(character.facts.get(fields.fact or "", 0) for character in characters)]
    flat = [
        part
        for value in every
        for item in (value.values() if isinstance(value, dict) else value if isinstance(value, tuple) else [value])
        for part in (item if isinstance(item, tuple) else (item,))
    ]
    if any(part is None or part == -1 for part in flat):
        return None
    update["ask"] = None  # the author's words name the old amounts
    return fields.model_copy(update=update), replace(context, characters=characters)


def _with(character: CastMember, fact: str | None, amount: Callable[[int], int | None]) -> CastMember:
    value = character.facts.get(fact or "")
    if not fact or not isinstance(value, int):
        return character
    # A value that cannot be remade is marked, and the whole version then dropped.
    return replace(character, facts={**character.facts, fact: amount(value) or -1})
