"""Coins and prices: what some make together, and what change there is."""

from __future__ import annotations

import re
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

_AT = Form(
    rf"(?P<many>{N}) (?P<thing>[a-z]+(?: [a-z]+)?),? (?:at|that cost|costing|which cost|for|priced at) (?P<each>{_MONEY})"
    rf" each,? (?:cost|costs|come to|comes to|is|are|makes?|total|would cost)(?: altogether)? (?P<all>{_MONEY}){END_OR_AND}"
)
_TOGETHER = Form(
    rf"\b(?:an?|one|the) (?P<one>{_MONEY}) [a-z]+ and (?:an?|one|the) (?P<two>{_MONEY}) [a-z]+ (?:together"
    rf" )?(?:cost|come to|are|make)(?: altogether)? (?P<all>{_MONEY})"
    rf"(?: together| altogether)?{END_OR_AND}"
)
_BUY = Form(
    rf"\b(?:pay(?:ing)?|buy(?:ing)?)(?: for)? (?:an? |the )?(?:(?P<cost>{_MONEY}) [a-z]+|[a-z]+ (?:for|costing|at|that costs)"
    rf" (?P<cost2>{_MONEY})) (?:with|using) (?:an? |one )?(?P<paid>{_MONEY})"
    rf"(?: coin| note)?,? (?:and|so|to|then|gives?|you)+ ?(?:you )?(?:get|gets|getting|will get)? ?(?:back"
    rf" )?(?P<change>{_MONEY})(?: change| back)?{END_OR_AND}"
)
_SPEND = Form(
    rf"\b(?:spend(?:ing)?|paying|pay|taking|take) (?P<cost>{_MONEY}) (?:out of|from|of) (?:an? )?(?P<paid>{_MONEY})(?: coin|"
    rf" note)?,?(?: and you| so you| you| which)? (?:leaves?|left with|have|gives?|get|are left with)(?: you)?(?: with)?"
    rf" (?P<change>{_MONEY})(?: left| change)?{END_OR_AND}"
)
_HALF_PRICE = Form(
    rf"\b(?P<how>half|double|a quarter)(?: the)?(?: price)?(?: of| off)? (?P<all>{_MONEY}) is"
    rf" (?P<part>{_MONEY}){END_OR_AND}"
)
_SAME = Form(
    rf"(?:^|[.,;:] )(?P<one>{_SEVERAL}) (?:is|are) (?:worth |equal to )?(?:the same as |as much as |the same amount as"
    rf" )?(?P<two>{_SEVERAL}){END_OR_AND}"
)
_OFF = Form(
    rf"(?P<percent>\d+)(?:%| per ?cent) off (?:a price of )?(?P<all>£{_FIGURES}|\d+p\b)(?: is| makes| gives| means|"
    rf" leaves|,? so you pay| saves)+(?: a saving of)? (?P<part>{_MONEY})(?P<off> off)?{END_OR_AND}"
)
_TIMES = {"half": Fraction(1, 2), "double": Fraction(2), "a quarter": Fraction(1, 4)}


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for match in _TOTAL.finditer(sentence):
        right = sum(_times(count) * _pence(money) for count, money in _ONE.pairs(match["coins"]))
        if _pence(match["total"]) != right:
            yield Untrue(*match.span(), f"together they make {_told(right)}")
    for match in (*_CHANGE.finditer(sentence), *_CHANGE_TOLD.finditer(sentence)):
        cost = match["cost"] or match.groupdict().get("cost2")
        if cost and (right := _pence(match["paid"]) - _pence(cost)) != _pence(match["change"]):
            yield Untrue(*match.span(), f"the change is {_told(right)}")
    yield from _prices(sentence)


def _prices(sentence: str) -> Iterator[Untrue]:
    for match in _AT.finditer(sentence):
        yield from _judge(match, number(match["many"]) * _pence(match["each"]), match["all"])
    for match in _TOGETHER.finditer(sentence):
        yield from _judge(match, _pence(match["one"]) + _pence(match["two"]), match["all"])
    for match in (*_BUY.finditer(sentence), *_SPEND.finditer(sentence)):
        cost = match["cost"] or match.groupdict().get("cost2") or "0p"
        yield from _judge(match, _pence(match["paid"]) - _pence(cost), match["change"])
    for match in _HALF_PRICE.finditer(sentence):
        yield from _judge(match, _pence(match["all"]) * _TIMES[match["how"]], match["part"])
    for match in _SAME.finditer(sentence):
        one, two = (
            sum(_times(count) * _pence(money) for count, money in _ONE.pairs(match[side])) for side in ("one", "two")
        )
        if one != two and ("coin" in match.group() or "note" in match.group()):
            yield Untrue(*match.span(), f"one is {_told(one)} and the other {_told(two)}", supposed=True)
    for match in _OFF.finditer(sentence):
        off = Fraction(int(match["percent"]), 100) * _pence(match["all"])
        told, left = _pence(match["part"]), _pence(match["all"]) - off
        if told not in ((off,) if match["off"] else (off, left)):
            yield Untrue(*match.span(), f"{match['percent']}% of it is {_told(off)}")


def _judge(match: re.Match[str], right: Rational, told: str) -> Iterator[Untrue]:
    if _pence(told) != right:
        yield Untrue(*match.span(), f"it is {_told(right)}", supposed=True)


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
    verbs=IS | {"change", "leaves", "get", "saves", "come", "makes", "leave"},
)
