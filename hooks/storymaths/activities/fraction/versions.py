"""Fraction activities remade for another year: its own denominators, amounts that share out, the same order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, islice
from math import gcd
from typing import TYPE_CHECKING, Any

from ...model.activity import CastMember, Context
from ...model.year import YearLimits
from ..revalue import revalued
from ..saying import spoken
from .number import DENOMINATORS, WrittenNumber

if TYPE_CHECKING:
    from . import FractionFields
    from .shapes import FractionShape

_MOST_TRIED = 2000
_EASY_PARTS = 12
_EACH: Mapping[int, Sequence[int]] = {
    0: (), 1: (5, 4, 3, 2), 2: (5, 10, 6, 8, 4, 3, 2), 3: (8, 6, 12, 7, 4, 5), 4: (12, 9, 7, 8, 11, 25),
    5: (25, 45, 150, 120, 75), 6: (125, 360, 240, 75),
}  # fmt: skip
"""What one equal part may be in a year: within its tables, then past them."""
Version = tuple["FractionFields", Context, str]


def versions_of(fields: FractionFields, context: Context, year: YearLimits) -> Iterator[Version]:
    """For a younger year the same numbers first; for an older, its own fractions and amounts first."""
    there, harder = replace(context, year=year), year.year > context.year.year
    if not harder:
        yield fields, there, "The same numbers."
    if fields.find in ("part", "whole", "rest", "share", "groups"):
        yield from islice(_of_amounts(fields, there, harder), _MOST_TRIED)
    elif fields.find != "set":
        yield from islice(_of_numbers(fields, there), _MOST_TRIED)
    if harder:
        yield fields, there, "The same numbers."


def _of_amounts(fields: FractionFields, context: Context, harder: bool) -> Iterator[Version]:
    for fraction in _fractions(fields, context.year, harder):
        # An older year's own amounts come before the old amount, a younger year's after it.
        now = fields if fraction is fields.fraction else fields.model_copy(update={"fraction": fraction, "ask": None})
        says = f"The fraction is {spoken(fraction.value)}."
        if not harder:
            yield now, context, says
        if fields.fact:
            yield from ((now, other, says) for other in _scenes(fields, fraction.value.denominator, context))
        elif fields.find != "share":
            for update in _amounts(fields, fraction.value, context.year):
                yield (
                    fields.model_copy(update={"fraction": fraction, "ask": None, **update}),
                    context,
                    f"{says} The amount shares out.",
                )
        elif fields.up_to:
            yield (
                now.model_copy(update={"up_to": 6 * fraction.value.denominator}),
                context,
                f"{says} The counts are fewer.",
            )


def _fractions(fields: FractionFields, year: YearLimits, harder: bool) -> list[WrittenNumber]:
    """The fraction itself, and one of the same sort over each denominator of the year, its own new ones first."""
    fraction = fields.fraction
    assert fraction is not None
    others = [WrittenNumber.over(1 if fraction.value.numerator == 1 else under - 1, under) for under in _unders(year)]
    others = [other for other in others if other.value != fraction.value]
    return [*others, fraction] if harder else [fraction, *others]


def _unders(year: YearLimits) -> list[int]:
    met = [under for under in DENOMINATORS[year.year] if under <= _EASY_PARTS]
    if year.year >= 5:
        return sorted(met, reverse=True)  # nothing new to practise, so the harder ones first
    return sorted(met, key=lambda under: (under not in year.denominators_new, under not in (*year.tables, 2, 4)))


def _amounts(fields: FractionFields, fraction: Fraction, year: YearLimits) -> Iterator[Mapping[str, Any]]:
    """Amounts that share out, one equal part being of a size that the year practises."""
    over, under = fraction.numerator, fraction.denominator
    for each in _EACH[year.year]:
        if fields.find == "whole":
            known = "part" if fields.part is not None else "rest"
            yield {known: Fraction(each * (over if known == "part" else under - over))}
        elif fields.find == "rest":
            left = each * (under - over)
            size = left // (len(fields.taken) + 1)
            if not fields.taken or size:
                yield {"of": Fraction(each * under), "taken": tuple(Fraction(size) for _ in fields.taken)}
        else:
            yield {"of": Fraction(each * under)}


def _scenes(fields: FractionFields, under: int, context: Context) -> Iterator[Context]:
    """The cast's values remade as multiples of the denominator, in the same order; for groups, remade in any way."""
    fact = fields.fact or ""
    if fields.find == "groups":
        yield from (other for other, _ in revalued(context, fact, context.year))
        return
    levels = sorted({value for p in context.characters if isinstance(value := p.facts.get(fact), int)})
    assert fields.fraction is not None
    shared_before = {level: level % fields.fraction.value.denominator == 0 for level in levels}
    for least in (2 * under, under, 4 * under):
        new, last = {}, least - 1
        for level in levels:
            # Who could share before can share still, and who could not still cannot.
            shares = shared_before[level] or fields.find != "share"
            last = next(n for n in range(last + 1, last + under + 2) if (n % under == 0) == shares)
            new[level] = last
        yield replace(context, characters=tuple(_given(character, fact, new) for character in context.characters))


