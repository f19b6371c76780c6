"""Place value: hundreds, tens and ones that make a number, what a digit stands for, how many digits there are."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number, says, stands_alone
from .claim_class import IS, ClaimClass, Untrue
from .form import Form

_PLACES = {
    "ones": 1,
    "one": 1,
    "units": 1,
    "unit": 1,
    "tens": 10,
    "ten": 10,
    "hundreds": 100,
    "hundred": 100,
    "thousands": 1000,
    "thousand": 1000,
}
_PLACE = r"(?:ones?|units?|tens?|hundreds?|thousands?)\b"
_COUNT = rf"(?:{N}|no)"
_PART = rf"{_COUNT} (?:long |short |lots of )?{_PLACE}"
_PARTS = rf"{_PART}(?:(?:,? and |, |,? \+ |,? plus ){_PART}){{0,8}}"
_ONE_PART = Form(rf"({_COUNT}) (?:long |short |lots of )?({_PLACE})")
_MAKES = (
    r"(?:is|are|makes?|gives?|equals?|say|says|is the same as|are the same as|is worth|are worth|is equal to|are equal"
    r" to)(?: the number)?"
)
_SIDES = Form(rf"(?P<left>{_PARTS}|{N}),? {_MAKES} (?P<right>{_PARTS}|{N}){END_OR_AND}")
_HAS = Form(
    rf"(?P<left>{N}) (?:has|is made of|can be made (?:with|of|from|using|by)|can be shown (?:with|as|by)|is made (?:with|from)"
    rf"|is written as|can be partitioned into|partitions into|is made up of|splits into|can be split into)"
    rf" (?P<right>{_PARTS}){END_OR_AND}"
)
_THERE = Form(rf"\bthere are (?P<right>{_PARTS}) in (?:the number )?(?P<left>{N}){END_OR_AND}")
_IN = Form(rf"\bin (?:the number )?(?P<left>{N}),? there are (?P<right>{_PARTS}){END_OR_AND}")
_DIGIT = Form(
    rf"(?:in (?:the number )?(?P<whole>{N}),? )?the (?:digit )?(?P<digit>\d)(?: in (?:the number )?(?P<whole2>{N}))? "
    rf"(?:stands for|is worth|means|has (?:a|the) value of|represents|is in the place of|shows) (?P<worth>{_PART}|{N})"
    rf"(?: in (?P<whole3>{N}))?{END_OR_AND}"
)
_PLACE_DIGIT = Form(
    rf"\b(?:the (?P<place>ones|units|tens|hundreds|thousands) digit (?:of|in) (?P<whole>{N})|the digit in the "
    rf"(?P<place2>ones|units|tens|hundreds|thousands) place (?:of|in) (?P<whole2>{N})) is (?P<digit>{N}){END_OR_AND}"
)

_SMALL = {"tenths": 1, "hundredths": 2, "thousandths": 3}
_IS_WORTH = r"(?:stands for|is worth|means|has (?:a|the) value of|represents|is|shows)"
_DECIMAL = Form(
    rf"\bin (?:the number )?(?P<whole>\d+\.\d+),? the (?:digit )?(?P<digit>[1-9]) {_IS_WORTH} (?P<count>\d+) (?P<place>[a-z]+?s?)\b"
)
_DECIMAL_OF = Form(
    rf"\bthe (?:digit )?(?P<digit>[1-9]) in (?:the number )?(?P<whole>\d+\.\d+) {_IS_WORTH} (?P<count>\d+) (?P<place>[a-z]+?s?)\b"
)


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for form in (_SIDES, _HAS, _IN, _THERE):
        for match in form.finditer(sentence):
            left, right = match["left"], match["right"]
            if (
                not (_ONE_PART.search(left) or _ONE_PART.search(right))
                or not stands_alone(sentence, match.start())
                or sentence.endswith(" in ", 0, match.start())
            ):
                continue
            if form is not _SIDES and len(_ONE_PART.pairs(right)) == 1:
                if not _holds_so_many(number(left), right):
                    yield Untrue(*match.span(), f"{says(number(left))} has not {right}")
            elif _worth(left) != _worth(right):
                yield Untrue(*match.span(), f"{left} is {says(_worth(left))}")
    yield from _digits(sentence)


def _worth(text: str) -> Rational:
    """What a number, or so many hundreds, tens and ones, is worth."""
    parts = _ONE_PART.pairs(text)
    if not parts:
        return number(text)
    return sum((0 if count == "no" else number(count)) * _PLACES[place] for count, place in parts)


def _holds_so_many(whole: Rational, part: str) -> bool:
    """Whether a number has so many of a place: as its digit there, or in all."""
    count, place = _ONE_PART.pairs(part)[0]
    have = whole // _PLACES[place]
    return (0 if count == "no" else number(count)) in (have, have % 10)


def _digits(sentence: str) -> Iterator[Untrue]:
    for match in _DIGIT.finditer(sentence):
        whole = match["whole"] or match["whole2"] or match["whole3"]
        if whole is None or number(whole).denominator != 1:
            continue
        value, digit = number(whole), int(match["digit"])
        if digit == 0:
            continue
        worths = {digit * 10**place for place, each in enumerate(reversed(str(value))) if int(each) == digit}
        if not worths:
            yield Untrue(*match.span(), f"there is no {digit} in {says(value)}")
        elif _worth(match["worth"]) not in worths:
            yield Untrue(*match.span(), f"in {says(value)} the {digit} is worth {says(max(worths))}")
    for match in (*_DECIMAL.finditer(sentence), *_DECIMAL_OF.finditer(sentence)):
        yield from _decimal(match)
    for match in _PLACE_DIGIT.finditer(sentence):
        value, place = number(match["whole"] or match["whole2"]), match["place"] or match["place2"]
        right = value // _PLACES[place] % 10
        if number(match["digit"]) != right:
            yield Untrue(*match.span(), f"the {place} digit of {says(value)} is {says(right)}")


def _decimal(match: re.Match[str]) -> Iterator[Untrue]:
    whole, digit = match["whole"], match["digit"]
    place = match["place"] if match["place"].endswith("s") else f"{match['place']}s"
    if whole.count(digit) != 1 or (place not in _SMALL and place not in _PLACES):
        return
    at = whole.index(digit) - whole.index(".")
    is_right = _SMALL.get(place) == at if at > 0 else 10 ** (-at - 1) == _PLACES.get(place)
    if not is_right or match["count"] != digit:
        named = {1: "tenths", 2: "hundredths", 3: "thousandths"}.get(at) if at > 0 else None
        worth = f"{digit} {named}" if named else f"{int(digit) * 10 ** (-at - 1):,}" if at < 0 else digit
        yield Untrue(*match.span(), f"in {whole} the {digit} is worth {worth}")


CLASS = ClaimClass(
    name="place value",
    reads="Thousands, hundreds, tens and ones said to make a number, or each other; what a digit in a number stands for; the digit "
    "of a place.",
    leaves="Digits of a number that is not named in the sentence, and those that stand in it twice after a point.",
    source="Common practice, no source: numbers are written in tens.",
    cues=frozenset(("tens", "ones", "hundreds", "thousands", "stands", "worth", "digit", "means", "value", "units",
                    "represents", "tenths", "hundredths", "thousandths")),
    find=_find,
    numbers=2,
    verbs=IS | {"stands", "represents", "shows", "made", "split", "splits"},
)  # fmt: skip
