"""Whole numbers written in words, as English writes them: ``twenty-three``, ``two hundred and five``."""

from __future__ import annotations

import re
from collections.abc import Mapping

_UP_TO_TWELVE = "one two three four five six seven eight nine ten eleven twelve".split()
_TEENS = "thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
_WORTH: Mapping[str, int] = {
    **{word: worth for worth, word in enumerate((*_UP_TO_TWELVE, *_TEENS), start=1)},
    **{word: 10 * worth for worth, word in enumerate(_TENS, start=2)},
    "nought": 0,
    "zero": 0,
}
WORDS_OF_NUMBERS = frozenset(_WORTH)
"""The words that such a number begins with."""
_TIMES = {"hundred": 100, "thousand": 1_000, "million": 1_000_000}
_DIGIT = "|".join(_UP_TO_TWELVE[:9])
_UNDER_100 = rf"(?:(?:{'|'.join(_TENS)})(?:[- ](?:{_DIGIT})\b)?|{'|'.join((*_TEENS, *reversed(_UP_TO_TWELVE)))})"
NUMBER_IN_WORDS = (
    rf"(?:nought|zero|{_UNDER_100}(?: (?:{'|'.join(_TIMES)})\b(?:,? (?:and )?{_UNDER_100}\b)?)*)(?![\w’'-])"
)
"""The pattern of a number in words, in small letters; an article is none, so ``a hundred`` is left."""
_WORD = re.compile(r"[a-z]+")


def number_in_words(text: str) -> int:
    """What a match of ``NUMBER_IN_WORDS`` is worth."""
    total = group = 0
    for word in _WORD.findall(text):
        if word == "hundred":
            group *= 100
        elif word in _TIMES:
            total, group = total + group * _TIMES[word], 0
        elif word != "and":
            group += _WORTH[word]
    return total + group
