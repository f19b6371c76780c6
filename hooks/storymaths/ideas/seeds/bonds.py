"""A number of the story made from the cast's numbers, or split in every way."""

from __future__ import annotations

from ...activities.saying import capital, counted
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity, from_counted
from ..material import Material
from ..number_sets import NumberSet, number_sets
from .seed import Seed

_MOST_WHOLES = 3


def _plant(material: Material, limits: YearLimits) -> Candidates:
    for numbers in number_sets(material, limits):
        yield from _from_cast(material, numbers)
    told = {one.number: one for one in reversed(material.counted) if one.number > _MOST_WHOLES}
    for whole in sorted(told.values(), key=material.counted.index):
        ask = (
            f"Put the {counted(whole.number, whole.things)} into two groups, and leave no group empty. Find every way."
        )
        title = f"Two groups of {whole.number} {whole.things}"
        lines = activity("bonds", title, ask, whole=whole.number, things=str(whole.things), smallest=1)
        yield Candidate(lines, (from_counted(whole.number, whole.things, whole.pages),), finds=True)


def _from_cast(material: Material, numbers: NumberSet) -> Candidates:
    words, things = numbers.words, numbers.fact.things
    top = numbers.rising[-1]
    for one in (top, numbers.rising[-2]):
        title = capital(f"{words.as_many_as(one.name)}: two")
        ask = f"{words.tells(one.name, numbers.values[one.id])}. Which two make that together? Find every way."
        yield numbers.with_cast("bonds", title, ask, finds=True, whole=numbers.values[one.id], parts=2)
    alike = [one for one in material.counted if not numbers.fact.of_body or one.things == things]
    wholes = {one.number: one for one in reversed(alike) if one.number > numbers.values[top.id]}
    for whole in list(wholes.values())[:_MOST_WHOLES] if numbers.times == 1 else ():
        for parts, word in ((2, "two"), (3, "three")):
            told = counted(whole.number, whole.things)
            ask = (
                f"Which {word} make exactly {told} together? Find every way."
                if whole.things == things
                else f"There are {told}. Which {word} have exactly {words.amount(whole.number)} between them? Find every way."
            )
            candidate = numbers.with_cast(
                "bonds", f"Exactly {told}, from {word}", ask, finds=True, whole=whole.number, parts=parts
            )
            uses = (*candidate.uses, from_counted(whole.number, whole.things, whole.pages))
            yield Candidate(candidate.lines, uses, (), candidate.marks, finds=True)


SEED = Seed("something counted, or three characters with a number each", _plant)
