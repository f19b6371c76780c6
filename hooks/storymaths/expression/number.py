"""One exact number, kept with the way it was written, and how written numbers and amounts are read."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from ..model.prose import VULGAR

Rational = int | Fraction
"""A whole number as an int, which is worked with faster; any other as a fraction in lowest terms."""

_V = "".join(VULGAR)
WHOLE = r"\d{1,3}(?:,\d{3})+(?!\d)|\d+"
NUMBER = rf"(?:{WHOLE})[ ]?[{_V}]|(?:{WHOLE})[ ]\d+/\d+|\d+/\d+|(?:{WHOLE})(?:\.\d+)?|[{_V}]"
"""The pattern of a number: ``12``, ``1,200``, ``2.5``, ``3/4``, ``½``, ``1 1/2``, ``1½``."""
_PART = re.compile(rf"\d+/\d+|[{_V}]|[\d,]+(?:\.\d+)?")
_SIGNED = re.compile(rf"([−-]?)[ ]?({NUMBER})(%?)")
_AMOUNT = re.compile(
    rf"(?:(?P<count>\d{{1,4}}) ?[×x] ?)?(?P<pounds>£)?(?P<minus>[−-])?(?P<number>{NUMBER})"
    r" ?(?P<unit>[a-zA-Z°][a-zA-Z °³²-]{0,16})?"
)
_SIGNED_WHOLE = r"([−-]?\d{1,8})"
_STRETCH = re.compile(rf"{_SIGNED_WHOLE}\s*(?:to|–|-|\.\.)\s*{_SIGNED_WHOLE}")


@dataclass(frozen=True, slots=True)
class WrittenNumber:
    """A number and the way it was written: ``2/4`` is a half, and is not written ``1/2``."""

    text: str
    value: Fraction

    @classmethod
    def over(cls, part: int, parts: int) -> WrittenNumber:
        """So many of so many equal parts, not made simpler."""
        return cls(f"{part}/{parts}", Fraction(part, parts))

    @property
    def under(self) -> int:
        """The number under the line, as written; 1 when there is none."""
        return int(self.text.rpartition("/")[2]) if "/" in self.text else 1

    @property
    def places(self) -> int:
        """How many decimal places it was written with."""
        return len(self.text.rstrip("%").partition(".")[2])

    def as_plain(self) -> str:
        """As plain data: the way it is written."""
        return self.text


@dataclass(frozen=True, slots=True)
class WrittenAmount:
    """So much of a unit, as written: ``2.5 kg``, ``£1.50``, ``3 × 20 cm``."""

    number: WrittenNumber
    unit: str = ""
    count: int | None = None
    """How many times, where it was written as so many times so much."""


def exact(number: str) -> Rational:
    """What a written number is worth: ``1,200``, ``2.5``, ``3/4``, ``1 1/2``, ``1½``.

    Nought under the line raises ``ZeroDivisionError``.
    """
    if number.isdecimal():  # nearly all are, and a whole number needs no fraction
        return int(number)
    total = Fraction(0)
    for part in _PART.findall(number):
        if part in VULGAR:
            total += VULGAR[part]
        elif "/" in part:
            above, below = part.split("/")
            total += Fraction(int(above), int(below))
        else:
            total += Fraction(part.replace(",", ""))
    return total


def whole_if_can(number: Rational) -> Rational:
    """A whole number as an int."""
    return number.numerator if number.denominator == 1 else number


def read_number(text: str) -> WrittenNumber | None:
    """A number by itself, with a sign or as a percentage if so written: ``−4``, ``45%``; None where it is none.

    Nought under the line raises ``ZeroDivisionError``.
    """
    match = _SIGNED.fullmatch(text.strip())
    if match is None:
        return None
    minus, number, percent = match.groups()
    value = Fraction(exact(number)) / (100 if percent else 1)
    return WrittenNumber(text.strip(), -value if minus else value)


def read_amount(text: str) -> WrittenAmount | None:
    """An amount by itself; any words may be its unit. None where it is none.

    Nought under the line raises ``ZeroDivisionError``.
    """
    match = _AMOUNT.fullmatch(text.strip())
    if match is None:
        return None
    value = Fraction(exact(match["number"])) * (-1 if match["minus"] else 1)
    written = WrittenNumber(f"{'−' if match['minus'] else ''}{match['number']}", value)
    return WrittenAmount(
        written, match["pounds"] or (match["unit"] or "").strip(), int(match["count"]) if match["count"] else None
    )


def read_stretch(text: str) -> tuple[int, int] | None:
    """The ends of a stretch of whole numbers: ``0-20``, ``−5 to 5``, ``1..9``; None where it is none."""
    match = _STRETCH.fullmatch(text.strip())
    if match is None:
        return None
    first, last = (int(end.replace("−", "-")) for end in match.groups())
    return first, last
