"""Units of measure the year has not met."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import YEARS, year_name
from ..model.problem import Problem
from ..model.rule import Rule
from .pupil_numbers import pupil_pages, year_at

RULE = Rule(
    name="unit-beyond-year",
    says="Amounts are in units the year has met.",
    why="Year 1 compares and measures; grams and centimetres are Year 2's.",
    source="Programmes of study, key stages 1 and 2 (DfE, 2013), measurement; site_data/years.yaml.",
    wrong="year: 1 … The parcel is 5 kg.",
    right="year: 1 … The parcel is as heavy as 5 bricks.",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each amount in a unit that comes later. Time is left out: minutes are the adult's too."""
    reference = collection.reference
    first = {
        unit: year for year, limits in reference.years.items() for unit in limits.units_new
        if unit not in ("hours", "minutes", "seconds")
    } | {sign: year for year, limits in reference.years.items() for sign in limits.symbols_new if sign in ("p", "°C", "%")}  # fmt: skip
    names = "|".join(sorted(map(re.escape, first), key=len, reverse=True))
    pounds = min(year for year in YEARS if "£" in reference.symbols_by(year))
    amount = re.compile(rf"(?<![\w.,/])\d[\d,]*(?:\.\d+)?[ ]?(?P<unit>{names})(?!\w)|(?P<pounds>£)\d")
    for page in pupil_pages(collection):
        for match in amount.finditer(page.prose.text):
            unit = match["unit"] or "£"
            year = year_at(page, match.start())
            met = first.get(unit, pounds)
            if met > year:
                yield RULE.problem(
                    page.place_in_prose(match.start(), match.group()),
                    f'"{match.group()}": {unit} is first met in {year_name(met)}; this is for {year_name(year)}.',
                    "use a unit the year has met, everyday objects as units, or move it to an older year's bend.",
                )
