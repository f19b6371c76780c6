"""Units of measure the year has not met."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.reference import Reference
from ..model.rule import Rule
from .adult_matters import is_an_adults
from .pupil_numbers import pupil_pages, year_at, youngest

RULE = Rule(
    name="unit-beyond-year",
    says="Amounts are in units the year has met.",
    why="Year 1 compares and measures; grams and centimetres are Year 2's.",
    source="Programmes of study, key stages 1 and 2 (DfE, 2013), measurement; the page of each year.",
    wrong="year: 1 … The parcel is 5 kg.",
    right="year: 1 … The parcel is as heavy as 5 bricks.",
)

_TIME = ("hours", "minutes", "seconds")
_UNIT_SIGNS = ("£", "p", "°C", "%")


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each amount in a unit that comes later. Time is left out: minutes are the adult's too."""
    first = _first_met(collection.reference)
    names = "|".join(sorted(map(re.escape, first), key=len, reverse=True))
    after = re.compile(rf"[ ]?({names})(?!\w)")
    for page in pupil_pages(collection):
        text = page.prose.text
        if first.keys().isdisjoint(page.prose.words) and not any(sign in text for sign in _UNIT_SIGNS if sign != "p"):
            continue
        for numeral in page.prose.numerals:
            match = after.match(text, numeral.end)
            unit = match.group(1) if match else "£" if text.startswith("£", numeral.start - 1) else None
            if unit is None or first[unit] <= youngest(page):
                continue
            year = year_at(page, numeral.start)
            if first[unit] > year and not is_an_adults(text, numeral, collection.reference):
                written = f"£{numeral.text}" if unit == "£" else f"{numeral.text} {unit}"
                yield RULE.problem(
                    page.place_in_prose(numeral.start, numeral.text),
                    f'"{written}": {unit} is first met in {year_name(first[unit])}; this is for {year_name(year)}.',
                    "use a unit the year has met, everyday objects as units, or move it to an older year's bend.",
                )


def _first_met(reference: Reference) -> dict[str, int]:
    """The year each unit of measure, and each sign that stands for one, is first met."""
    units = {unit: year for year, limits in reference.years.items() for unit in limits.units_new}
    signs = {sign: year for year, limits in reference.years.items() for sign in limits.symbols_new}
    return {unit: year for unit, year in units.items() if unit not in _TIME} | {
        sign: year for sign, year in signs.items() if sign in _UNIT_SIGNS
    }
