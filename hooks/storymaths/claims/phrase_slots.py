"""What may stand in the places of a phrase that are no plain numbers: sevens, fifths, places of a number, times, days, months."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from fractions import Fraction
from typing import Protocol

from ..expression.number import Rational
from ..expression.number_words import PART_OF, SO_MANY_OF
from ..model.known_facts import KnownShapes
from .clock import TIME, minutes_of
from .form import Form
from .phrase_values import Value
from .phrase_words import Word

_TIME = Form(TIME)
_PLACES: Mapping[str, Rational] = {
    "ones": 1, "units": 1, "tens": 10, "hundreds": 100, "thousands": 1000, "one": 1, "unit": 1, "ten": 10, "hundred": 100,
    "thousand": 1000, "tenths": Fraction(1, 10), "hundredths": Fraction(1, 100), "tenth": Fraction(1, 10),
    "hundredth": Fraction(1, 100), "thousandths": Fraction(1, 1000),
}  # fmt: skip
DAYS = "monday tuesday wednesday thursday friday saturday sunday".split()
MONTHS = "january february march april may june july august september october november december".split()
_ROMAN = Form("(?=.)m{0,3}(?:cm|cd|d?c{0,3})(?:xc|xl|l?x{0,3})(?:ix|iv|v?i{0,3})")
_LETTERS_WORTH = {"i": 1, "v": 5, "x": 10, "l": 50, "c": 100, "d": 500, "m": 1000}
_ANY = frozenset("a an the any every each all".split())
_UNTIL = frozenset(("until", "till", "to", "from"))
_NO_MINUTES = tuple(f":{minutes}" for minutes in range(60, 100))
_ORDINALS = (
    "first second third fourth fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth sixteenth "
    "seventeenth eighteenth nineteenth twentieth"
).split()


class InSentence(Protocol):
    """The words of a sentence."""

    words: list[Word]
    sentence: str
    shapes: KnownShapes

    def text(self, at: int) -> str:
        """The word at a place."""
        ...


def _sizes(reader: InSentence, at: int) -> Iterator[Value]:
    word = reader.words[at]
    if word.kind == "size" and word.number is not None:
        yield Value(at + 1, word.number)
    elif word.text == "pairs":
        yield Value(at + 1, 2)
    elif word.text in SO_MANY_OF and word.text.endswith("s") and word.text not in PART_OF:
        yield Value(at + 1, SO_MANY_OF[word.text])


def _parts(reader: InSentence, at: int) -> Iterator[Value]:
    if (part := PART_OF.get(reader.text(at))) is not None:
        yield Value(at + 1, 1 / part)


def _places(reader: InSentence, at: int) -> Iterator[Value]:
    word = reader.words[at]
    if word.text in _PLACES:
        yield Value(at + 1, _PLACES[word.text])
    elif word.number in (10, 100, 1000, 10000) and word.number is not None and not word.kind:
        yield Value(at + 1, word.number)
    elif word.text == "whole" and reader.text(at + 1) in ("number", "one", "pound"):
        yield Value(at + 2, 1)
    elif word.number == 1 and reader.text(at + 1) == "decimal":
        yield Value(at + 3, Fraction(1, 10))
    elif word.number == 2 and reader.text(at + 1) == "decimal":
        yield Value(at + 3, Fraction(1, 100))


def _times(reader: InSentence, at: int) -> Iterator[Value]:
    if reader.text(at - 1) in _UNTIL and 0 < (reader.words[at].number or 0) < 13 and not reader.words[at].kind:
        yield Value(at + 1, (reader.words[at].number or 0) * 60, "any clock")
    begins = at + (reader.text(at) == "a" and reader.text(at + 1) == "quarter")
    match = _TIME.match(reader.sentence, reader.words[begins].start)
    told = minutes_of(match.group()) if match else None
    if match and told:
        end = next(
            (place for place in range(at, len(reader.words)) if reader.words[place].start >= match.end()),
            len(reader.words),
        )
        yield Value(end, told[0], "clock" if told[1] else "any clock")
    elif match and match.group().endswith(_NO_MINUTES):
        yield Value(at + 1, -1, "clock")


def _named(names: list[str]) -> Callable[[InSentence, int], Iterator[Value]]:
    def find(reader: InSentence, at: int) -> Iterator[Value]:
        if reader.text(at) in names:
            yield Value(at + 1, names.index(reader.text(at)) + 1)

    return find


def _shape(reader: InSentence, at: int) -> Iterator[Value]:
    at += reader.text(at) in _ANY
    for length in (3, 2, 1):
        told = " ".join(reader.text(at + further) for further in range(length))
        for name in (told, told.removesuffix("s"), told.removesuffix("es")):
            if name in reader.shapes.by_name:
                yield Value(at + length, 0, "shape", name)
                return


def _part_of_shape(reader: InSentence, at: int) -> Iterator[Value]:
    for length in (3, 2, 1):
        told = " ".join(reader.text(at + further) for further in range(length))
        if told in reader.shapes.by_part:
            yield Value(at + length, 0, "part of a shape", told)
            return


def _roman(reader: InSentence, at: int) -> Iterator[Value]:
    """A Roman numeral of two letters or more, or one letter where the sentence says that it is Roman."""
    text = reader.text(at)
    if _ROMAN.fullmatch(text) and (len(text) > 1 or "roman" in reader.sentence or text in "lcdm"):
        worths = [_LETTERS_WORTH[letter] for letter in text]
        yield Value(
            at + 1,
            sum(-one if one < following else one for one, following in zip(worths, (*worths[1:], 0), strict=True)),
        )


SLOTS: Mapping[str, Callable[[InSentence, int], Iterator[Value]]] = {
    "S": _sizes, "P": _parts, "R": _places, "Q": _places, "T": _times, "U": _times, "W": _named(DAYS), "V": _named(DAYS),
    "G": _shape, "I": _roman, "Z": _part_of_shape, "M": _named(MONTHS), "N": _named(MONTHS), "O": _named(_ORDINALS),
}  # fmt: skip
"""What each letter stands for."""
HINTS_OF_TIME = frozenset("past to o'clock am pm noon midday midnight".split())
"""Words that a time is told with."""
_LETTERS = {
    **dict.fromkeys(DAYS, "WV"), **dict.fromkeys(MONTHS, "MN"), **dict.fromkeys(("noon", "midday", "midnight"), "TU"),
    **dict.fromkeys(("half", "quarter", "a"), "ABCLKGTU"),
    **dict.fromkeys((word for word in SO_MANY_OF if word.endswith("s") and word not in PART_OF), "S"), "pairs": "S",
}  # fmt: skip


_SIZES = frozenset(("pairs", *(word for word in SO_MANY_OF if word.endswith("s") and word not in PART_OF)))
_PLACE_WORDS = frozenset((*_PLACES, "whole", "decimal"))
_PLACE_NUMBERS = frozenset((10, 100, 1000, 10000))
_HELD_BY: Mapping[str, frozenset[str]] = {
    "P": frozenset(PART_OF), "WV": frozenset(DAYS), "MN": frozenset(MONTHS), "O": frozenset(_ORDINALS),
    "TU": HINTS_OF_TIME | _UNTIL | {"m"},
}  # fmt: skip
_ROMAN_LETTERS = frozenset(_LETTERS_WORTH)


def letters_held(reader: InSentence, held: frozenset[str]) -> frozenset[str]:
    """The letters for no plain numbers that something in a sentence may be told by."""
    letters = [each for each, words in _HELD_BY.items() if not words.isdisjoint(held)]
    if ":" in reader.sentence:
        letters.append("TU")
    if not _SIZES.isdisjoint(held) or any(word.kind == "size" for word in reader.words):
        letters.append("S")
    if not _PLACE_WORDS.isdisjoint(held) or any(word.number in _PLACE_NUMBERS for word in reader.words):
        letters.append("RQ")
    if not reader.shapes.ends_of_names.isdisjoint(held):
        letters.append("G")
    if not reader.shapes.ends_of_parts.isdisjoint(held):
        letters.append("Z")
    if any(map(_ROMAN_LETTERS.issuperset, held)):
        letters.append("I")
    return frozenset("".join(letters))


def letters_of(word: str) -> str:
    """The letters that a word that is no number may begin to tell; those of a number where nothing else is known."""
    return _LETTERS.get(word, "ABCLKGI" if _ROMAN.fullmatch(word) else "ABCLKG")
