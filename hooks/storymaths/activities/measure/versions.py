"""Measure activities remade for another year: so many times as much, in units the year has met, in the same order."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial
from itertools import product
from typing import TYPE_CHECKING, Any

from ...model.activity import CastMember, Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..saying import ending_places, plain, written
from .amount import FIRST_YEAR, Amount
from .words import named_amounts

if TYPE_CHECKING:
    from . import MeasureFields

Version = tuple["MeasureFields", Context, str]
_ONE = ("start", "amount", "load", "of", "comes_to", "want", "total")
_SEVERAL = ("amounts", "less", "weights", "sides")
_NAMED = ("things", "by")
_TIMES: Mapping[int, Sequence[Fraction]] = {
    0: (Fraction(1, 10), Fraction(1, 2)),
    1: (Fraction(1, 10), Fraction(1, 5), Fraction(1, 2), Fraction(1, 100)),
    2: (Fraction(5), Fraction(2), Fraction(10), Fraction(1, 10), Fraction(1, 2), Fraction(1, 100)),
    3: (Fraction(25), Fraction(10), Fraction(5), Fraction(1, 10)),
    4: (Fraction(13, 10), Fraction(25), Fraction(5, 2), Fraction(100), Fraction(1, 10)),
    5: (Fraction(135, 100), Fraction(17, 4), Fraction(75), Fraction(100), Fraction(1, 10)),
    6: (Fraction(2375, 1000), Fraction(37, 4), Fraction(125), Fraction(1000), Fraction(1, 10)),
}
"""How many times as much, best first: whole tables first, then decimals once they are met."""
_WHOLE_TENS = (Fraction(100), Fraction(10), Fraction(5), Fraction(2), Fraction(1, 10), Fraction(1, 100))
_WHOLE = (Fraction(12), Fraction(7), Fraction(3), Fraction(25), Fraction(1, 10), Fraction(1, 5), Fraction(1, 2))
_LARGEST: Mapping[int, Sequence[int]] = {
    0: range(10, 2, -1), 1: range(20, 3, -1), 2: [*range(100, 20, -5), *range(99, 10, -1)],
    3: [*range(1000, 100, -50), *range(990, 50, -10)], 4: range(5000, 300, -75), 5: range(50_000, 2000, -475),
    6: range(500_000, 5000, -4750),
}  # fmt: skip
"""What the largest number may become, best first."""
_SCALES: Mapping[int, Sequence[tuple[int, int, int]]] = {
    0: ((10, 10, 1),), 1: ((20, 20, 5), (20, 10, 5), (10, 10, 1)), 2: ((100, 20, 2), (100, 10, 5), (50, 10, 2), (20, 10, 5)),
    3: ((1000, 20, 2), (1000, 10, 5), (500, 20, 5), (400, 8, 4)), 4: ((2000, 40, 5), (10, 100, 10), (1, 10, 10)),
    5: ((5000, 40, 4), (1, 40, 10), (2, 20, 10)), 6: ((10_000, 80, 8), (2, 80, 20), (5, 40, 8)),
}  # fmt: skip
"""Scales from nought: the end, how many parts, a number at every so many marks."""
_FIVES_FROM = 30
_EVERYDAY = {"length": "cubes", "mass": "cubes", "capacity": "cups", "": ""}


def versions_of(fields: MeasureFields, context: Context, year: YearLimits) -> Iterator[Version]:
    """For a younger year the same amounts first; for an older, its own first."""
    there, harder = replace(context, year=year), year.year > context.year.year
    if not harder:
        yield fields, there, "The same amounts."
    if fields.find == "read":
        yield from _other_scales(fields, there)
    else:
        yield from _so_many_times(fields, there, harder)
        yield from _near(fields, there)
    if harder:
        yield fields, there, "The same amounts."


@dataclass(frozen=True, slots=True)
class _Change:
    """What becomes of the number of one amount, and of its unit; of as many equal amounts if it was several."""

    number: Callable[[Fraction], Fraction | None]
    unit: Callable[[str], str]

    def of(self, amount: Amount) -> Amount | None:
        """The amount changed; None when the year cannot write it."""
        number = self.number(amount.each.number)
        return None if number is None else Amount(number * amount.count, self.unit(amount.unit), amount.count)


def _so_many_times(fields: MeasureFields, context: Context, harder: bool) -> Iterator[Version]:
    """Every amount so many times what it was, where the year can write them all."""
    year, weighing = context.year, fields.find in ("level", "reach")
    factors = _WHOLE_TENS if weighing else _WHOLE if fields.find == "convert" else _TIMES[year.year]
    for factor in factors:
        if harder == (factor > 1):
            in_grams = weighing and factor >= 10
            unit = partial(_known_or_grams if in_grams else _known, year=year)
            changed = _remade(fields, context, _Change(partial(_times, factor=factor, year=year), unit))
            if changed:
                yield *changed, f"Every number is {written(factor, 3)} times what it was."


def _times(number: Fraction, factor: Fraction, year: YearLimits) -> Fraction | None:
    new = number * factor
    places = ending_places(new)
    return new if places is not None and places <= year.decimal_places else None


def _near(fields: MeasureFields, context: Context) -> Iterator[Version]:
    """Every number about so much as much, whole, what was more still being more; only where one unit is used."""
    try:
        every = _every_amount(fields, context)
    except Unsolvable:
        return
    if len({amount.unit for amount in every}) != 1 or min(amount.number for amount in every) <= 0:
        return
    levels = sorted({amount.each.number for amount in every})
    for largest, step in product(_LARGEST[context.year.year], (5, 1)):
        if step == 1 or largest >= _FIVES_FROM:
            new = _rising(levels, largest / levels[-1], step)
            changed = _remade(fields, context, _Change(new.get, partial(_known, year=context.year)))
            if changed:
                yield *changed, "Other numbers, in the same order."


def _rising(levels: Sequence[Fraction], factor: Fraction, step: int) -> dict[Fraction, Fraction]:
    new, last = {}, 0
    for level in levels:
        last = max(last + step, round(level * factor / step) * step)
        new[level] = Fraction(last)
    return new


def _known_or_grams(unit: str, year: YearLimits) -> str:
    return "g" if unit == "kg" else _known(unit, year)


def _known(unit: str, year: YearLimits) -> str:
    """The unit if the year has met it; else a smaller year's unit of the same kind, or an everyday one."""
    if FIRST_YEAR.get(unit, 0) <= year.year:
        return unit
    kind = Amount(Fraction(1), unit).kind
    return {"mm": "cm", "km": "m"}.get(unit, unit) if year.year >= 2 else _EVERYDAY.get(kind, unit)


