"""Numbers larger, smaller or finer than the year has met."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..model.collection import Collection
from ..model.fields import year_name
from ..model.problem import Problem
from ..model.prose import Numeral
from ..model.rule import Rule
from ..model.year import YearLimits
from ..parse.number_sentence import find_number_sentences
from .adult_matters import is_an_adults
from .pupil_numbers import PupilPage, is_below_zero, numbers_beyond, pupil_pages, year_at, youngest

RULE = Rule(
    name="number-beyond-year",
    says="The numbers pupils meet are within the reach of their year: size, decimals, numbers below zero, "
    "and what is added and taken away.",
    why="A number beyond the year turns a lesson on one idea into a lesson on two.",
    source="Programmes of study, key stages 1 and 2 (DfE, 2013); early learning goals (DfE, 2021); the page of each year.",
    wrong="year: 2 … Make 250 with the cards.",
    right="year: 2 … Make 25 with the cards.",
)
COUNTING = "counting"
"""The concept of pages on which children count on and back: further than they read and compare."""
_MINUS_ATTACHED = re.compile(r"−[0-9½⅓¼¾]")
_WHOLE = re.compile(r"\d{1,3}(?:,\d{3})+|\d+")


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each number out of reach, pages, minutes, years and quantities of things apart."""
    years = collection.reference.years

    def beyond(page: PupilPage, numeral: Numeral, year: int) -> bool:
        limits = years[year]
        most = limits.furthest_counted if COUNTING in page.fields.concepts else limits.largest_number
        return numeral.whole > most or numeral.places > limits.decimal_places

    for found in numbers_beyond(collection, beyond):
        yield _problem(found.page, found.numeral, years[found.year], found.numeral.text)
    for page in pupil_pages(collection):
        if _MINUS_ATTACHED.search(page.prose.text):
            for numeral in page.prose.numerals:
                limits = years[year_at(page, numeral.start)]
                below = not limits.below_zero and is_below_zero(page.prose.text, numeral)
                if below and not is_an_adults(page.prose.text, numeral, collection.reference):
                    yield _problem(page, numeral, limits, f"−{numeral.text}")
    yield from _sums_beyond(collection)


def _problem(page: PupilPage, numeral: Numeral, limits: YearLimits, written: str) -> Problem:
    reach = f"to {limits.largest_number:,}"
    reach += f", decimals to {limits.decimal_places} places" if limits.decimal_places else ", no decimals"
    reach += "" if limits.below_zero else ", none below zero"
    return RULE.problem(
        page.place_in_prose(numeral.start, numeral.text),
        f"{written} is beyond {year_name(limits.year)}, which meets numbers {reach}.",
        "choose a number within reach, or move it to the bend to an older year.",
    )


def _sums_beyond(collection: Collection) -> Iterator[Problem]:
    """Number sentences whose numbers the year may count but not yet add or take away."""
    years = collection.reference.years
    for page in pupil_pages(collection):
        if page.fields.year > 1 and not any(y <= 1 for y in getattr(page.fields, "bends", ())):
            continue
        least = years[youngest(page)].largest_calculated
        for sentence in find_number_sentences(page.prose.text):
            largest = max((int(n.replace(",", "")) for n in _WHOLE.findall(sentence.text)), default=0)
            if largest <= least:
                continue
            limits = years[year_at(page, sentence.start)]
            if limits.largest_calculated < largest <= limits.largest_number:
                yield RULE.problem(
                    page.place_in_prose(sentence.start, sentence.text),
                    f"{sentence.text}: {year_name(limits.year)} adds and takes away within {limits.largest_calculated}.",
                    "choose smaller numbers, or move it to the bend to an older year.",
                )
