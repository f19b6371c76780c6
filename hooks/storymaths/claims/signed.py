"""Numbers below nought: which is greater, temperatures that rise and fall, counting back past nought."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from ..expression.number import Rational
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, difference, number, says, stands_clear
from .claim_class import ClaimClass, Untrue
from .form import Form

_FIGURES = r"\d+(?:\.\d+)?(?![\w/%]|[.,:]\d)"
_S = rf"(?<![\w£/.,:+−-])(?:(?:−|-|minus |negative ){_FIGURES}|{_FIGURES})"
_DEGREES = r"(?: ?°c?| degrees(?: celsius| c)?| c\b)?"
_T = rf"{_S}{_DEGREES}"
_COMPARED = Form(
    rf"(?P<a>{_T}) is (?:always |still |even )?(?P<how>greater|more|bigger|larger|higher|warmer|hotter|less|smaller|lower"
    rf"|colder|cooler|fewer) than (?P<b>{_T}){END_OR_AND}"
)
_BY = Form(
    rf"(?P<by>{_FIGURES})(?: degrees| °c?)? (?P<how>colder|cooler|lower|less|below|warmer|hotter|higher|more|above|fewer)(?:"
    rf" than)? (?P<a>{_T}) is (?P<b>{_T}){END_OR_AND}"
)
_IS_BY = Form(
    rf"(?P<b>{_T}) is (?P<by>{_FIGURES})(?: degrees| ?°c?)? (?P<how>colder|cooler|lower|less|below|warmer|hotter|higher|more"
    rf"|above|fewer)(?: than)? (?P<a>{_T}){END_OR_AND}"
)
_MOVES = (
    Form(
        rf"(?P<way>ris|fall|drop|goes up|goes down|warm|cool|climb|increas|decreas)[a-z]* (?:by )?(?P<by>{_FIGURES})(?: degrees"
        rf"| ?°c?)? from (?P<a>{_T}),? (?:to|and (?:it )?(?:is|becomes|reaches)|it is|gives|makes|is) (?P<b>{_T}){END_OR_AND}"
    ),
    Form(
        rf"\bfrom (?P<a>{_T}),? (?:it |the temperature )?(?P<way>rises|falls|drops|a rise|a fall|a drop|going up|going down"
        rf"|goes up|goes down) (?:of |by )?(?P<by>{_FIGURES})(?: degrees| ?°c?)?,? (?:to|and (?:it )?(?:is|becomes|reaches)|it"
        rf" is|gives|makes|takes it to|is) (?P<b>{_T}){END_OR_AND}"
    ),
    Form(
        rf"(?P<a>{_T}) (?:and )?(?P<way>rose|fell|dropped|went up|went down|rises|falls|drops|goes up|goes down) (?:by"
        rf" )?(?P<by>{_FIGURES})(?: degrees| ?°c?)?,?"
        rf" (?:to|(?:and|so|then) (?:it )?(?:is|becomes|reaches)|it is) (?:now )?(?P<b>{_T}){END_OR_AND}"
    ),
)
_BETWEEN = (
    Form(
        rf"\b(?:difference|gap) between (?P<a>{_T}) and (?P<b>{_T}) is (?P<by>{_FIGURES})(?: degrees| ?°c?)?{END_OR_AND}"
    ),
    Form(
        rf"\bfrom (?P<a>{_T}) to (?P<b>{_T}) is (?:a (?:rise|fall|drop|change|jump|difference) of )?(?P<by>{_FIGURES})(?:"
        rf" degrees| ?°c?| steps| places)?{END_OR_AND}"
    ),
)
_COUNT = Form(
    rf"\bcount\w* (?:back|down|backwards)\b[^.;]*?\bfrom (?P<a>{_S})[^−\d.;]*?(?P<run>{_S}(?:(?:,? and|,)(?: then)?"
    rf" {_S}){{1,20}})"
)
_IN_ONES = Form(r"\bin (?:ones|1s)\b")
_NUMBER = Form(_S)
_UP = ("greater", "more", "bigger", "larger", "higher", "warmer", "hotter", "above")
_RISES = ("ris", "goes up", "warm", "climb", "increas", "a rise", "going up", "rises", "rose", "went up")


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for match in _COMPARED.finditer(sentence):
        a, b = _value(match["a"]), _value(match["b"])
        up = match["how"] in _UP
        if stands_clear(sentence, match.start()) and not (a > b if up else a < b) and min(a, b) < 0:
            yield Untrue(*match.span(), f"{says(a)} is {'less' if a < b else 'more'} than {says(b)}")
    for form in (_BY, _IS_BY):
        for match in form.finditer(sentence):
            by = number(match["by"])
            yield from _judge(match.span(), _value(match["a"]) + (by if match["how"] in _UP else -by), match["b"])
    for match in (match for form in _MOVES for match in form.finditer(sentence)):
        by = number(match["by"])
        yield from _judge(match.span(), _value(match["a"]) + (by if match["way"] in _RISES else -by), match["b"])
    for match in (match for form in _BETWEEN for match in form.finditer(sentence)):
        apart = difference(_value(match["a"]), _value(match["b"]))
        if number(match["by"]) != apart:
            yield Untrue(*match.span(), f"they are {says(apart)} apart")
    for match in _COUNT.finditer(sentence):
        run = [_value(match["a"]), *(_value(each.group()) for each in _NUMBER.finditer(match["run"]))]
        step = 1 if _IN_ONES.search(sentence) else run[0] - run[1]
        if step > 0 and min(run) < 0 and any(a - b != step for a, b in pairwise(run)):
            yield Untrue(*match.span(), f"each step is {says(step)} back")


def _value(text: str) -> Rational:
    match = _NUMBER.search(text)
    assert match is not None, text
    told = match.group()
    below = told.startswith(("−", "-", "minus", "negative"))
    value = number(told.removeprefix("minus ").removeprefix("negative ").lstrip("−-"))
    return -value if below else value


def _judge(span: tuple[int, int], right: Rational, told: str) -> Iterator[Untrue]:
    if _value(told) != right:
        yield Untrue(*span, f"it is {says(right)}")


CLASS = ClaimClass(
    name="numbers below nought",
    reads="Two numbers of which one at least is below nought, compared; a temperature so many degrees warmer or colder "
    "than another, rising "
    "or falling; how far apart two are; counting back past nought.",
    leaves="Sums with signs, which the reader of arithmetic works out.",
    source="Common practice, no source: the order of numbers on the number line.",
    cues=frozenset("minus negative degrees °c ° temperature back − backwards".split()),
    find=_find,
    numbers=2,
)
