"""Whole numbers written in words, as a pattern for claims to be found by: ``twenty-three``, ``two hundred and five``."""

from __future__ import annotations

from ..expression.number_words import ONES, SCALES, TENS, read_words

WORDS_OF_NUMBERS = frozenset((*ONES, *TENS))
"""The words that such a number begins with."""
_NOUGHTS = [word for word, worth in ONES.items() if not worth]
_COUNTED = sorted((word for word, worth in ONES.items() if worth), key=len, reverse=True)
_DIGIT = "|".join(word for word, worth in ONES.items() if 0 < worth < 10)
_UNDER_100 = (
    rf"(?:(?:{'|'.join(word for word in TENS if word != 'ten')})(?:[- ](?:{_DIGIT})\b)?|{'|'.join((*_COUNTED, 'ten'))})"
)
NUMBER_IN_WORDS = (
    rf"(?:{'|'.join(_NOUGHTS)}|{_UNDER_100}(?: (?:{'|'.join(SCALES)})\b(?:,? (?:and )?{_UNDER_100}\b)?)*)(?![\w’'-])"
)
"""The pattern of a number in words, in small letters; an article is none, so ``a hundred`` is left."""


def number_in_words(text: str) -> int:
    """What a match of ``NUMBER_IN_WORDS`` is worth."""
    read = read_words(text.replace(",", "").split())
    assert read is not None, text
    return int(read.value)
