"""What numbers, calculations and words with fractions demand of a child."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from ...expression.number import WrittenNumber
from ...expression.say import part_names
from ...model.demands import Demands, Number, Operation, amounts
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..saying import ending_places
from .calculation import find_part, tables_leaned

_WORDS = (
    "half", "halves", "third", "thirds", "quarter", "quarters", "part", "parts", "equal", "equal parts", "whole",
    "fraction", "tenths", "hundredths", "decimal",
)  # fmt: skip
"""Those of the word bank that this kind uses."""
_PLACES_BESIDE_DECIMALS = 3
EQUAL_PARTS = ("parts", "equal", "equal parts")
"""The words of any sentence that counts equal parts."""


def places_beside(amount: Fraction) -> int:
    """With how many decimal places numbers are written beside an amount: with none where it is whole."""
    return _PLACES_BESIDE_DECIMALS if amount.denominator > 1 else 0


def demands_of_numbers(numbers: Iterable[Number], places: int = 0, things: str = "") -> Demands:
    """Numbers with up to so many decimal places, of things that are counted or of a unit."""
    read = tuple(numbers)
    finest = max((count for number in read if (count := ending_places(Fraction(number)) or 0) <= places), default=0)
    unit = things if things.rstrip("²³") in UNITS else ""
    return Demands(amounts=amounts(read, unit), signs=frozenset("." if finest else ""), places=finest)


def demands_of_written(numbers: Iterable[WrittenNumber]) -> Demands:
    """Numbers as they are written: the sixths of 3/6 are there to be understood, and 45% is read as 45."""
    demands = Demands()
    for number in numbers:
        percent, under = number.text.endswith("%"), number.under
        demands |= Demands(
            amounts=amounts([number.value * (100 if percent else 1)]),
            signs=frozenset(("%" if percent else "") + ("." if number.places else "")),
            parts=frozenset({under} if under != number.value.denominator and "/" in number.text else ()),
            places=number.places,
        )
    return demands


def demands_of_steps(steps: Iterable[Operation], places: int = 0) -> Demands:
    """Calculations that are written down."""
    done = tuple(steps)
    read = demands_of_numbers((number for step in done for number in step.numbers), places)
    signs = {sign for step in done for sign in (step.sign, "=")}
    return read | Demands(operations=done, signs=frozenset(signs))


def demands_of_words(said: Iterable[Fraction], *words: str) -> Demands:
    """Words of the word bank: the names of the parts that fractions are said with, and others."""
    names = {names[number.numerator > 1] for number in said if number < 1 and (names := part_names(number.denominator))}
    return Demands(words=tuple(word for word in _WORDS if word in names or word in words))


def demands_of_parts(amounts: Sequence[Fraction], fraction: Fraction, year: YearLimits, *words: str) -> Demands:
    """A fraction of each of some amounts, found as the year finds it and named."""
    said = [fraction, *([Fraction(1, fraction.denominator)] if amounts and not year.knows("÷") else [])]
    places = max(map(places_beside, amounts), default=0)
    return (
        demands_of_numbers([fraction])
        | demands_of_steps((step for amount in amounts for step in find_part(amount, fraction, year)), places)
        | demands_of_words(said, *words)
        | demands_of_tables([fraction.denominator], year)
    )


def demands_of_tables(parts: Iterable[int], year: YearLimits) -> Demands:
    """The tables that sharing into each of these numbers of parts leans on."""
    return Demands(tables=frozenset().union(*(tables_leaned(number, year) for number in parts)))
