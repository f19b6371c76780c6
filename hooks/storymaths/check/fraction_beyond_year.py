"""Fractions the year has not met."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.prose import Numeral
from ..model.rule import Rule
from .pupil_numbers import PupilPage, numbers_beyond

RULE = Rule(
    name="fraction-beyond-year",
    says="Fractions are of kinds the year has met.",
    why="A half and a quarter come first; a fifth in Year 1 is a word without a meaning.",
    source="Programmes of study, key stages 1 and 2 (DfE, 2013), fractions; the page of each year.",
    wrong="year: 1 … Take 1/3 of the shells.",
    right="year: 1 … Take 1/2 of the shells.",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each fraction whose denominator comes later."""
    known = {year: collection.reference.denominators_by(year) for year in collection.reference.years}

    def beyond(_: PupilPage, numeral: Numeral, year: int) -> bool:
        return numeral.below != 0 and numeral.below not in known[year]

    for found in numbers_beyond(collection, beyond):
        met = ", ".join(f"1/{below}" for below in sorted(known[found.year])) or "none"
        yield RULE.problem(
            found.page.place_in_prose(found.numeral.start, found.numeral.text),
            f"{found.numeral.text} is beyond {year_name(found.year)}, whose fractions are built from: {met}.",
            "choose a fraction the year has met, or move it to the bend to an older year.",
        )
