"""Minutes as old plans write them: “10 mins”, “9.30–9.45”, “0-10 min”, “1 hour”."""

from __future__ import annotations

import re

from ...expression.number_words import ONES, TENS

_DASH = r"\s*(?:-|–|—|to)\s*"
_CLOCK = re.compile(rf"\b(\d{{1,2}})[.:](\d\d)\s*(?:[ap]m)?{_DASH}(\d{{1,2}})[.:](\d\d)\b")
_RANGE = re.compile(rf"\b(\d{{1,3}}){_DASH}(\d{{1,3}})\s*(?:minutes?|mins?)\b", re.IGNORECASE)
_MINUTES = re.compile(r"\b(\d{1,3})\s*-?\s*(?:minutes?|mins?)\b", re.IGNORECASE)
_TEN, _ONE = ("|".join(words) for words in (TENS, ONES))
_IN_WORDS = re.compile(rf"\b(?:({_TEN})[ -])?({_TEN}|{_ONE})\s*-?\s*minutes?\b", re.IGNORECASE)
_HOURS = re.compile(r"\b(\d)\s*(?:hours?|hrs?)\b", re.IGNORECASE)
_TIMES = (_CLOCK, _RANGE, _MINUTES, _IN_WORDS, _HOURS)


def minutes_in(text: str) -> int | None:
    """The first length of time in a text, in minutes; None where there is none."""
    if found := _CLOCK.search(text):
        start, end = int(found[1]) * 60 + int(found[2]), int(found[3]) * 60 + int(found[4])
        return (end - start) % (12 * 60) or None
    if found := _RANGE.search(text):
        return max(0, int(found[2]) - int(found[1])) or None
    if found := _MINUTES.search(text):
        return int(found[1]) or None
    if found := _IN_WORDS.search(text):
        tens, ones = (found[1] or "").lower(), found[2].lower()
        return (TENS.get(tens, 0) + {**TENS, **ONES}[ones]) or None
    found = _HOURS.search(text)
    return 60 * int(found[1]) if found else None


def starts_with_time(text: str) -> bool:
    """Whether a length of time is the first thing in a text, and something follows it."""
    return any((found := pattern.match(text)) and found.end() < len(text) for pattern in _TIMES)


def without_times(text: str) -> str:
    """A text with every length of time taken out."""
    for pattern in _TIMES:
        text = pattern.sub(" ", text)
    return text
