"""Sequences for another year: its own steps and starts, still rising or falling; places nearer or further on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from ...model.activity import Context
from ...model.year import YearLimits
from ..saying import listed, written
from .number_rules import Known, Rule, Steps, Times, mistakes_in, place_of, rule_through
from .repeating import at_place, units_of

if TYPE_CHECKING:
    from . import SequenceFields

Version = tuple["SequenceFields", Context, str]
_STEPS: dict[int, tuple[int, ...]] = {
    0: (1, 2),
    1: (2, 5, 10, 1),
    2: (5, 3, 10, 2),
    3: (4, 8, 50, 100, 3),
    4: (6, 7, 9, 25, 1000),
    5: (1000, 100, 10_000, 25),
    6: (10_000, 250, 125, 50),
}
"""Steps each year counts in, what is new in it first."""
_FACTORS = (2, 10, 5, 3, 4)
_PLACES = {0: (6, 8, 9, 10), 1: (8, 10, 12, 15, 18, 20), 2: (12, 20, 25, 31, 40, 50), 3: (20, 40, 57, 82, 100, 120)}
"""Places worth asking about, by year; from Year 3 on those of Year 3."""


def versions_of(fields: SequenceFields, context: Context, year: YearLimits) -> Iterator[Version]:
    """The same first for a younger year and last for an older one; between them, remade ones."""
    there = replace(context, year=year)
    harder = year.year > context.year.year
    if not harder:
        yield fields, there, "The same sequence."
    yield from _patterns(fields, there) if fields.pattern else _numbers(fields, there)
    if harder:
        yield fields, there, "The same sequence."


def _patterns(fields: SequenceFields, there: Context) -> Iterator[Version]:
    """Other places; the pattern stays."""
    count = len(fields.places)
    offered = _PLACES[min(3, there.year.year)]
    units = units_of(fields.pattern)
    choices = [offered[start : start + count] for start in range(len(offered) - count + 1)] if count else []
    # Places at which different things come are asked about first.
    for places in sorted(choices, key=lambda places: -len({at_place(unit, at) for unit in units[:1] for at in places})):
        says = f"The {'places are' if count > 1 else 'place is'} {listed([f'{place:,}' for place in places])}."
        yield fields.model_copy(update={"places": places}), there, says


def _numbers(fields: SequenceFields, there: Context) -> Iterator[Version]:
    """Other steps and starts; gaps, places and the mistake stay where they are."""
    known = {place: term for place, term in enumerate(fields.terms, 1) if isinstance(term, Fraction)}
    right = dict(known)
    if fields.mistake:
        found = mistakes_in(known, fields.rule, fields.step)
        right |= dict(found[:1])
    needed = {"step": 2, "growing": 3, "times": 2}[fields.rule] if fields.step is None else 1
    old = rule_through(right, fields.rule, fields.step) if len(right) >= needed else None
    if old is None:
        return
    for new in _rules(old, fields, there.year):
        update = _moved(fields, known, right, old, new)
        if update is not None:
            says = f"It starts at {written(new.at(1))}; {new.says()}."
            yield fields.model_copy(update=update), there, says


def _rules(old: Rule, fields: SequenceFields, year: YearLimits) -> Iterator[Rule]:
    """Rules of the same sort that rise or fall as the old one does."""
    length = len(fields.terms)
    if isinstance(old, Times):
        for factor in _FACTORS:
            for first in (1, 2, 3, 5):
                rising = Times(Fraction(first), Fraction(factor))
                falling = Times(rising.at(length), Fraction(1, factor))
                yield rising if old.factor >= 1 else falling
        return
    starts = [Fraction(n) for n in (0, 1, 2, 3, 7)]
    if _from_table(old) and 0 <= (times := min(old.first, old.at(length)) / abs(old.step)) <= 12:
        starts.insert(0, times)
    for size in _STEPS[year.year]:
        for start in starts:
            yield _stepping(old, size, start * size if _from_table(old) else start + size, length)


def _from_table(old: Steps) -> bool:
    """Whether its terms are multiples of its step, so that it counts in a table."""
    return old.step != 0 and old.first % old.step == 0


def _stepping(old: Steps, size: int, start: Fraction, length: int) -> Steps:
    if old.grows:
        grows = Fraction(size if old.grows > 0 else -size)
        step = Fraction(size) if old.step > 0 else Fraction(-size)
        return Steps(start if old.step > 0 else start + size * length * length, step, grows)
    if old.step < 0:
        return Steps(start + size * (length - 1), Fraction(-size))
    return Steps(start, Fraction(size) if old.step else Fraction(0))


def _moved(fields: SequenceFields, known: Known, right: Known, old: Rule, new: Rule) -> dict[str, Any] | None:
    """The fields with the new rule's terms; None where what is asked does not carry over."""
    terms: list[Fraction | str] = []
    for place, term in enumerate(fields.terms, 1):
        if not isinstance(term, Fraction):
            terms.append("___")
        else:
            off = known[place] - right[place]
            terms.append(new.at(place) + (0 if not off else 1 if off > 0 else -1))
    update: dict[str, Any] = {"terms": tuple(terms)}
    if fields.step is not None:
        update["step"] = new.step if isinstance(new, Steps) else None
    if fields.said:
        said = [_said(number, old, new) for number in fields.said]
        if None in said or len(set(said)) < len(said):
            return None
        update["said"] = tuple(said)
    return None if update["terms"] == fields.terms else update


def _said(number: Fraction, old: Rule, new: Rule) -> Fraction | None:
    """A number that is said in the new count if the old one was said in the old, else one that is not."""
    place = place_of(old, number)
    if place is not None:
        return new.at(min(place, 15))
    if isinstance(old, Times) or isinstance(new, Times) or abs(new.step) < 2 or not old.step:
        return None
    near = max(1, min(14, int((number - old.first) / old.step) + 1))
    return new.at(near) + (1 if new.step > 0 else -1)
