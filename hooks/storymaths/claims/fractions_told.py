"""Fractions in words: parts that make wholes, fractions that are the same, and parts and multiples of amounts."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from ..expression.number import Rational
from ..expression.say import written
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, FRACTION, N, fraction, number, says, stands_alone
from .claim_class import IS, ClaimClass, Untrue
from .form import Form

_WHOLE = rf"(?:(?P<wholes>{N}|an?|the) wholes?(?: one)?)"
_SAME = (
    r"(?:is|are|makes?|is the same as|are the same as|is equal to|are equal to|equals?|is worth|are worth|is equivalent"
    r" to|are equivalent to)"
)
_MAKE_WHOLE = Form(rf"(?P<parts>{FRACTION}) (?:together )?{_SAME} {_WHOLE}{END_OR_AND}")
_IN_WHOLE = Form(rf"\bthere are (?P<count>{N}) (?P<part>halves|[a-z]+hs|thirds|quarters) in {_WHOLE}{END_OR_AND}")
_WHOLE_HAS = Form(rf"\b{_WHOLE} (?:has|is|are|makes?|equals|can be cut into) (?P<parts>{FRACTION}){END_OR_AND}")
_ALIKE = Form(rf"(?P<first>{FRACTION}) {_SAME} (?P<second>{FRACTION}){END_OR_AND}")
_IS_PART = Form(rf"(?P<part>{N}) is (?P<how>{FRACTION}|double|twice|\d+ times) (?:of )?(?P<whole>{N}){END_OR_AND}")
_PART_OF = Form(
    rf"(?P<how>{FRACTION}) of (?:the )?(?P<whole>{N})(?P<noun> [a-z]+)? (?:is|are|makes?|gives?|equals) (?P<part>{N})(?:"
    rf" [a-z]+)?{END_OR_AND}"
)

_PERCENT_OF = Form(
    rf"(?<![\d.])(?P<percent>\d+(?:\.\d+)?)(?:%| per ?cent) of (?P<whole>£?{N}) (?:is|are|equals|makes|gives) (?P<part>£?{N}){END_OR_AND}"
)
_PERCENT_IS = Form(
    rf"(?<![\d.])(?P<percent>\d+(?:\.\d+)?)(?:%| per ?cent)(?: of (?:an amount|a number|anything|something|it|the"
    rf" whole))? (?:is|means|equals|is"
    rf" the same as|is equal to|is worth|is equivalent to)"
    rf" (?P<part>{FRACTION}|the whole|all)(?: of (?:it|an amount|the whole|the amount))?{END_OR_AND}"
)
_IS_PERCENT = Form(
    rf"(?P<part>{FRACTION})(?: of (?:an amount|a number|anything|something|it))? (?:is|means|equals|is the same as|is equal to"
    rf"|is equivalent to) (?<![\d.])(?P<percent>\d+(?:\.\d+)?)(?:%| per ?cent){END_OR_AND}"
)


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for match in (*_MAKE_WHOLE.finditer(sentence), *_WHOLE_HAS.finditer(sentence)):
        made, wholes = fraction(match["parts"]), _wholes(match["wholes"])
        if made != wholes and _counts(match["parts"]) and stands_alone(sentence, match.start()):
            yield Untrue(*match.span(), f"{match['parts']} {_make(made)}")
    for match in _IN_WHOLE.finditer(sentence):
        made = fraction(f"{match['count']} {match['part']}") if _is_part(match["part"]) else Fraction(0)
        if made and made != _wholes(match["wholes"]):
            yield Untrue(*match.span(), f"{match['count']} {match['part']} {_make(made)}")
    for match in _ALIKE.finditer(sentence):
        if stands_alone(sentence, match.start()) and (first := fraction(match["first"])) != fraction(match["second"]):
            yield Untrue(*match.span(), f"{match['first']} is {written(first)}")
    yield from _of_amounts(sentence)
    yield from _percents(sentence)


def _of_amounts(sentence: str) -> Iterator[Untrue]:
    for match in (*_IS_PART.finditer(sentence), *_PART_OF.finditer(sentence)):
        is_part = "noun" not in match.re.groupindex
        start = match.start("part") if is_part else match.start()
        times: Rational = _times(match["how"])
        right = times * number(match["whole"])
        # A plain sum, such as half of 9 is 4, is the reader of arithmetic's; here the whole is of things.
        if (is_part or match["noun"]) and stands_alone(sentence, start) and number(match["part"]) != right:
            of = "" if match["how"] in ("double", "twice") or "times" in match["how"] else "of "
            yield Untrue(*match.span(), f"{match['how']} {of}{says(number(match['whole']))} is {written(right)}")


def _percents(sentence: str) -> Iterator[Untrue]:
    for match in _PERCENT_OF.finditer(sentence) if "cent" in sentence else ():
        right = Fraction(number(match["percent"])) / 100 * number(match["whole"].lstrip("£"))
        if stands_alone(sentence, match.start()) and number(match["part"].lstrip("£")) != right:
            yield Untrue(*match.span(), f"it is {written(right, places=2)}")
    for match in (*_PERCENT_IS.finditer(sentence), *_IS_PERCENT.finditer(sentence)):
        part = Fraction(1) if match["part"] in ("the whole", "all") else fraction(match["part"])
        percent = Fraction(number(match["percent"])) / 100
        nearly = abs(percent - part) < Fraction(1, 100) and part.denominator % 3 == 0
        if stands_alone(sentence, match.start()) and percent != part and not nearly:
            yield Untrue(*match.span(), f"{says(number(match['percent']))}% is {written(percent)}")


def _times(how: str) -> Rational:
    if how in ("double", "twice"):
        return 2
    return number(how.partition(" ")[0]) if how.endswith("times") else fraction(how)


def _is_part(word: str) -> bool:
    return re.fullmatch(FRACTION, word) is not None


def _counts(parts: str) -> bool:
    """Whether the parts are counted: "a quarter is a whole" is no sum."""
    return "/" in parts or " " in parts


def _wholes(text: str) -> Rational:
    return 1 if text in ("a", "an", "the") else number(text)


def _make(worth: Fraction) -> str:
    return f"make {written(worth)} {'whole' if worth <= 1 else 'wholes'}"


CLASS = ClaimClass(
    name="fractions",
    reads="Halves, quarters and other parts that make wholes; two fractions said to be the same; a number said to be half, double "
    "or so many times another; a fraction of so many things.",
    leaves="Plain sums such as half of 9 is 4, which the reader of arithmetic works out; parts of an amount that is not given.",
    source="Common practice, no source: exact fractions.",
    cues=frozenset(("half", "halves", "third", "thirds", "quarter", "quarters", "fifths", "fifth", "sixths", "eighths", "tenths",
                    "double", "twice", "whole", "wholes", "times", "cent", "percent", "/", "%")),
    find=_find,
    numbers=2,
    verbs=IS,
)  # fmt: skip
