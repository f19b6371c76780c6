"""Whether what an activity makes pupils read and work out is within the reach of a year."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from fractions import Fraction

from ..model.demands import Demands
from ..model.fields import year_name
from ..model.reference import Reference
from ..model.year import YearLimits
from .kind import ActivityFields
from .saying import listed, written

_SAME_SIGN = {"≠": "="}
"""A sign taught with another: who knows = is shown ≠ beside it."""
_ALWAYS_KNOWN = frozenset({0, 1})
_SHOWN = 4


def misfits(demands: Demands, limits: YearLimits, reference: Reference) -> list[str]:
    """Plain reasons why it is beyond the year; empty when it fits. ``limits`` may be tighter than the year's own."""
    return [
        *_too_large(demands, limits),
        *_not_whole(demands, limits),
        *_fractions_added(demands, limits),
        *_not_met(
            "sign", {_SAME_SIGN.get(sign, sign) for sign in demands.signs} - limits.met.signs, limits, _signs(reference)
        ),
        *_not_met("unit", demands.units, limits, _units(reference)),
        *_not_met("chart", demands.charts, limits, _charts(reference)),
        *_clock(demands, limits),
        *_tables(demands, limits),
    ]


def too_early(fields: ActivityFields, limits: YearLimits, reference: Reference) -> list[str]:
    """Why a task is not yet set in a year; empty where it is."""
    first = reference.tasks.first_year(fields.kind, fields.task_name)
    return [f"such a task is first set in {year_name(first)}"] if limits.year < first else []


def fits(demands: Demands, limits: YearLimits, reference: Reference) -> bool:
    """Whether it is within the reach of the year."""
    return not misfits(demands, limits, reference)


def years_that_fit(fields: ActivityFields, demands: Demands, own: YearLimits, reference: Reference) -> list[int]:
    """The years in which such a task is set and that it is within the reach of, youngest first.

    ``own`` is the activity's year with what its page chooses of the signs at choice.
    """
    every = (own if limits.year == own.year else limits for _, limits in sorted(reference.years.items()))
    return [one.year for one in every if fits(demands, one, reference) and not too_early(fields, one, reference)]


def _too_large(demands: Demands, limits: YearLimits) -> Iterator[str]:
    year = year_name(limits.year)
    largest = max((abs(number) for number in demands.numbers), default=Fraction(0))
    most = limits.furthest_counted if demands.counting else limits.largest_number
    if largest > most:
        meets = "counts" if demands.counting else "meets numbers"
        yield f"it has {_said(largest, limits)}, and {year} {meets} to {most:,}"
    reckoned = max((abs(number) for number in demands.calculated), default=Fraction(0))
    if reckoned > limits.largest_calculated:
        yield (
            f"it adds or takes away with {_said(reckoned, limits)}, "
            f"and {year} does so with numbers to {limits.largest_calculated:,}"
        )
    if not limits.below_zero and (below := min((*demands.numbers, *demands.calculated), default=Fraction(0))) < 0:
        yield f"it has {_said(below, limits)}, and {year} does not yet go below zero"


def _not_whole(demands: Demands, limits: YearLimits) -> Iterator[str]:
    unknown = {number for number in (*demands.numbers, *demands.calculated) if not limits.meets_part_of(number)}
    if unknown:
        shown = listed([written(number) for number in sorted(unknown)[:_SHOWN]])
        yield f"it has {shown}, and {year_name(limits.year)} does not yet meet such parts of numbers"
    if demands.places > limits.decimal_places > 0:
        places = f"{demands.places} decimal places"
        yield f"it has a number with {places}, and {year_name(limits.year)} writes {limits.decimal_places}"


def _fractions_added(demands: Demands, limits: YearLimits) -> Iterator[str]:
    most = limits.fractions_added_to
    adding = [one.numbers for one in demands.operations if one.sign in ("+", "−") and demands.places == 0]
    beyond = [max(numbers) for numbers in adding if any(number.denominator > 1 for number in numbers)]
    if most is not None and max(beyond, default=Fraction(0)) > most:
        yield f"it adds fractions to more than {most:,}, and {year_name(limits.year)} does so within {most:,}"


def _not_met(what: str, used: Iterable[str], limits: YearLimits, by_year: dict[str, int]) -> Iterator[str]:
    # What no year names, such as "legs" or a bracket, belongs to none in particular.
    late = sorted((by_year[name], name) for name in used if by_year.get(name, 0) > limits.year)
    for year, name in late:
        yield f"it uses the {what} {name}, which is new in {year_name(year)}"


def _tables(demands: Demands, limits: YearLimits) -> Iterator[str]:
    unknown = sorted(demands.tables - set(limits.tables) - _ALWAYS_KNOWN)
    if unknown:
        names = listed([str(table) for table in unknown])
        yield f"it leans on the {names} times table{'s' if len(unknown) > 1 else ''}, not yet known in {year_name(limits.year)}"


def _clock(demands: Demands, limits: YearLimits) -> Iterator[str]:
    if demands.clock is not None and demands.clock < limits.clock_minutes:
        finest = limits.clock_minutes
        yield f"it reads the clock to {demands.clock} minutes, and {year_name(limits.year)} does so to {finest}"


def _charts(reference: Reference) -> dict[str, int]:
    return {
        chart: year for year, limits in sorted(reference.years.items(), reverse=True) for chart in limits.charts_new
    }


def _signs(reference: Reference) -> dict[str, int]:
    return {sign: year for year, limits in sorted(reference.years.items(), reverse=True) for sign in limits.symbols_new}


def _units(reference: Reference) -> dict[str, int]:
    return {unit: year for year, limits in sorted(reference.years.items(), reverse=True) for unit in limits.units_new}


def _said(number: Fraction, limits: YearLimits) -> str:
    return written(number, max(limits.decimal_places, 3))
