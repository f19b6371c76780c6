"""Amounts with a unit, standard or not, kept exactly and written as each year writes them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Annotated, Any

from pydantic import PlainValidator

from ...expression.noun import is_plural, plural, singular
from ...expression.number import read_amount
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..saying import ending_places, written

DAY, WEEK = Fraction(24 * 60 * 60), Fraction(7 * 24 * 60 * 60)
CALENDAR = "months and years"
"""The kind of months and years, which have no fixed number of days."""
SIZES: Mapping[str, tuple[str, Fraction]] = {
    **{unit: (kind, Fraction(size)) for unit, (kind, size) in UNITS.items()},
    "day": ("time", DAY),
    "days": ("time", DAY),
    "week": ("time", WEEK),
    "weeks": ("time", WEEK),
    "month": (CALENDAR, Fraction(1)),
    "months": (CALENDAR, Fraction(1)),
    "year": (CALENDAR, Fraction(12)),
    "years": (CALENDAR, Fraction(12)),
}
"""What each unit measures, and how many base units it is. Any other word is a unit of its own."""
MORE: Mapping[str, str] = {
    "length": "longer",
    "mass": "heavier",
    "temperature": "warmer",
    "time": "longer",
    CALENDAR: "longer",
    **dict.fromkeys(("stick", "straw", "pace", "step", "span"), "longer"),
}
"""How more is said of each kind of measure, and of what lengths are laid out in; of any other it is just more."""
_OF_ONE = frozenset({"litre", "hour", "minute", "second", "day", "week", "month", "year"})
"""Names of one of a unit: the same unit as that of many."""
_SIGNS = frozenset({"p", "£", "°C"})
"""Units that are signs."""
MOST, _LONGEST_TEXT, _MOST_PLACES = 10_000_000, 32, 4


class UnlikeUnits(ValueError):
    """Amounts that cannot be compared or added: ``3 kg`` and ``2 m``."""


@dataclass(frozen=True, slots=True)
class Wording:
    """An amount in its author's words: with ×, with a decimal, and what stands under the line of its fraction."""

    text: str
    times: bool = False
    decimal: bool = False
    under: int = 1


@dataclass(frozen=True, slots=True)
class Amount:
    """So much of a unit; ``count`` where it was written as so many times so much."""

    number: Fraction
    unit: str = ""
    count: int = 1
    wording: Wording | None = None
    """As its author wrote it, if anybody did."""

    @property
    def kind(self) -> str:
        """What is measured; the unit itself where it is no standard one."""
        return SIZES[self.unit][0] if self.unit in SIZES else singular(self.unit)

    @property
    def size(self) -> Fraction:
        """How many base units it is."""
        return self.number * (SIZES[self.unit][1] if self.unit in SIZES else 1)

    @property
    def each(self) -> Amount:
        """One of the equal amounts it was written as."""
        return Amount(self.number / self.count, self.unit)

    @property
    def as_one(self) -> Amount:
        """The same as one amount, and not in its author's words."""
        return Amount(self.number, self.unit)

    def into(self, unit: str) -> Amount:
        """The same amount in another unit of its kind."""
        if unit == self.unit:
            return Amount(self.number, unit)
        if Amount(Fraction(1), unit).kind != self.kind:
            raise UnlikeUnits(f"{self.unit or 'a number'} cannot be turned into {unit or 'a number'}")
        return Amount(self.size / Amount(Fraction(1), unit).size, unit)


ONE_CM = Amount(Fraction(1), "cm")


def days_in(amount: Amount) -> tuple[Fraction, Fraction]:
    """The fewest and the most days it can be: a month has 28 to 31, a year 365 or 366."""
    if amount.kind != CALENDAR:
        return amount.size / DAY, amount.size / DAY
    years, months = divmod(amount.size, 12)
    return 365 * years + 28 * months, 366 * years + 31 * months


