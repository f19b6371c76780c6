"""Comparing: which of two numbers, amounts or fractions is more, and what lies between."""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from ..model.quantity import MEASURES, UNITS, UNITS_IN_WORDS
from .amounts import END, FRACTION, NUMBER, N, difference, fraction, number, says, stands_alone
from .claim_class import ClaimClass, Untrue
from .form import Form

_UNIT = "|".join(sorted((re.escape(unit.lower()) for unit in UNITS if unit != "£"), key=len, reverse=True))
_FIGURES = r"(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?"
_WORD = "|".join(sorted((word for word in UNITS_IN_WORDS if len(word) > 2), key=len, reverse=True))
_MEASURE = (
    rf"(?:£{_FIGURES}(?![\w.,:/]\d)|(?<![\w-])(?:an?|half an?|{_FIGURES}) (?:{_WORD}|litres?|hours?|days?|weeks?)\b"
    rf"|(?<![\w£−/.,:+-]){_FIGURES} ?(?:{_UNIT})(?!\w))"
)
_VALUE = rf"(?:{_MEASURE}|{FRACTION}|{N})"
_MORE = "more|greater|larger|bigger|longer|heavier|taller|higher|dearer|later"
_LESS = "less|fewer|smaller|shorter|lighter|lower|cheaper"
_COMPARED = Form(
    rf"(?P<first>{_VALUE})(?P<noun> [a-z]+)?,? (?:is|are|was) (?:always |much |still |just |even )?(?P<how>{_MORE}|{_LESS}) than "
    rf"(?P<second>{_VALUE})(?P<other> [a-z]+)?{END}"
)
_BY = Form(
    rf"(?P<first>{N}) (?:is|are) (?:exactly |only |just )?(?P<by>{N}) (?P<how>more|less|fewer|greater|smaller) than"
    rf" (?P<second>{N}){END}"
)
_BETWEEN = Form(
    rf"(?P<mid>{N}) (?:is|comes|lies|stands) (?P<half>halfway |half way |exactly )?(?:in )?between (?P<low>{N}) and (?P<high>{N}){END}"
)
_HALFWAY = Form(rf"\bhalf ?way between (?P<low>{N}) and (?P<high>{N}) (?:is|comes|lies|stands) (?P<mid>{N}){END}")
_NEXT = Form(
    rf"(?P<first>{N}) (?:comes|is) (?P<next>just |straight |the number )?(?P<way>before|after) (?P<second>{N}){END}"
)
_NAMED_NEXT = (
    Form(rf"(?:^|[.,;:(] ?|\b(?:so|then|and|that) )(?:straight |just )?(?P<way>after|before) (?P<second>{N}) (?:comes|you say"
         rf"|we say|is|you count|we count) (?P<first>{N}){END}"),
    Form(rf"\b(?:the (?:next )?number )(?:that comes |which comes )?(?:just |straight |right )?(?P<way>before|after)"
         rf" (?P<second>{N}) is (?P<first>{N}){END}"),
)  # fmt: skip
_BACKWARDS = Form(r"\b(?:back|backwards|down|downwards|countdown)\b")
_NEARER = Form(rf"(?P<mid>{N}) is (?:nearer|closer) (?:to )?(?P<low>{N}) than (?:it is )?(?:to )?(?P<high>{N}){END}")
_TOLD = Form(rf"(an?|half an?|{_FIGURES}) ({_WORD}|litres?|hours?|days?|weeks?)$")
_AMOUNT = Form(rf"(£)?({_FIGURES}) ?({_UNIT})?$")


