"""Amounts of money: whole pence inside, written outside in the way each year writes them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence
from typing import Annotated, Any

from pydantic import BeforeValidator, Field

from ...model.year import YearLimits

MOST_PENCE = 10_000_000
_WRITTEN = re.compile(r"£(\d{1,6})(?:\.(\d\d))?|(\d{1,8})p?")
_YEAR_OF_SIGNS, _POUND = 2, 100


def _pence(value: Any) -> Any:
    problem = ValueError('should be an amount of money such as 45p, "£2" or "£1.50"')
    if isinstance(value, bool) or not isinstance(value, (int, str)):
        raise problem
    match = _WRITTEN.fullmatch(str(value).strip().replace(",", "").replace(" ", ""))
    if match is None:
        raise problem
    pounds, part, pence = match.groups()
    return int(pence) if pence else int(pounds) * _POUND + int(part or 0)


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