def _given(character: CastMember, fact: str, new: Mapping[int, int]) -> CastMember:
    value = character.facts.get(fact)
    return replace(character, facts={**character.facts, fact: new[value]}) if isinstance(value, int) else character


def _of_numbers(fields: FractionFields, context: Context) -> Iterator[Version]:
    """Fractions in place of fractions: smaller stays smaller, and equal stays equal in the same number of ways."""
    old = [number for number in (fields.fraction, *fields.numbers) if number is not None]
    shapes = [shape for shape in fields.shapes if isinstance(shape.parts, int) and isinstance(shape.shaded, int)]
    values = sorted({number.value for number in old} | {shape.fraction for shape in shapes if shape.shaded})
    fixed = [shape.fraction for shape in fields.shapes if shape not in shapes]
    if not values or any(not 0 < value < 1 or n.text[-1] == "%" or "/" not in n.text for n in old for value in values):
        return
    unders = _unders(context.year)
    easy = [Fraction(over, under) for under in unders for over in range(1, under) if gcd(over, under) == 1]
    for chosen in combinations(easy, len(values)):
        new = dict(zip(values, sorted(chosen), strict=True))
        remade = {number.text: _remade(number, new[number.value]) for number in old}
        if any(number.under not in unders for number in remade.values()) or not _in_order(
            {**new, **{f: f for f in fixed}}
        ):
            continue
        update: dict[str, Any] = {"numbers": tuple(remade[number.text] for number in fields.numbers)}
        if fields.fraction:
            update["fraction"] = remade[fields.fraction.text]
        if fields.find == "line":
            update |= _line_of(fields, list(new.values()))
        if fields.up_to:
            update["up_to"] = min(fields.up_to, max(unders))
        update["shapes"] = tuple(_reshaded(shape, new, unders) if shape in shapes else shape for shape in fields.shapes)
        changed = fields.model_copy(update=update)
        if changed != fields:
            yield changed.model_copy(update={"ask": None}), context, "Other fractions, in the same order."


def _in_order(new: Mapping[Fraction, Fraction]) -> bool:
    rising = [new[old] for old in sorted(new)]
    return rising == sorted(set(rising))


def _remade(number: WrittenNumber, value: Fraction) -> WrittenNumber:
    times = number.under // number.value.denominator
    return WrittenNumber.over(value.numerator * times, value.denominator * times)


def _line_of(fields: FractionFields, values: Sequence[Fraction]) -> dict[str, Any]:
    return {"parts": max(value.denominator for value in values)} if fields.parts else {}


def _reshaded(shape: FractionShape, new: Mapping[Fraction, Fraction], unders: Sequence[int]) -> FractionShape:
    """The shape with its new fraction shaded, cut as finely as it was where the year has met such parts."""
    value = new.get(shape.fraction)
    if value is None:
        return shape
    finer = len(shape.sizes) // shape.fraction.denominator
    times = next((n for n in range(finer, 1, -1) if value.denominator * n in unders), 1)
    return shape.model_copy(update={"parts": value.denominator * times, "shaded": value.numerator * times})
