"""What an author's own words for a task make pupils meet: numbers, signs and units."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction
from functools import lru_cache

from ..model.demands import Demands, amounts, operation
from ..parse.number_sentence import exact, find_number_sentences

_WHOLE = r"(?:\d{1,3}(?:,\d{3})+|\d+)"
_NUMBER = re.compile(rf"(?<![\w.,/:])(?:£)?(−)?({_WHOLE} \d+/\d+|\d+/\d+|{_WHOLE}(?:\.\d+)?)(?![\d/:])")
_SIGN = re.compile(r"[+−=<>×÷≠£%²³]|°C|(?<=\d)p\b|(?<=\d)\.(?=\d)")
_UNIT = re.compile(
    r"(?<=\d)[ ]?(mm³|cm³|km³|cm²|m²|m³|mm|cm|km|kg|ml|litres?|m|g|l)(?![\w²³])|\b(hours?|minutes?|seconds|(?<=\d )second)\b"
)
_AS_LISTED = {"litre": "litres", "hour": "hours", "minute": "minutes", "second": "seconds"}


def read_demands(words: Iterable[str]) -> Demands:
    """The numbers, signs and units that pupils meet in an author's own words."""
    text = "\n".join(words)
    return Demands(
        amounts=amounts(_numbers(text)),
        operations=(operation("+", *sorted(set(_calculated(text)))),),
        signs=frozenset(match.group() for match in _SIGN.finditer(text)),
        other_units=frozenset(
            _AS_LISTED.get(unit, unit) for pair in _UNIT.findall(text) if (unit := pair[0] or pair[1])
        ),
    )


def _numbers(text: str) -> Iterable[Fraction]:
    for match in _NUMBER.finditer(text):
        yield from _worth(match.group(2), match.group(1) is not None)


# A search for a version reads the same few numbers thousands of times.
@lru_cache(maxsize=4096)
def _worth(written: str, below_zero: bool) -> tuple[Fraction, ...]:
    """What a number is worth, and the part it is of; nothing where it is worth nothing."""
    if re.search(r"/0+$", written):
        return ()  # an author's own words may hold anything
    worth = Fraction(exact(written)) * (-1 if below_zero else 1)
    over, line, under = written.rpartition(" ")[2].partition("/")
    if line and Fraction(int(over), int(under)).denominator != int(under):
        # 3/6 is worth a half, and yet the sixths are there to be understood.
        return worth, Fraction(1, int(under))
    return (worth,)


def _calculated(text: str) -> Iterable[Fraction]:
    for sentence in find_number_sentences(text):
        if "+" in sentence.text or "−" in sentence.text:
            yield from _numbers(sentence.text)
