"""Amounts, fractions and the signs between them, in words: ``3/4 kg`` is "three quarters of a kilogram"."""

from __future__ import annotations

from ..expression.say import number_word, part_names
from ..expression.signs import PROSE
from ..expression.tokens import read_tokens
from ..model.prose import VULGAR

VULGARS = "".join(VULGAR)
SIGNS = {
    "+": "add", "−": "take away", "×": "times", "÷": "divided by", "of": "of", "=": "equals", "≠": "is not equal to",
    "<": "is less than", ">": "is greater than", "(": "open bracket", ")": "close bracket",
}  # fmt: skip
_UNIT_NAMES = {
    "mm": "millimetre", "cm": "centimetre", "m": "metre", "km": "kilometre", "g": "gram", "kg": "kilogram",
    "ml": "millilitre", "l": "litre", "°C": "degree Celsius", "£": "pound",
}  # fmt: skip


def in_words(maths: str) -> str:
    """A number sentence, sum, amount or fraction: ``450 g − ___`` is "450 grams take away blank"."""
    if maths in SIGNS:
        return SIGNS[maths]
    words: list[str] = []
    operand_before = False
    for token in read_tokens(maths, PROSE):
        if token.text in SIGNS:
            words.append("minus" if token.text == "−" and not operand_before else SIGNS[token.text])
        elif token.text == "r":
            words.append("remainder")
        elif token.number:
            words.append(_amount(token.number, token.unit))
        elif token.kind in ("gap", "sign-gap"):
            words.append("blank")
        operand_before = token.text not in SIGNS or token.text == ")"
    return " ".join(words)


def _amount(number: str, unit: str) -> str:
    if unit == "£" and "." in number:
        pounds, pence = number.split(".")
        return f"{_many(pounds, 'pound')} {_many(str(int(pence.ljust(2, '0'))), 'penny')}"
    if number[-1] not in VULGAR and "/" not in number:
        return _many(number, "penny" if unit == "p" else _name(unit)) if unit else number
    whole, above, below = _parts(number)
    words = _fraction(above, below)
    if not unit:
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
    parts = part_names(below)
    if parts is None:
        return f"{number_word(above, 20)} over {below}"
    return f"{number_word(above, 20)} {parts[above != 1]}"


def _parts(number: str) -> tuple[str, int, int]:
    if number[-1] in VULGAR:
        worth = VULGAR[number[-1]]
        return number[:-1].strip(), worth.numerator, worth.denominator
    whole, _, fraction = number.rpartition(" ")
    above, below = fraction.split("/")
    return whole, int(above), int(below)
