"""What each school year meets: how large its numbers, which symbols, units, fractions and tables."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from .fields import Strict, Text, Year


class YearLimits(Strict):
    """The reach of one year. ``*_new`` lists what is first met then; earlier years' carry on."""

    year: Year
    ages: Annotated[str, Field(pattern=r"^\d{1,2}-\d{1,2}$")]
    key_stage: Text
    source: Text
    largest_number: int
    """The largest number counted, read or compared."""
    largest_calculated: int
    """The largest number in an addition or subtraction."""
    below_zero: bool
    decimal_places: int
    tables: tuple[int, ...]
    """Multiplication tables known by the end of the year, earlier ones included."""
    symbols_new: tuple[str, ...]
    units_new: tuple[str, ...]
    denominators_new: tuple[int, ...]
    """Denominators of the fractions first named this year; empty when none."""
    charts_new: tuple[str, ...]
    clock: Text
    says: Text
