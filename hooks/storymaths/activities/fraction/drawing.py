"""The bars that fractions are drawn as, and the cards that they are laid with."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from ...expression.number import WrittenNumber
from ...model.activity import Cards, Figure, NumberCard
from ...model.figures.fractions import FractionBar

_MOST_PARTS_DRAWN = 24
MOST_BARS = 6
"""So many numbers are still drawn beside each other."""


def draw_bar(fraction: WrittenNumber, whole: str, each: str = "") -> tuple[Figure, ...]:
    """A bar in equal parts, some shaded, as the fraction is written; none when its parts are too many to see."""
    over, under = fraction.value.as_integer_ratio()
    if fraction.under > under:
        over, under = over * fraction.under // under, fraction.under
    if under > _MOST_PARTS_DRAWN or over > under:
        return ()
    alt = f"A bar in {count_parts(under)}, {over} shaded. The whole bar is {whole or 'not known'}."
    return (Figure(FractionBar(under, over, whole or "?", each), alt),)


def draw_bars(numbers: Iterable[WrittenNumber]) -> tuple[Figure, ...]:
    """A bar of one whole for each of the first few numbers."""
    return tuple(figure for number in tuple(numbers)[:MOST_BARS] for figure in draw_bar(number, "1"))


def count_parts(parts: int) -> str:
    """``4 equal parts``."""
    return "1 part" if parts == 1 else f"{parts} equal parts"


def cards_for_written(numbers: Iterable[WrittenNumber], signs: Mapping[str, int]) -> Cards:
    """A card for each number, as it is written last; a percentage is laid as a number."""
    faces: dict[Fraction, str] = {}
    for number in numbers:
        percent = number.text.endswith("%")
        faces[number.value * (100 if percent else 1)] = number.text.removesuffix("%")
    return Cards(tuple(NumberCard(value, faces[value]) for value in sorted(faces)), signs)