def _changing(fields: MeasureFields) -> tuple[Sequence[str], Sequence[str], Sequence[str]]:
    """Fields whose numbers change. Of amounts in step only what they come to does: half a block would be no block."""
    return (("comes_to",), (), ()) if fields.find == "rate" else (_ONE, _SEVERAL, _NAMED)


def _every_amount(fields: MeasureFields, context: Context) -> list[Amount]:
    one, several, named = _changing(fields)
    found = [amount for name in one if (amount := getattr(fields, name)) is not None]
    found += [amount for name in several for amount in getattr(fields, name)]
    found += [amount for name in named for amount in (getattr(fields, name) or {}).values()]
    return found + ([amount for _, _, amount in named_amounts(fields, context)] if fields.fact else [])


def _remade(fields: MeasureFields, context: Context, change: _Change) -> tuple[MeasureFields, Context] | None:
    """Fields and context with every amount changed; None when one of them cannot be."""
    one, several, named = _changing(fields)
    update: dict[str, Any] = {name: change.of(old) for name in one if (old := getattr(fields, name)) is not None}
    update |= {name: tuple(map(change.of, old)) for name in several if (old := getattr(fields, name))}
    update |= {name: {key: change.of(a) for key, a in old.items()} for name in named if (old := getattr(fields, name))}
    characters = (
        [_with(fields, context, i, change) for i in range(len(context.characters))]
        if fields.fact
        else context.characters
    )
    if any(item is None for item in (*_flat(update.values()), *characters)):
        return None
    about = context.facts.get(fields.fact or "")
    if unit := fields.unit or (about.unit if about else ""):
        update["unit"] = change.unit(unit)
    if fields.to:
        update["to"] = _known(fields.to, context.year)
    update["ask"] = None  # the author's words name the old amounts
    return fields.model_copy(update=update), replace(
        context, characters=tuple(character for character in characters if character)
    )


def _flat(values: Iterable[Any]) -> Iterator[Any]:
    for value in values:
        yield from value if isinstance(value, tuple) else value.values() if isinstance(value, dict) else (value,)


def _with(fields: MeasureFields, context: Context, index: int, change: _Change) -> CastMember | None:
    character = context.characters[index]
    amount = change.of(named_amounts(fields, context)[index][2])
    if amount is None:
        return None
    old = character.facts.get(fields.fact or "")
    value = plain(amount.number)
    if not isinstance(old, int) or isinstance(value, str):
        value = f"{value} {amount.unit}".strip()
    return replace(character, facts={**character.facts, fields.fact or "": value})


def _other_scales(fields: MeasureFields, context: Context) -> Iterator[Version]:
    """The arrows on another scale, as far along it as they were, each at a mark of its own."""
    start, end = fields.ends
    levels = sorted(set(fields.pointers))
    for new_end, parts, numbered in _SCALES[context.year.year]:
        step = Fraction(new_end, parts)
        marks: dict[Fraction, int] = {}
        last = 0
        for level in levels:
            last = max(last + 1, round((level - start) / (end - start) * parts))
            marks[level] = last
        if last <= parts:
            update = {
                "ends": (Fraction(0), Fraction(new_end)), "parts": parts, "numbered": numbered, "ask": None,
                "pointers": tuple(marks[pointer] * step for pointer in fields.pointers),
                "unit": _known(fields.unit, context.year) if fields.unit else None,
            }  # fmt: skip
            yield fields.model_copy(update=update), context, "Another scale."
