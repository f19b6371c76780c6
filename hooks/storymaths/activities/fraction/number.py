"""Fractions as an author writes them, kept as written, and which of them each year has met."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any

from pydantic import PlainValidator

from ...model.prose import VULGAR
from ...model.year import YearLimits
from ...parse.number_sentence import exact

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

_WRITTEN = re.compile(r"(?:\d{1,7} )?\d{1,4}/\d{1,4}|\d{1,7}(?:\.\d{1,4})?%?")


@dataclass(frozen=True, slots=True)
class WrittenNumber:
    """A number and the way it was written: ``2/4`` is a half, and is not written ``1/2``."""

    text: str
    value: Fraction

    @classmethod
    def over(cls, part: int, parts: int) -> WrittenNumber:
        """So many of so many equal parts, not made simpler."""
        return cls(f"{part}/{parts}", Fraction(part, parts))

    @property
    def under(self) -> int:
        """The number under the line, as written; 1 when there is none."""
        return int(self.text.rpartition("/")[2]) if "/" in self.text else 1


def _written(value: Any) -> WrittenNumber:
    if isinstance(value, WrittenNumber):
        return value
    problem = ValueError('should be a fraction, decimal or percentage such as "3/4", "1 3/8", 0.71 or "45%"')
    if isinstance(value, bool) or not isinstance(value, (int, float, str)):
        raise problem
    text = str(value).strip().replace(",", "")
    for sign, fraction in VULGAR.items():
        text = re.sub(rf"[ ]?{sign}", f" {fraction.numerator}/{fraction.denominator}", text).strip()
    if not _WRITTEN.fullmatch(text):
        raise problem
    try:
        number = Fraction(exact(text.rstrip("%"))) / (100 if text.endswith("%") else 1)
    except ZeroDivisionError:
        raise ValueError("has nought under the line; nothing can be shared into no parts") from None
    return WrittenNumber(text, number)


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
