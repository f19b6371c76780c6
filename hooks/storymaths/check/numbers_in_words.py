"""Numbers and fractions that pupils meet in words, where they may be beyond a year: ``two hundred and fifty``, ``two thirds``."""

from __future__ import annotations

from collections.abc import Iterator

from ..claims.form import Form
from ..claims.number_words import NUMBER_IN_WORDS, number_in_words
from ..model.prose import Numeral, Prose

_LARGE = ("hundred", "thousand", "million")
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_PARTS = {
    "third": 3, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9, "tenth": 10, "eleventh": 11, "twelfth": 12,
    "twentieth": 20, "hundredth": 100, "thousandth": 1000,
}  # fmt: skip
_NUMBER = Form(rf"\b{NUMBER_IN_WORDS}(?!-)")
_PART = Form(
    rf"\b(?:(?:two|three|four|five|six|seven|eight|nine|ten|eleven)[- ](?P<many>{'|'.join(_PARTS)})s\b"
    rf"|(?:a|an|one) (?P<one>{'|'.join(_PARTS)})(?= of (?:the|a|an|its|his|her|their|it|\d)\b))"
)
_BACK, _ON = 60, 60


def numbers_in_words(prose: Prose, largest: int) -> Iterator[Numeral]:
    """The numbers in words above ``largest``, as numerals."""
    cues = _LARGE if largest >= 100 else (*_LARGE, *_TENS)
    seen: set[int] = set()
    lowered = prose.lowered
    for at in sorted(at for cue in prose.words.intersection(cues) for at in _places(cue, lowered)):
        for match in _NUMBER.finditer(lowered, max(0, at - _BACK), at + _ON):
            if match.start() <= at < match.end() and match.start() not in seen:
                seen.add(match.start())
                worth = number_in_words(match.group())
                if worth > largest:
                    yield Numeral(match.start(), prose.text[match.start() : match.end()], worth, 0, 0)


def fractions_in_words(prose: Prose) -> Iterator[Numeral]:
    """The fractions in words but for halves and quarters, as numerals."""
    words = prose.words
    if any(part in words or f"{part}s" in words for part in _PARTS):
        for match in _PART.finditer(prose.lowered):
            text = prose.text[match.start() : match.end()]
            yield Numeral(match.start(), text, 0, 0, _PARTS[match["many"] or match["one"]])


def _places(cue: str, lowered: str) -> Iterator[int]:
    at = lowered.find(cue)
    while at >= 0:
        yield at
        at = lowered.find(cue, at + len(cue))