def _worth(text: str) -> tuple[str, Rational]:
    """The kind of a value and how much it is."""
    if measure := _AMOUNT.match(text):
        pound, figures, unit = measure.groups()
        kind, worth = UNITS["£"] if pound else UNITS[unit] if unit in UNITS else ("", Fraction(1))
        return kind, number(figures) * worth
    if measure := _TOLD.match(text):
        how, word = measure.groups()
        kind, worth = MEASURES[UNITS_IN_WORDS.get(word) or word.removesuffix("s")]
        times = Fraction(1, 2) if how.startswith("half") else 1 if how.startswith("a") else number(how)
        return kind, worth * times
    if "/" in text or not NUMBER.fullmatch(text):
        return "", fraction(text)
    return "", number(text)


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for match in _COMPARED.finditer(sentence):
        if stands_alone(sentence, match.start()) and _alike(match["noun"], match["other"]):
            (kind, first), (other, second) = _worth(match["first"]), _worth(match["second"])
            more = match["how"] in _MORE.split("|")
            if kind == other and not (first > second if more else first < second):
                relation = "equal to" if first == second else "less than" if more else "more than"
                yield Untrue(*match.span(), f"{match['first']} is {relation} {match['second']}")
    for match in _BY.finditer(sentence):
        first, by, second = number(match["first"]), number(match["by"]), number(match["second"])
        right = second + by if match["how"] in ("more", "greater") else second - by
        if stands_alone(sentence, match.start()) and first != right:
            yield Untrue(*match.span(), f"{says(right)} is {match['by']} {match['how']} than {says(second)}")
    yield from _between(sentence)
    yield from _next(sentence)


def _next(sentence: str) -> Iterator[Untrue]:
    for match in _NEXT.finditer(sentence) if not _BACKWARDS.search(sentence) else ():
        first, second = number(match["first"]), number(match["second"])
        step = first - second if match["way"] == "after" else second - first
        if stands_alone(sentence, match.start()) and (step <= 0 or (match["next"] and step != 1)):
            right = second + 1 if match["way"] == "after" else second - 1
            yield Untrue(*match.span(), f"{says(right)} comes just {match['way']} {says(second)}")
    for match in (
        match for form in _NAMED_NEXT for match in form.finditer(sentence) if not _BACKWARDS.search(sentence)
    ):
        step = 1 if match["way"] == "after" else -1
        right = number(match["second"]) + step
        if number(match["first"]) != right and " in " not in sentence[: match.start()]:
            yield Untrue(*match.span(), f"{says(right)} comes just {match['way']} {says(number(match['second']))}")
    for match in _NEARER.finditer(sentence):
        mid, near, far = number(match["mid"]), number(match["low"]), number(match["high"])
        to_near, to_far = difference(mid, near), difference(mid, far)
        if stands_alone(sentence, match.start()) and to_near >= to_far:
            yield Untrue(*match.span(), f"it is {says(to_near)} from {says(near)} and {says(to_far)} from {says(far)}")


def _alike(first: str | None, second: str | None) -> bool:
    return first is None or second is None or first.rstrip("s") == second.rstrip("s")


def _between(sentence: str) -> Iterator[Untrue]:
    for match in (*_BETWEEN.finditer(sentence), *_HALFWAY.finditer(sentence)):
        low, mid, high = number(match["low"]), number(match["mid"]), number(match["high"])
        told_first = "half" in match.re.groupindex  # 7 is halfway between, not: halfway between is 7
        if told_first and not stands_alone(sentence, match.start("mid")):
            continue
        halfway = Fraction(low + high) / 2
        if not told_first or (match["half"] or "").startswith("half"):
            if mid != halfway:
                yield Untrue(*match.span(), f"{says(halfway)} is halfway between {says(low)} and {says(high)}")
        elif not min(low, high) < mid < max(low, high):
            yield Untrue(*match.span(), f"{says(mid)} is not between {says(low)} and {says(high)}")


CLASS = ClaimClass(
    name="comparing",
    reads="Two numbers, amounts in one kind of unit, or fractions, of which one is said to be more, less or some more than the "
    "other; a number said to lie between two others, or halfway, or to come before or after another.",
    leaves="What is counted in different things (6 pennies and 5 pounds), sums, and comparisons without both numbers.",
    source="Common practice, no source: the order of numbers; exact fractions; units as in site_data/facts.yaml.",
    cues=frozenset(("than", "between", "comes", "after", "before")),
    find=_find,
    numbers=1,
)
