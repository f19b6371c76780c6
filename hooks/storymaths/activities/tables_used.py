"""Which multiplication table a product or a sharing leans on."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from ..model.year import YearLimits


def table_of(one: int | Fraction, other: int | Fraction, year: YearLimits) -> frozenset[int]:
    """The table ``one × other`` leans on: one the year knows if either is, else the smaller; none for 0 and 1 times.

    Factors past 12 are multiplied in writing and lean on the table of the smaller only if that is in reach.
    """
    factors = [int(n) for n in (one, other) if n == int(n) and 2 <= n <= 12]
    if not factors or one in (0, 1) or other in (0, 1):
        return frozenset()
    known = [factor for factor in factors if factor in year.tables]
    return frozenset({min(known or factors)})


def tables_of(products: Iterable[tuple[int | Fraction, int | Fraction]], year: YearLimits) -> frozenset[int]:
    """The tables several products lean on."""
    return frozenset().union(*(table_of(one, other, year) for one, other in products))