def _amount(value: Any) -> Amount:
    if isinstance(value, Amount):
        return value
    problem = ValueError('should be an amount such as 12, "2.5 kg", "1 1/4 litres" or "3 × 20 cm"')
    if isinstance(value, bool) or not isinstance(value, (int, float, str)) or len(str(value)) > _LONGEST_TEXT:
        raise problem
    text = str(value).strip()
    try:
        written_so = read_amount(text)
    except ZeroDivisionError:
        raise ValueError("has nought under the line; nothing can be shared into no parts") from None
    if written_so is None or written_so.number.places > _MOST_PLACES:
        raise problem
    count = 1 if written_so.count is None else written_so.count
    total = written_so.number.value * count
    if abs(total) > MOST or count < 1:
        raise ValueError("should be within ten million, the largest number primary schools meet")
    number = written_so.number
    wording = Wording(
        text.replace("-", "−").replace("x", "×") if count > 1 else text.replace("-", "−"),
        written_so.count is not None,
        number.places > 0,
        number.under,
    )
    return Amount(total, of_many(written_so.unit), count, wording)


Measure = Annotated[Amount, PlainValidator(_amount)]
"""An amount, with its unit if it has one. A bare number is of no unit."""


def bare(number: Fraction | int) -> Amount:
    """A number without a unit."""
    return Amount(Fraction(number))


def tell(amount: Amount, year: YearLimits) -> str:
    """``2.5 kg``, ``1 litre``, ``75p``, ``£1.50``, ``3 shells``; a fraction before decimals are met."""
    number, unit = amount.number, amount.unit
    text = written(number, year.decimal_places)
    if unit == "£":
        if number.denominator > 1 and _in_pence(number):
            text = text.partition(".")[0] + f".{abs(int(number * 100)) % 100:02}"
        return f"−£{text[1:]}" if number < 0 else f"£{text}"
    if unit in ("p", ""):
        return f"{text}{unit}"
    return f"{text} {unit_name(unit, number)}"


def tell_as_given(amount: Amount, year: YearLimits) -> str:
    """The amount as its author wrote it, else as the year writes it."""
    if amount.wording:
        return amount.wording.text
    return tell(amount, year) if amount.count == 1 else f"{amount.count} × {tell(amount.each, year)}"


def write(amount: Amount, year: YearLimits) -> str:
    """The same inside a number sentence, where a unit that is no standard one goes without saying."""
    return tell_as_given(in_sentence(amount), year)


def in_sentence(amount: Amount) -> Amount:
    """The amount with the unit that it has inside a number sentence."""
    return amount if amount.unit in UNITS else replace(amount, unit="", wording=None)


def is_decimal(amount: Amount, year: YearLimits) -> bool:
    """Whether it is written with a decimal point."""
    if amount.wording:
        return amount.wording.decimal
    number = amount.each.number
    places = ending_places(number)
    if number.denominator == 1 or places is None:
        return False
    return places <= year.decimal_places or (amount.unit == "£" and _in_pence(number))


def _in_pence(pounds: Fraction) -> bool:
    return (ending_places(pounds) or 0) <= 2


def of_many(unit: str) -> str:
    """The name under which a unit is kept: ``litres`` for ``litre``."""
    return f"{unit}s" if unit in _OF_ONE else unit


def unit_sign(unit: str) -> str:
    """The unit where it is a sign, such as °C; else empty."""
    return unit if unit in _SIGNS else ""


def unit_listed(unit: str) -> str:
    """The unit as ``years.yaml`` names it; empty for a sign, and for what is no standard unit."""
    return of_many(unit) if unit in UNITS and unit not in _SIGNS else ""


def is_met(unit: str, year: YearLimits) -> bool:
    """Whether the year has met a unit; things that serve as units, days and weeks are always known."""
    return unit not in UNITS or year.knows(unit) or year.measures_in(unit_listed(unit))


def unit_name(unit: str, number: Fraction) -> str:
    """The unit after a number: ``1 litre``, ``2 litres``, ``1 shell``, ``2 shells``, ``2 kg``."""
    if unit in UNITS and unit not in ("litre", "litres", "minute", "minutes", "hour", "hours", "second", "seconds"):
        return unit
    one = singular(unit)
    return one if 0 < number <= 1 else unit if is_plural(unit) else plural(unit)


def common_unit(amounts: Sequence[Amount]) -> str:
    """The smallest unit among amounts of one kind. Raises ``UnlikeUnits`` when they are not of one kind."""
    kinds = sorted({amount.kind for amount in amounts})
    if len(kinds) > 1:
        raise UnlikeUnits(f"{kinds[0] or 'a plain number'} and {kinds[1]}")
    return min((amount.unit for amount in amounts), key=lambda unit: SIZES.get(unit, ("", Fraction(1)))[1])
