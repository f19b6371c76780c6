"""Coins and prices: what some make together, and what change there is."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number, says
from .claim_class import IS, ClaimClass, Untrue
from .form import Form

_FIGURES = r"\d+(?:\.\d\d)?"
_MONEY = rf"(?:£{_FIGURES}(?![\w/]|[.,:]\d)|(?<![\w£−/.,:+-])\d+p\b)"
_SEVERAL = rf"(?:(?:an?|one|{N}) )?{_MONEY}(?: coins?| pieces?| notes?)?"
_ONE = Form(rf"(?:(an?|{N}) )?({_MONEY})")
_TOTAL = Form(
    rf"(?P<coins>(?:{_SEVERAL}(?:,? and |, )){{1,20}}{_SEVERAL}|(?:{N}) {_MONEY} coins)(?: together)?,?"
    rf" (?:is|are|makes?|totals?|comes? to|adds? up to|"
    rf"are worth|is worth|gives?)(?: altogether)? (?P<total>{_MONEY}){END_OR_AND}"
)
_CHANGE = Form(
    rf"\bchange from (?P<paid>{_MONEY})(?: (?:for|after (?:spending|paying)|when (?:you|it) (?:spend|costs?))"
    rf" (?P<cost>{_MONEY}))? is (?P<change>{_MONEY})"
    rf"(?: (?:for|when (?:you|it) (?:spend|costs?)) (?P<cost2>{_MONEY}))?{END_OR_AND}"
)

_CHANGE_TOLD = Form(
    rf"(?P<change>{_MONEY}) change from (?P<paid>{_MONEY}) (?:for|after (?:spending|paying)|when (?:you|it)"
    rf" (?:spend|costs?)) (?P<cost>{_MONEY}){END_OR_AND}"
)


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for match in _TOTAL.finditer(sentence):
        right = sum(_times(count) * _pence(money) for count, money in _ONE.pairs(match["coins"]))
        if _pence(match["total"]) != right:
            yield Untrue(*match.span(), f"together they make {_told(right)}")
    for match in (*_CHANGE.finditer(sentence), *_CHANGE_TOLD.finditer(sentence)):
        cost = match["cost"] or match.groupdict().get("cost2")
        if cost and (right := _pence(match["paid"]) - _pence(cost)) != _pence(match["change"]):
            yield Untrue(*match.span(), f"the change is {_told(right)}")


def _times(count: str) -> Rational:
    return 1 if count in ("", "a", "an") else number(count)


def _pence(money: str) -> Rational:
    return int(money[:-1]) if money.endswith("p") else Fraction(money[1:]) * 100


def _told(pence: Rational) -> str:
    return f"£{float(pence) / 100:.2f}" if pence >= 100 else f"{says(pence)}p"


CLASS = ClaimClass(
    name="coins",
    reads="Coins and prices in pounds and pence, two or more, or so many of one coin, and what they make; change from what was paid.",
    leaves="Coins without their p or £, and sums with signs, which the reader of arithmetic works out.",
    source="Decimal Currency Act 1969: 100 new pence to the pound.",
    cues=frozenset(("p", "£")),
    find=_find,
    numbers=2,
    verbs=IS | {"change"},
)
