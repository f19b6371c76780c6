"""Numbers named in other ways: Roman numerals, words beside figures, the mean and its like of some numbers, and ratios."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator
from fractions import Fraction

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, LIST, N, number, numbers, says, stands_clear
from .claim_class import ClaimClass, Untrue
from .form import Form

_TENS = (("m", 1000), ("cm", 900), ("d", 500), ("cd", 400), ("c", 100), ("xc", 90), ("l", 50), ("xl", 40), ("x", 10))
_ROMAN = (*_TENS, ("ix", 9), ("v", 5), ("iv", 4), ("i", 1))
_LETTERS = r"[ivxlcdm]{1,15}"
_SAFE = r"(?:[ivx]{2,7}|[xlcdm]{2,3}[ivx]{2,6}|m[cdxlvi]{2,9})"
_MEANS = r"(?:is|means|stands for|equals|represents|=|shows|is worth|is the number|is read as)"
_NUMERAL = (
    Form(rf"(?<![\w’'])(?P<roman>{_SAFE}) (?:in roman numerals )?{_MEANS} (?P<figures>{N}){END_OR_AND}"),
    Form(
        rf"(?P<figures>{N}) (?:is|is written(?: as)?|in roman numerals is|is written in roman numerals as)"
        rf" (?P<roman>{_SAFE}){END_OR_AND}"
    ),
)
_TOLD_ROMAN = (
    Form(rf"\broman numerals? (?:for (?:the number )?)(?P<figures>{N}) (?:is|are|=) (?P<roman>{_LETTERS}){END_OR_AND}"),
    Form(rf"\broman numerals? (?P<roman>{_LETTERS}) {_MEANS} (?P<figures>{N}){END_OR_AND}"),
    Form(rf"\bin roman numerals,? (?P<figures>{N}) is (?:written )?(?:as )?(?P<roman>{_LETTERS}){END_OR_AND}"),
    Form(rf"\bin roman numerals,? (?P<roman>{_LETTERS}) {_MEANS} (?P<figures>{N}){END_OR_AND}"),
    Form(rf"(?P<figures>{N}) in roman numerals is (?P<roman>{_LETTERS}){END_OR_AND}"),
    Form(rf"(?<![\w’'])(?P<roman>{_LETTERS}) (?:is|means|stands for) (?P<figures>{N}) in roman numerals{END_OR_AND}"),
    Form(rf"(?P<roman>{_LETTERS}) is the roman numerals? for (?P<figures>{N}){END_OR_AND}"),
)  # fmt: skip
_WRITTEN = Form(
    rf"(?P<words>{N}) (?:is written|is written as|in figures is|in digits is|is written in figures as) (?P<figures>{N}){END_OR_AND}"
)
_AVERAGE = (
    Form(rf"\bthe (?P<what>mean|average|median|mode|range|total|sum) of (?:the numbers )?(?P<list>{LIST}) is (?P<got>{N}){END_OR_AND}"),
    Form(rf"(?P<got>{N}) is the (?P<what>mean|average|median|mode|range) of (?:the numbers )?(?P<list>{LIST}){END_OR_AND}"),
    Form(rf"(?P<list>{LIST}) have (?:a|the) (?P<what>mean|average|median|mode|range) of (?P<got>{N}){END_OR_AND}"),
)  # fmt: skip
_AMOUNT = r"£?\d+(?:\.\d+)?(?:p|cm|g|kg|m|ml| [a-z]+)?"
_RATIO = Form(
    rf"(?P<all>{_AMOUNT}),? (?:is )?(?:shared|split|divided|cut|parted)(?: out)? in (?:the |a )?ratio (?:of )?(?P<a>\d+)(?: to "
    rf"|:| : )(?P<b>\d+)"
    rf"(?: gives?| makes?| is|,? giving|,? making)(?: parts of)? (?P<one>{_AMOUNT})(?: to [a-z]+)? and (?P<two>{_AMOUNT}){END_OR_AND}"
)
_RATIO_SAME = Form(
    rf"\b(?:the |a )?ratio (?:of )?(?P<a>\d+)(?: to |:)(?P<b>\d+) is (?:the same as|equal to|equivalent to|as) (?:the ratio"
    rf" (?:of )?)?(?P<c>\d+)(?: to |:)(?P<d>\d+){END_OR_AND}"
)
_SIMPLEST = Form(
    rf"(?<![\w.])(?P<a>\d+)(?: to |:)(?P<b>\d+) (?:simplifies to|in its simplest form is|is simplified to) (?P<c>\d+)(?: to "
    rf"|:)(?P<d>\d+){END_OR_AND}"
)
_FOR_EVERY = Form(
    rf"\bfor every (?P<a>{N}) (?P<x>[a-z ]+?) there (?:is|are) (?P<b>{N}) (?P<y>[a-z ]+?),? so (?:for |with )?(?P<c>{N})"
    rf" (?P=x)(?:,? there (?:is|are)| need| have| go with)? (?P<d>{N}) (?P=y)\b"
)
_HAS_NUMERAL = Form(r"\b[ivxlc]{2,}\b")
_HAS_AVERAGE = Form(r"\b(?:mean|average|median|mode|range|total|sum) of\b|\ba (?:mean|average|median|mode|range) of\b")
_FIGURES = Form(r"\d+(?:\.\d+)?")


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    numerals = _NUMERAL if _HAS_NUMERAL.search(sentence) else ()
    for form in (*numerals, *(_TOLD_ROMAN if "roman" in sentence else ())):
        for match in form.finditer(sentence):
            worth = roman_worth(match["roman"])
            right = number(match["figures"])
            if worth is None and form not in _NUMERAL:
                yield Untrue(match.start(), match.end(), f"{says(right)} is {in_roman(int(right)).upper()}")
            elif worth is not None and worth != right:
                yield Untrue(match.start(), match.end(), f"{match['roman'].upper()} is {worth}")
    averages = _AVERAGE if _HAS_AVERAGE.search(sentence) else ()
    for match in (match for form in averages for match in form.finditer(sentence)):
        right_ones = _average(match["what"], numbers(match["list"]))
        if right_ones and number(match["got"]) not in right_ones:
            yield Untrue(*match.span(), f"it is {says(right_ones[0])}")
    told = "ratio" in sentence or "for every" in sentence or "simplest" in sentence
    for match in _RATIO.finditer(sentence) if told else ():
        yield from _shares(match)
    for match in (match for form in (_RATIO_SAME, _SIMPLEST, _FOR_EVERY) if told for match in form.finditer(sentence)):
        a, b, c, d = (number(match[part]) for part in "abcd")
        if a * d != b * c:
            yield Untrue(*match.span(), f"{says(a)} to {says(b)} is not {says(c)} to {says(d)}")
    for match in _WRITTEN.finditer(sentence) if "written" in sentence or "figures" in sentence else ():
        if stands_clear(sentence, match.start()) and number(match["words"]) != number(match["figures"]):
            yield Untrue(*match.span(), f"it is {says(number(match['words']))}")


def roman_worth(letters: str) -> int | None:
    """What a Roman numeral in small letters is worth; None where it is none."""
    rest, worth = letters, 0
    for numeral, size in _ROMAN:
        while rest.startswith(numeral):
            rest, worth = rest[len(numeral) :], worth + size
    return worth if not rest and in_roman(worth) == letters else None


def in_roman(worth: int) -> str:
    """A number as a Roman numeral, in small letters."""
    letters = ""
    for numeral, size in _ROMAN:
        letters, worth = letters + numeral * (worth // size), worth % size
    return letters


def _average(what: str, values: list[Rational]) -> list[Rational]:
    match what:
        case "mean" | "average":
            return [Fraction(sum(values)) / len(values)]
        case "median":
            ordered, half = sorted(values), len(values) // 2
            return [ordered[half] if len(values) % 2 else Fraction(ordered[half - 1] + ordered[half]) / 2]
        case "mode":
            counts = Counter(values)
            return [value for value, count in counts.items() if count == max(counts.values())]
        case "range":
            return [max(values) - min(values)]
        case _:
            return [sum(values)]


def _amount(text: str) -> Rational:
    match = _FIGURES.search(text)
    return number(match.group()) if match else 0


def _shares(match: re.Match[str]) -> Iterator[Untrue]:
    whole, a, b, one, two = (_amount(match[part]) for part in ("all", "a", "b", "one", "two"))
    if a + b:
        each = Fraction(whole) / (a + b)
        if (one, two) != (each * a, each * b):
            yield Untrue(*match.span(), f"the shares are {says(each * a)} and {says(each * b)}")


CLASS = ClaimClass(
    name="ways of naming numbers",
    reads="Roman numerals; a number in words and how it is written; the mean, median, mode, range or total of a list; shares in a ratio.",
    leaves="Single letters that nothing says are Roman; lists of things in different units.",
    source="Common practice, no source: Roman numerals as in the present-day subtractive rule; the mean is the sum over how many.",
    cues=frozenset(
        ("roman", "written", "mean", "average", "median", "mode", "range", "ratio", "total", "every", "figures", "simplest",
         *(in_roman(worth) for worth in range(2, 100) if set(in_roman(worth)) <= set("ivxlc") and len(in_roman(worth)) > 1))
    ) - {"li"},
    find=_find,
)  # fmt: skip
