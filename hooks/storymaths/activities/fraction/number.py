"""Fractions as an author writes them, kept as written, and which of them each year has met."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any

from pydantic import PlainValidator

from ...expression.number import WrittenNumber, read_number
from ...model.prose import VULGAR
from ...model.year import YearLimits

DENOMINATORS: Mapping[int, tuple[int, ...]] = {
    0: (),
    1: (2, 4),
    2: (2, 4, 3),
    3: (2, 4, 3, 5, 10, 8, 6, 7, 9),
    4: (2, 4, 3, 5, 10, 8, 6, 7, 9, 12, 11, 100),
    5: (2, 4, 3, 5, 10, 8, 6, 7, 9, 12, 11, 100, 1000),
    6: (2, 4, 3, 5, 10, 8, 6, 7, 9, 12, 11, 100, 1000),
}
"""Denominators met by the end of each year, the easiest first: ``denominators_new`` of site_data/years.yaml, added up."""
_LARGEST, _MOST_PARTS, _MOST_PLACES = 10_000_000, 10_000, 4


def _written(value: Any) -> WrittenNumber:
    if isinstance(value, WrittenNumber):
        return value
    problem = ValueError('should be a fraction, decimal or percentage such as "3/4", "1 3/8", 0.71 or "45%"')
    if isinstance(value, bool) or not isinstance(value, (int, float, str)):
        raise problem
    text = str(value).strip().replace(",", "")
    for sign, fraction in VULGAR.items():
        text = text.replace(f" {sign}", sign).replace(sign, f" {fraction.numerator}/{fraction.denominator}").strip()
    try:
        number = read_number(text)
    except ZeroDivisionError:
        raise ValueError("has nought under the line; nothing can be shared into no parts") from None
    if (
        number is None
        or not 0 <= number.value < _LARGEST
        or number.under >= _MOST_PARTS
        or number.places > _MOST_PLACES
    ):
        raise problem
    return number


Written = Annotated[WrittenNumber, PlainValidator(_written)]
"""A number not below nought, kept exactly and as written."""


def tables_leaned(parts: int, year: YearLimits) -> frozenset[int]:
    """The table that sharing into so many parts leans on.

    Halves, quarters and eighths are found by halving again and again, and until Year 3 the things are
    shared out, so that no table is needed.
    """
    if year.year < 3 or parts > 12:
        return frozenset()
    return frozenset({2 if parts in (2, 4, 8) else parts})


__all__ = ["DENOMINATORS", "Written", "WrittenNumber", "tables_leaned"]
