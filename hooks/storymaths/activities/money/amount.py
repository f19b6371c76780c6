"""Amounts of money: whole pence inside, written outside in the way each year writes them."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import Annotated, Any

from pydantic import BeforeValidator, Field

from ...expression.number import read_amount
from ...model.year import YearLimits

MOST_PENCE = 10_000_000
_MOST_DIGITS = 9
_WAYS = frozenset((("£", 0), ("£", 2), ("p", 0), ("", 0)))
"""A unit, and how many decimal places may be written with it."""
_YEAR_OF_SIGNS, _POUND = 2, 100


def _pence(value: Any) -> Any:
    problem = ValueError('should be an amount of money such as 45p, "£2" or "£1.50"')
    if isinstance(value, bool) or not isinstance(value, (int, str)):
        raise problem
    try:
        amount = read_amount(str(value).replace(",", "").replace(" ", ""))
    except ZeroDivisionError:
        raise problem from None
    if amount is None or amount.count > 1 or not amount.number.text.replace(".", "").isdecimal():
        raise problem
    number = amount.number
    if len(number.text) > _MOST_DIGITS or (amount.unit, number.places) not in _WAYS:
        raise problem
    return int(number.value * (_POUND if amount.unit == "£" else 1))


Pence = Annotated[int, BeforeValidator(_pence), Field(ge=0, le=MOST_PENCE)]
"""Money in whole pence, up to £100,000. Written 45p, £2 or £1.50; a bare number is pence."""
SomePence = Annotated[int, BeforeValidator(_pence), Field(ge=1, le=MOST_PENCE)]
"""Money, more than none."""


def told(pence: int, year: YearLimits) -> str:
    """An amount in running words: ``7 pence`` before the signs are met, ``£1 and 50p`` before decimals are."""
    pounds, part = divmod(pence, _POUND)
    if year.year < _YEAR_OF_SIGNS:
        named = [
            f"{pounds:,} pound{'' if pounds == 1 else 's'}" if pounds else "",
            f"{part} {'penny' if part == 1 else 'pence'}" if part or not pounds else "",
        ]
        return " and ".join(filter(None, named))
    if not part and pounds:
        return f"£{pounds:,}"
    if not pounds:
        return f"{part}p"
    return f"£{pounds:,}.{part:02}" if year.decimal_places >= 2 else f"£{pounds:,} and {part}p"


def brief(pence: int, year: YearLimits) -> str:
    """An amount among others in a list, where ``£1 and 50p`` would read as two: ``150p``."""
    mixed = pence > _POUND and pence % _POUND and year.year >= _YEAR_OF_SIGNS and year.decimal_places < 2
    return f"{pence:,}p" if mixed else told(pence, year)


def writer(amounts: Iterable[int], year: YearLimits) -> Callable[[int], str]:
    """How to write the amounts of one number sentence so that they can be added: all in one unit or as decimals."""
    seen = list(amounts)
    in_pounds = all(amount % _POUND == 0 for amount in seen)
    if year.year < _YEAR_OF_SIGNS:
        return lambda pence: f"{pence // _POUND if in_pounds else pence:,}"
    if in_pounds:
        return lambda pence: f"£{pence // _POUND:,}"
    if year.decimal_places >= 2 and any(amount >= _POUND for amount in seen):
        return lambda pence: f"£{pence // _POUND:,}.{pence % _POUND:02}"
    return lambda pence: f"{pence:,}p"


def adding(amounts: Sequence[int], total: int, year: YearLimits) -> str:
    """``20p + 5p = 25p``; with one amount only, ``25p``."""
    write = writer([*amounts, total], year)
    return f"{' + '.join(map(write, amounts))} = {write(total)}" if len(amounts) > 1 else write(total)
