"""Exact amounts with a unit of measure, so that 1 m and 100 cm are worth the same."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

UNITS: Mapping[str, tuple[str, Fraction]] = {
    "mm": ("length", Fraction(1, 1000)),
    "cm": ("length", Fraction(1, 100)),
    "m": ("length", Fraction(1)),
    "km": ("length", Fraction(1000)),
    "g": ("mass", Fraction(1, 1000)),
    "kg": ("mass", Fraction(1)),
    "ml": ("capacity", Fraction(1, 1000)),
    "l": ("capacity", Fraction(1)),
    "litre": ("capacity", Fraction(1)),
    "litres": ("capacity", Fraction(1)),
    "p": ("money", Fraction(1, 100)),
    "£": ("money", Fraction(1)),
    "second": ("time", Fraction(1)),
    "seconds": ("time", Fraction(1)),
    "minute": ("time", Fraction(60)),
    "minutes": ("time", Fraction(60)),
    "hour": ("time", Fraction(3600)),
    "hours": ("time", Fraction(3600)),
    "°C": ("temperature", Fraction(1)),
}
"""Unit to the kind of thing it measures and how many base units it is (SI; £1 = 100p)."""
_DAY = Fraction(24 * 3600)
MEASURES: Mapping[str, tuple[str, Fraction]] = {
    **UNITS,
    "day": ("time", _DAY),
    "week": ("time", 7 * _DAY),
    "tonne": ("mass", Fraction(1000)),
    "month": ("calendar", Fraction(1)),
    "year": ("calendar", Fraction(12)),
}
"""The units, and those of the calendar; no month or year has a fixed number of days."""
UNITS_IN_WORDS: Mapping[str, str] = {
    word: unit
    for words, unit in {
        "millimetre millimetres": "mm",
        "centimetre centimetres cms": "cm",
        "metre metres": "m",
        "kilometre kilometres": "km",
        "gram grams": "g",
        "tonne tonnes": "tonne",
        "kilogram kilograms kilo kilos": "kg",
        "millilitre millilitres": "ml",
        "pence penny pennies": "p",
        "second seconds secs": "second",
        "minute minutes min mins": "minute",
        "hour hours hr hrs": "hour",
        "day days": "day",
        "week weeks": "week",
        "month months": "month",
        "year years": "year",
    }.items()
    for word in words.split()
}
"""Words that stand for a unit."""


class UnlikeQuantities(ArithmeticError):
    """Amounts of different kinds cannot be added, or compared, or so divided."""


@dataclass(frozen=True, slots=True)
class Quantity:
    """An exact number of base units of one kind; ``kind`` is empty for a bare number."""

    amount: Fraction | int
    kind: str = ""

    @classmethod
    def of(cls, number: Fraction | int, unit: str = "") -> Quantity:
        """So many of a unit."""
        if not unit:
            return cls(number)
        kind, worth = UNITS[unit]
        return cls(number * worth, kind)

    def _like(self, other: Quantity) -> None:
        if self.kind != other.kind:
            raise UnlikeQuantities(f"{self.kind or 'number'} and {other.kind or 'number'}")

    def __add__(self, other: Quantity) -> Quantity:
        self._like(other)
        return Quantity(self.amount + other.amount, self.kind)

    def __sub__(self, other: Quantity) -> Quantity:
        self._like(other)
        return Quantity(self.amount - other.amount, self.kind)

    def __mul__(self, other: Quantity) -> Quantity:
        if self.kind and other.kind:
            raise UnlikeQuantities("two measures multiplied")
        return Quantity(self.amount * other.amount, self.kind or other.kind)

    def __truediv__(self, other: Quantity) -> Quantity:
        if other.kind:
            self._like(other)
            return Quantity(Fraction(self.amount) / other.amount)
        return Quantity(Fraction(self.amount) / other.amount, self.kind)

    def compare(self, other: Quantity) -> int:
        """−1, 0 or 1 as this is less than, equal to or greater than the other."""
        self._like(other)
        return (self.amount > other.amount) - (self.amount < other.amount)
