"""Amounts, fractions and the signs between them, in words: ``3/4 kg`` is "three quarters of a kilogram"."""

from __future__ import annotations

import re

from ..model.prose import VULGAR
from ..model.quantity import UNITS

VULGARS = "".join(VULGAR)
SIGNS = {
    "+": "add", "−": "take away", "×": "times", "÷": "divided by", "of": "of", "=": "equals", "≠": "is not equal to",
    "<": "is less than", ">": "is greater than", "(": "open bracket", ")": "close bracket",
}  # fmt: skip
_UNIT_NAMES = {
    "mm": "millimetre", "cm": "centimetre", "m": "metre", "km": "kilometre", "g": "gram", "kg": "kilogram",
    "ml": "millilitre", "l": "litre", "°C": "degree Celsius", "£": "pound",
}  # fmt: skip
_ABOVE = (
    "no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen "
    "eighteen nineteen twenty"
).split()
_BELOW = dict(
    enumerate(
        "half third quarter fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth "
        "sixteenth seventeenth eighteenth nineteenth twentieth".split(),
        start=2,
    )
) | {24: "twenty-fourth", 25: "twenty-fifth", 30: "thirtieth", 36: "thirty-sixth", 40: "fortieth", 48: "forty-eighth"}
_BELOW |= {50: "fiftieth", 60: "sixtieth", 100: "hundredth", 1000: "thousandth"}

_WHOLE = r"\d{1,3}(?:,\d{3})+(?!\d)|\d+"
_UNIT = "|".join(sorted(map(re.escape, UNITS.keys() - {"£"}), key=len, reverse=True))
_NUMBER = rf"(?:{_WHOLE})[ ]?[{VULGARS}]|(?:{_WHOLE})[ ]\d+/\d+|\d+/\d+|[{VULGARS}]|(?:{_WHOLE})(?:\.\d+)?"
AMOUNT = rf"£?(?:{_NUMBER})(?:[ ]?(?:{_UNIT})(?!\w))?"
"""The pattern of a number with or without a unit, as the collection writes it."""
_TOKEN = re.compile(rf"(£?)({_NUMBER})(?:[ ]?({_UNIT})(?!\w))?|(_{{3,}})|(of|[()+−×÷=≠<>])|r[ ](\d+)")


def in_words(maths: str) -> str:
    """A number sentence, sum, amount or fraction: ``450 g − ___`` is "450 grams take away blank"."""
    if maths in SIGNS:
        return SIGNS[maths]
    words: list[str] = []
    operand_before = False
    for token in _TOKEN.finditer(maths):
        pound, number, unit, gap, sign, left_over = token.groups()
        if sign:
            words.append("minus" if sign == "−" and not operand_before else SIGNS[sign])
        else:
            words.append("blank" if gap else f"remainder {left_over}" if left_over else _amount(number, pound or unit))
        operand_before = sign is None or sign == ")"
    return " ".join(words)


def _amount(number: str, unit: str | None) -> str:
    if unit == "£" and "." in number:
        pounds, pence = number.split(".")
        return f"{_many(pounds, 'pound')} {_many(str(int(pence.ljust(2, '0'))), 'penny')}"
    if number[-1] not in VULGAR and "/" not in number:
        return _many(number, "penny" if unit == "p" else _name(unit)) if unit else number
    whole, above, below = _parts(number)
    words = _fraction(above, below)
    if unit is None:
        return f"{whole} and {words}" if whole else words
    name = _name(unit)
    return f"{whole} and {words} {name}s" if whole else f"{words} of a{'n' if name == 'hour' else ''} {name}"


def _name(unit: str) -> str:
    return _UNIT_NAMES.get(unit, unit.removesuffix("s"))


def _many(number: str, name: str) -> str:
    if number == "1":
        return f"1 {name}"
    first, _, rest = name.partition(" ")
    return f"{number} {'pence' if name == 'penny' else f'{first}s {rest}'.strip()}"


def _fraction(above: int, below: int) -> str:
    top = _ABOVE[above] if above < len(_ABOVE) else str(above)
    bottom = _BELOW.get(below)
    if bottom is None:
        return f"{top} over {below}"
    return f"{top} {bottom if above == 1 else 'halves' if below == 2 else bottom + 's'}"


def _parts(number: str) -> tuple[str, int, int]:
    if number[-1] in VULGAR:
        worth = VULGAR[number[-1]]
        return number[:-1].strip(), worth.numerator, worth.denominator
    whole, _, fraction = number.rpartition(" ")
    above, below = fraction.split("/")
    return whole, int(above), int(below)
