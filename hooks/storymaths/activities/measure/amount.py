"""Amounts with a unit, standard or not, kept exactly and written as each year writes them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Annotated, Any

from pydantic import PlainValidator

from ...expression.number import read_amount
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..saying import ending_places, written

DAY, WEEK = Fraction(24 * 60 * 60), Fraction(7 * 24 * 60 * 60)
SIZES: Mapping[str, tuple[str, Fraction]] = {
    **{unit: (kind, Fraction(size)) for unit, (kind, size) in UNITS.items()},
    "day": ("time", DAY),
    "days": ("time", DAY),
    "week": ("time", WEEK),
    "weeks": ("time", WEEK),
}
"""What each unit measures, and how many base units it is. Any other word is a unit of its own."""
FIRST_YEAR: Mapping[str, int] = {
    "cm": 2, "m": 2, "g": 2, "kg": 2, "ml": 2, "l": 2, "litre": 2, "litres": 2, "p": 2, "£": 2, "°C": 2, "mm": 3, "km": 4,
}  # fmt: skip
"""The year that first meets a unit; units of time and everyday things come earlier."""
MORE: Mapping[str, tuple[str, str]] = {
    "length": ("longer", "shorter"),
    "mass": ("heavier", "lighter"),
    "temperature": ("warmer", "colder"),
    "time": ("longer", "shorter"),
}
"""How more and less are said of each kind of measure."""
MOST, _LONGEST_TEXT, _MOST_PLACES = 10_000_000, 32, 4


class UnlikeUnits(ValueError):
    """Amounts that cannot be compared or added: ``3 kg`` and ``2 m``."""


@dataclass(frozen=True, slots=True)
class Amount:
    """So much of a unit; ``count`` where it was written as so many times so much."""

    number: Fraction
    unit: str = ""
    count: int = 1
    text: str = field(default="", compare=False)
    """As its author wrote it, if anybody did."""

    @property
    def kind(self) -> str:
        """What is measured; the unit itself where it is no standard one."""
        return SIZES[self.unit][0] if self.unit in SIZES else self.unit.rstrip("s")

    @property
    def size(self) -> Fraction:
        """How many base units it is."""
        return self.number * (SIZES[self.unit][1] if self.unit in SIZES else 1)

    @property
    def each(self) -> Amount:
        """One of the equal amounts it was written as."""
        return Amount(self.number / self.count, self.unit)

    def into(self, unit: str) -> Amount:
        """The same amount in another unit of its kind."""
        if unit == self.unit:
            return Amount(self.number, unit)
        if Amount(Fraction(1), unit).kind != self.kind:
            raise UnlikeUnits(f"{self.unit or 'a number'} cannot be turned into {unit or 'a number'}")
        return Amount(self.size / Amount(Fraction(1), unit).size, unit)


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
    count, total = written_so.count, written_so.number.value * written_so.count
    if abs(total) > MOST or count < 1:
        raise ValueError("should be within ten million, the largest number primary schools meet")
    text = text.replace("-", "−")
    return Amount(total, written_so.unit, count, text.replace("x", "×") if count > 1 else text)


Measure = Annotated[Amount, PlainValidator(_amount)]
"""An amount, with its unit if it has one. A bare number is of no unit."""


def say(amount: Amount, year: YearLimits) -> str:
    """``2.5 kg``, ``1 litre``, ``75p``, ``£1.50``, ``3 shells``; a fraction before decimals are met."""
    number, unit = amount.number, amount.unit
    needed = ending_places(number) or 0
    text = written(number, needed if needed <= year.decimal_places else 0)
    if unit == "£":
        if number.denominator > 1 and needed <= 2:
            text = text.partition(".")[0] + f".{abs(int(number * 100)) % 100:02}"
        return f"−£{text[1:]}" if number < 0 else f"£{text}"
    if unit in ("p", ""):
        return f"{text}{unit}"
    return f"{text} {unit_name(unit, number)}"


def shown(amount: Amount, year: YearLimits) -> str:
    """The amount as its author wrote it, else as the year writes it."""
    if amount.count > 1:
        return amount.text or f"{amount.count} × {say(amount.each, year)}"
    return amount.text or say(amount, year)


def in_sum(amount: Amount, year: YearLimits) -> str:
    """The same inside a number sentence, where a unit that is no standard one goes without saying."""
    return say(amount if amount.unit in UNITS else Amount(amount.number), year)


def unit_name(unit: str, number: Fraction) -> str:
    """The unit after a number: ``1 litre``, ``2 litres``, ``1 shell``, ``2 shells``, ``2 kg``."""
    if unit in UNITS and unit not in ("litre", "litres", "minute", "minutes", "hour", "hours", "second", "seconds"):
        return unit
    one = unit[:-1] if unit.endswith("s") else unit
    return one if 0 < number <= 1 else f"{one}s"


def common_unit(amounts: Sequence[Amount]) -> str:
    """The smallest unit among amounts of one kind. Raises ``UnlikeUnits`` when they are not of one kind."""
    kinds = sorted({amount.kind for amount in amounts})
    if len(kinds) > 1:
        raise UnlikeUnits(f"{kinds[0] or 'a plain number'} and {kinds[1]}")
    return min((amount.unit for amount in amounts), key=lambda unit: SIZES.get(unit, ("", Fraction(1)))[1])


def made_like(amount: Amount, unit: str, year: YearLimits) -> list[str]:
    """Sentences that bring an amount into a unit: ``3 × 20 cm = 60 cm``, ``1 m = 100 cm``, ``1 1/4 kg = 1.25 kg``."""
    own, sentences = in_sum(amount, year), []
    if amount.count > 1:
        sentences.append(f"{amount.count} × {in_sum(amount.each, year)} = {own}")
    elif "/" in amount.text and amount.unit in UNITS and amount.text != own:
        sentences.append(f"{amount.text} = {own}")
    other = amount.into(unit)
    if amount.unit in UNITS and unit in UNITS and in_sum(other, year) != own:
        sentences.append(f"{own} = {in_sum(other, year)}")
    elif amount.unit != unit and amount.unit in SIZES:
        one = Amount(Fraction(1), amount.unit).into(unit)
        times = one.number if one.number >= 1 else 1 / one.number
        sign = "×" if one.number >= 1 else "÷"
        sentences.append(f"{written(amount.number, 3)} {sign} {written(times, 3)} = {written(other.number, 3)}")
    return sentences
