"""Rounding: to the nearest ten, hundred, thousand or whole number, halves up."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from math import floor

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_TO: Mapping[str, Rational] = {
    "ten": 10,
    "10": 10,
    "hundred": 100,
    "100": 100,
    "thousand": 1000,
    "1000": 1000,
    "1,000": 1000,
    "whole number": 1,
    "whole": 1,
    "one": 1,
    "pound": 1,
    "metre": 1,
    "centimetre": 1,
    "cm": 1,
    "kilogram": 1,
    "litre": 1,
    "degree": 1,
    "tenth": Fraction(1, 10),
    "million": 1_000_000,
}
_A = rf"(?:£\d+(?:\.\d+)?(?![\w.,]\d)|{N}(?! ?\w)|(?<![\w£−/.,:+-])\d+(?:\.\d+)? ?(?:cm|m|km|kg|g|ml|litres?|l|metres?)\b|{N})"
_NEAREST = rf"(?:to|as|at|for|is) the nearest (?P<to>{'|'.join(sorted(_TO, key=len, reverse=True))})\b"
_IS = r",? (?:it |that )?(?:is|becomes|gives|makes|rounds to|goes to|comes to|to get|to make)"
_FORMS = (
    Form(
        rf"(?P<from>{_A})(?:,? (?:is |when )?(?:rounded|rounds?)(?: up| down| off)?)?,? {_NEAREST}{_IS} (?P<got>{_A}){END_OR_AND}"
    ),
    Form(
        rf"{_NEAREST},? (?P<from>{_A}) (?:is|rounds(?: up| down)? to|becomes|goes to|is rounded to) (?P<got>{_A}){END_OR_AND}"
    ),
    Form(rf"\bthe nearest (?P<to>10|100|1,?000|ten|hundred|thousand) to (?P<from>{_A}) is (?P<got>{_A}){END_OR_AND}"),
    Form(
        rf"(?P<from>{_A}) (?:is (?:rounded )?|rounds (?:up |down )?to |is rounded (?:up |down )?to |becomes )(?P<got>{_A}),? {_NEAREST}"
    ),
)

_UNNAMED = Form(
    rf"(?P<from>{_A}) (?:rounds (?:up |down )?|is rounded (?:up |down )?|rounded (?:up |down )?is )(?:to )?(?P<got>{_A}){END_OR_AND}"
)


def _figures(text: str) -> Rational:
    """The number of an amount, in its own unit."""
    return number(text.lstrip("£").rstrip(" abcdefghijklmnopqrstuvwxyz"))


def _unit(text: str) -> str:
    return text.strip(" 0123456789.,")


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for form in _FORMS:
        for match in form.finditer(sentence):
            to, value = _TO[match["to"]], _figures(match["from"])
            right = floor(Fraction(value) / to + Fraction(1, 2)) * to
            if _unit(match["from"]) == _unit(match["got"]) and _figures(match["got"]) != right:
                yield Untrue(*match.span(), f"to the nearest {match['to']}, {says(value)} is {says(right)}")
    for match in _UNNAMED.finditer(sentence) if "nearest" not in sentence else ():
        value, got = _figures(match["from"]), _figures(match["got"])
        steps = [10**power for power in range(7) if got % 10**power == 0]
        if value.denominator == 1 and got not in {
            floor(Fraction(value) / to + Fraction(1, 2)) * to for to in steps[1:]
        }:
            yield Untrue(*match.span(), f"{says(got)} is not the nearest of its kind to {says(value)}")


CLASS = ClaimClass(
    name="rounding",
    reads="A number and what it is to the nearest ten, hundred, thousand or whole number.",
    leaves="About and nearly; decimals rounded to a step that is not named.",
    source="Common practice, no source: a number halfway is rounded up.",
    cues=frozenset(("nearest", "rounds", "rounded")),
    find=_find,
    numbers=2,
)
