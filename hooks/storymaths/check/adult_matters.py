"""Which numbers in a page's words are an adult's: an ISBN, a room, the size of paper, what is in the cupboard, a time of day."""

from __future__ import annotations

import re
from functools import lru_cache

from ..model.prose import Numeral
from ..model.prose_words import AdultMatters
from ..model.reference import Reference

_ENDS = re.compile(r"[.!?][\"”’')]*\s+(?=[\"“‘'(]*[A-Z\d])|\n\n")
_TIME_AFTER = re.compile(r" ?(?:[ap]\.?m\b|o[’']clock)", re.IGNORECASE)
_TIME_BEFORE = re.compile(
    r"\b(?:at|by|until|till|before|after|from \d{1,2}[.:]\d\d (?:to|until|till)) $", re.IGNORECASE
)
_TIME_FROM = re.compile(r"\bfrom $", re.IGNORECASE)
_TIME_TO = re.compile(r" (?:to|until|till) \d{1,2}[.:]\d\d\b", re.IGNORECASE)
_TIME = re.compile(r"([01]?\d|2[0-3])\.[0-5]\d")
_SIZE_AFTER = re.compile(r" ?(?:%|mm\b|cm\b|[×x] ?\d+ ?(?:mm|cm)\b)")
_MEASURED_BEFORE = re.compile(r"\d ?(?:mm|cm)? ?[×x] ?$")
_SIZE = re.compile(r"× ?\d+(?:\.\d+)? ?(?:mm|cm)\b")
_PHONE = re.compile(r"\b0\d{2,4}[ -]?$")
_LOOK = 200


class _Words:
    """The lists as patterns."""

    def __init__(self, adults: AdultMatters) -> None:
        self.sentence = re.compile(rf"\b(?:{_any(adults.sentences)})\b")
        self.before = re.compile(rf"\b(?:{_any(adults.before)})(?: number| no\.)?:? ?(?:[\d -]+)?$")
        self.after = re.compile(rf"[- ]?(?:{_any(adults.after)})\b")
        self.sized, self.priced = (re.compile(rf"\b(?:{_any(words)})\b") for words in (adults.sized, adults.priced))
        self.stored = re.compile(
            rf" ?(?:[a-z-]+ )?(?P<thing>[a-z-]+)s? (?:left )?in (?:the|each|every|a|our|your) (?:{_any(adults.stored)})\b"
        )


def _any(words: tuple[str, ...]) -> str:
    return "|".join(re.escape(word) for word in words)


@lru_cache(maxsize=4)
def _words(adults: AdultMatters) -> _Words:
    return _Words(adults)


def is_an_adults(text: str, numeral: Numeral, reference: Reference) -> bool:
    """Whether a number is clearly an adult's matter, by the words round it."""
    words = _words(reference.prose.adults)
    before = _ENDS.split(text[max(0, numeral.start - _LOOK) : numeral.start])[-1].lower().replace("\n", " ")
    after = _ENDS.split(text[numeral.end : numeral.end + _LOOK])[0].lower().replace("\n", " ")
    if (len(numeral.text) > 3 and numeral.text.startswith("0")) or _PHONE.search(before):
        return True
    if words.before.search(before) or words.after.match(after) or _is_time(numeral.text, before, after):
        return True
    sentence = before + numeral.text + after
    paragraph = text[text.rfind("\n\n", 0, numeral.start) + 1 : numeral.start]
    if paragraph.lower().lstrip().startswith(reference.prose.adults.paragraphs):
        return True
    if words.sentence.search(sentence):
        return True
    if (_SIZE_AFTER.match(after) or _MEASURED_BEFORE.search(before)) and words.sized.search(sentence):
        return True
    if before.endswith("£") and words.priced.search(sentence):
        return True
    stored = words.stored.match(after)
    return stored is not None and any(name.endswith(stored["thing"].rstrip("s")) for name in reference.material_names)


def joins_a_size(text: str, at: int) -> bool:
    """Whether the sign there stands between the two sides of something: 210 × 297 mm."""
    return text[at] == "×" and _SIZE.match(text, at) is not None and text[max(0, at - 2) : at].strip().isdigit()


def _is_time(written: str, before: str, after: str) -> bool:
    if _TIME.fullmatch(written) is None:
        return False
    if _TIME_AFTER.match(after) or _TIME_BEFORE.search(before):
        return not re.match(r" ?(?:m|cm|kg|g|l|litres?|ml)\b", after)
    return _TIME_FROM.search(before) is not None and _TIME_TO.match(after) is not None
