"""Fractions as an author writes them, kept as written, and numbers written in another form."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated, Any, Literal

from pydantic import PlainValidator

from ...expression.number import WrittenNumber, read_number
from ...model.document import Loc
from ...model.prose import VULGAR
from ..kind import Unsolvable
from ..saying import alike, ending_places, mixed, written

_LARGEST, _MOST_PARTS, _MOST_PLACES = 10_000_000, 10_000, 4
WrittenAs = Literal["fraction", "improper", "mixed", "decimal", "percent"]
"""``improper`` and ``mixed`` keep the parts a fraction is written in: 26/4 and 6 2/4."""


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


def as_amount(number: Fraction | int, places: int = 0) -> WrittenNumber:
    """A number as a decimal where so many places are enough, else as wholes and a fraction in lowest terms."""
    return WrittenNumber(written(number, places), Fraction(number))


def rewrite(number: WrittenNumber, written_as: WrittenAs, loc: Loc) -> WrittenNumber:
    """A number in the form asked for. Raises ``Unsolvable`` for a decimal that never ends."""
    value, under = number.value, number.under
    if written_as in ("improper", "mixed") and under == 1:
        raise Unsolvable(loc, f"{number.text} has no parts.", "write a fraction, such as 7/4 or 1 3/4.")
    match written_as:
        case "percent":
            return WrittenNumber(f"{alike(value * 100, Fraction(1, 2))}%", value)
        case "fraction":
            return as_amount(value)
        case "improper":
            return WrittenNumber.over(int(value * under), under)
        case "mixed":
            whole, rest = divmod(int(value * under), under)
            parts = [f"{whole:,}"] * bool(whole or not rest) + [f"{rest}/{under}"] * bool(rest)
            return WrittenNumber(" ".join(parts), value)
    places = ending_places(value)
    if places is None or places > _MOST_PLACES:
        message = f"{mixed(value)} does not come out as a decimal of {_MOST_PLACES} places or fewer."
        raise Unsolvable(loc, message, "ask for a fraction, or choose another number.")
    return as_amount(value, places)
