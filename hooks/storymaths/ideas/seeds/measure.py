"""What the cast weighs or how long things are: compared, ordered, put together, read off a scale."""

from __future__ import annotations

from collections.abc import Iterator

from ...activities.saying import counted, owner
from ...model.plain import Plain
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity, from_counted
from ..idea import Change
from ..material import Counted, Material, Measured
from ..number_sets import NumberSet, number_sets
from ..wording import MEASURES
from .seed import Seed

_SHARES = (8, 5, 3, 6)
"""Four lengths in eighths of the longest, in an order that is none."""
_SCALES = ((10, 10, 5), (20, 20, 5), (50, 50, 10), (100, 20, 4))
"""Where a scale ends, how many parts it has, and at every how many a number stands."""


def _plant(material: Material, limits: YearLimits) -> Candidates:
    for numbers in number_sets(material, limits, fewest=2):
        if numbers.fact.of in ("mass", "length", "capacity"):
            yield from _of_cast(numbers)
    yield from _on_a_line(material)
    if material.notes("length"):
        for unit in [one for one in material.counted if 4 < one.number < 13 and _is_noted(material, one)][:1]:
            yield from _in_own_units(unit)
    for kind in ("length", "mass", "capacity"):
        amounts = [one for one in material.measured if one.kind == kind]
        if len(amounts) > 1:
            yield from _standard(amounts, kind)


def _of_cast(numbers: NumberSet) -> Iterator[Candidate]:
    words = numbers.words
    rising = numbers.rising
    least, most = rising[0], rising[-1]
    pair, bearer = numbers.only((least, most)), numbers.fact.bearer
    if bearer:  # what they bring is compared, and not they
        things: dict[str, Plain] = {
            f"{owner(one.name)} {bearer}": words.amount(numbers.values[one.id]) for one in (most, least)
        }
        one, other = things
        ask = f"Which is {words.said.more}, {one} or {other}, and by how many {numbers.fact.things}?"
        yield numbers.with_numbers("measure", f"{one} and {other}", ask, find="compare", things=things)
    else:
        ask = f"Which is {words.said.more}, {most.name} or {least.name}, and by how many {numbers.fact.things}?"
        yield numbers.with_cast("measure", f"{most.name} and {least.name}", ask, cast=pair, find="compare")
    end = next((scale for scale in _SCALES if scale[0] >= numbers.values[most.id]), None)
    if end:
        pointers: list[Plain] = [*dict.fromkeys(numbers.values[one.id] for one in rising[-3:])]
        ask = f"The scale counts {numbers.fact.things}. What does each arrow show?"
        yield numbers.with_numbers(
            "measure", "Arrows on the scale", ask,
            find="read", ends=[0, end[0]], parts=end[1], numbered=end[2], pointers=pointers,
        )  # fmt: skip


def _on_a_line(material: Material) -> Candidates:
    """Numbers of the story on a line of numbers, to be read off."""
    told = sorted({one.number: one for one in material.counted}.values(), key=lambda one: one.number)[-3:]
    end = next((scale for scale in _SCALES if told and scale[0] >= told[-1].number), None)
    if end and len(told) > 1:
        pointers: list[Plain] = [one.number for one in told]
        ask = f"The line goes from 0 to {end[0]}. What number of the story is at each arrow?"
        lines = activity(
            "measure", "The story’s numbers on a line", ask,
            find="read", ends=[0, end[0]], parts=end[1], numbered=end[2], pointers=pointers,
        )  # fmt: skip
        yield Candidate(lines, tuple(from_counted(one.number, one.things, one.pages) for one in told))


def _is_noted(material: Material, things: Counted) -> bool:
    """Whether they are counted on a page where the notes see length."""
    pages = {int(page) for told in material.noted["length"] for page in told.split("–")}
    return bool(pages & set(things.pages))


def _in_own_units(unit: Counted) -> Iterator[Candidate]:
    """Lengths in the story's own unit: one as in the story, the others shorter."""
    uses = (from_counted(unit.number, unit.things, unit.pages),)
    sizes = [max(1, unit.number * share // _SHARES[0]) for share in _SHARES]
    told = [counted(size, unit.things) for size in sizes]
    others = tuple(Change(str(unit.things), "", unit.number, size) for size in sizes[1:])
    lengths: dict[str, Plain] = dict(zip("ABCD", (told[1], told[0], told[2], told[3]), strict=True))
    ask = f"Four lines are measured in {unit.things}. Put them in order, the shortest first."
    lines = activity("measure", f"Lines measured in {unit.things}", ask, find="order", things=lengths)
    yield Candidate(lines, uses, others, marks=frozenset({"of length"}))
    two: dict[str, Plain] = {"line A": told[0], "line B": told[1]}
    ask = f"Line A is {told[0]} long and line B is {told[1]} long. Which is longer, and by how many {unit.things}?"
    lines = activity("measure", f"How many {unit.things} longer?", ask, find="compare", things=two)
    yield Candidate(lines, uses, others[:1], marks=frozenset({"of length"}))


def _standard(amounts: list[Measured], kind: str) -> Iterator[Candidate]:
    marks = frozenset({f"of {kind}"})
    told: list[Plain] = [f"{one.number} {one.unit}" for one in amounts[:4]]
    uses = tuple(from_counted(one.number, one.unit, one.pages) for one in amounts[:4])
    said = MEASURES[kind]
    yield Candidate(
        activity("measure", f"In order of {kind}", f"Put these in order, the {said.least} first.", find="order", amounts=told),
        uses, marks=marks,
    )  # fmt: skip
    yield Candidate(
        activity("measure", f"How much {said.more}?", f"Which is {said.more}, and by how much?", find="compare", amounts=told[:2]),
        uses[:2], marks=marks,
    )  # fmt: skip
    yield Candidate(activity("measure", f"All the {kind} together", "", find="total", amounts=told), uses, marks=marks)
    for one in amounts:
        smaller = next((unit for unit, (of, size) in UNITS.items() if of == kind and size < UNITS[one.unit][1]), None)
        if smaller:
            amount = f"{one.number} {one.unit}"
            ask = f"How many {smaller} is {amount}?"
            lines = activity("measure", f"{amount} in {smaller}", ask, find="convert", amounts=[amount], to=smaller)
            yield Candidate(lines, (from_counted(one.number, one.unit, one.pages),), marks=marks)


SEED = Seed("what characters weigh, or lengths, masses or amounts that are measured", _plant)
