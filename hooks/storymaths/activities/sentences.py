"""Number sentences made of numbers, signs and gaps: as lines for pupils, and as the cards they lay them with."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from fractions import Fraction

from ..model.activity import GAP, Cards, Line, NumberCard
from ..model.demands import Number, Operation
from .saying import written

Sentence = tuple[Number | str | None, ...]
"""A number sentence in its order: numbers, signs, and None for a gap."""


def as_line(sentence: Sentence, places: int = 0) -> Line:
    """The sentence for pupils to fill, its numbers with up to so many decimal places."""
    words = (GAP if one is None else one if isinstance(one, str) else written(one, places) for one in sentence)
    return Line(tuple(" ".join(words).split(GAP)))


def numbers_in(sentence: Sentence) -> list[Number]:
    """Its numbers, in order."""
    return [one for one in sentence if isinstance(one, (int, Fraction))]


def signs_in(sentence: Sentence) -> Counter[str]:
    """Its signs, and how often each stands in it."""
    return Counter(one for one in sentence if isinstance(one, str))


def write_calculation(operation: Operation, places: int = 0) -> str:
    """``3 + 4 = 7``, with up to so many decimal places."""
    *before, result = (written(number, places) for number in operation.numbers)
    return f"{f' {operation.sign} '.join(before)} = {result}"


def cards_for(numbers: Iterable[Number], sentences: Iterable[Sentence] = (), places: int = 0) -> Cards:
    """Cards for the sentences and for other numbers, each number once; a sign as often as one sentence needs it."""
    signs: Counter[str] = Counter()
    laid = {Fraction(number) for number in numbers}
    for sentence in sentences:
        signs |= signs_in(sentence)
        laid.update(map(Fraction, numbers_in(sentence)))
    return Cards(tuple(NumberCard(number, written(number, places)) for number in sorted(laid)), signs)
