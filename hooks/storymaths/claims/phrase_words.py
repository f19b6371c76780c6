"""A sentence as the words that phrases are matched with, each with its place; a number knows what it is worth."""

from __future__ import annotations

import re
from fractions import Fraction
from typing import NamedTuple

from ..expression.number import Rational, exact
from ..expression.number_words import ONES, TENS
from ..model.quantity import MEASURES, UNITS, UNITS_IN_WORDS

_UNITS = "|".join(sorted((re.escape(unit.lower()) for unit in UNITS if unit not in "£"), key=len, reverse=True))
_WORD = re.compile(
    rf"(?P<minus>[−-](?=\d)(?<![\w)]))?(?P<pound>£)?(?P<number>\d+/\d+|\d+(?:,\d{{3}})*(?:\.\d+)?)(?!\d|[:/.]\d)"
    rf"(?:(?P<percent> ?%)|(?P<unit> ?(?:{_UNITS})(?![\w°’'-]))|(?P<note>-(?:pounds?|pence|penny|p)(?!\w))|(?P<s>[’']?s)(?!\w))?"
    r"|[a-z]+(?:(?!-digits?\b)[’'-][a-z]+)*|\d+:\d\d|\S"
)


_COUNTS = {**ONES, **TENS}
_ALONE = {word: worth for word, worth in ONES.items() if word != "ten"}
_OF_MONEY = {"pound": "£", "pounds": "£", "pence": "p", "penny": "p"}


class Word(NamedTuple):
    """A word, a mark or a number."""

    text: str
    start: int
    end: int
    number: Rational | None = None
    """What a number is worth, in base units where it has a unit."""
    kind: str = ""
    """What its unit measures; ``part`` for a fraction or a percentage, ``size`` for 5s."""


def words_of(sentence: str) -> list[Word]:
    """The words of a sentence in small letters, its numbers in figures."""
    return [
        _number(match) if match.lastgroup else _word(match.group(), *match.span()) for match in _WORD.finditer(sentence)
    ]


def _word(text: str, start: int, end: int) -> Word:
    if text.isalpha():
        return Word(text, start, end, _ALONE.get(text))
    if "-" in text:
        first, _, unit = text.partition("-")
        if unit in _OF_MONEY and first in _COUNTS:
            return Word(text, start, end, _COUNTS[first] * UNITS[_OF_MONEY[unit]][1], "money")
    return Word(text.replace("’", "'"), start, end)


def _number(match: re.Match[str]) -> Word:
    text, (start, end) = match.group(), match.span()
    try:
        number: Rational = exact(match["number"])
    except ZeroDivisionError:
        return Word(text, start, end)
    kind = "part" if "/" in match["number"] else ""
    number = -number if match["minus"] else number
    if match["pound"]:
        return Word(text, start, end, number, "money")
    if match["percent"]:
        return Word(text, start, end, Fraction(number) / 100, "part")
    if unit := match["unit"]:
        kind, size = MEASURES["°C" if "°" in unit else unit.strip()]
        return Word(text, start, end, number * size, kind)
    if note := match["note"]:
        kind, size = MEASURES["£" if note.startswith("-pound") else "p"]
        return Word(text, start, end, number * size, kind)
    return Word(text, start, end, number, "size" if match["s"] else kind)


def unit_of(word: str) -> tuple[str, Fraction] | None:
    """What a word for a unit measures, and how much it is."""
    unit = UNITS_IN_WORDS.get(word, word)
    return MEASURES.get(unit) if len(unit) > 1 or word in UNITS_IN_WORDS else None
