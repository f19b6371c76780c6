"""Number sentences in running text: found, read by a grammar, and worked out exactly.

The grammar, loosest first::

    sentence  = sum  relation sum  (relation sum)…        relation:  =  ≠  <  >
    sum       = product  (+ or −  product)…
    product   = value  (× or ÷ or "of"  value)…
    value     = number [unit] | £ number | ( sum ) | − value
    number    = 12 | 1,200 | 2.5 | 3/4 | ½ | 1 1/2 | 1½
"""

from __future__ import annotations

import operator
import re
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

from ..model.prose import VULGAR
from ..model.quantity import UNITS, Quantity, UnlikeQuantities

_V = "".join(VULGAR)
_UNIT = "|".join(sorted((re.escape(unit) for unit in UNITS if unit != "£"), key=len, reverse=True))
_WHOLE = r"\d{1,3}(?:,\d{3})+(?!\d)|\d+"
_NUMBER = rf"(?:{_WHOLE})[ ]?[{_V}]|(?:{_WHOLE})[ ]\d+/\d+|\d+/\d+|(?:{_WHOLE})(?:\.\d+)?|[{_V}]"
_VALUE = rf"£?(?:{_NUMBER})(?:[ ]?(?:{_UNIT})\b)?"
_OPEN, _CLOSE = r"(?:\([ ]*)*", r"(?:[ ]*\))*"
_SIGNED = rf"{_OPEN}(?:−[ ]?)?{_OPEN}{_VALUE}{_CLOSE}"
_SUM = rf"{_SIGNED}(?:[ ]*(?:[+−×÷]|\bof\b)[ ]*{_SIGNED})*"
_SENTENCE = re.compile(rf"(?<![\w.,/]){_SUM}(?:[ ]*[=≠<>][ ]*{_SUM})+")
_TOKEN = re.compile(rf"[ ]*(?:(£?)({_NUMBER})(?:[ ]?({_UNIT})\b)?|(of\b|[()+−×÷=≠<>]))")
_WITH_LEFT = re.compile(r"[ ]*,?[ ]*(?:r|remainder|with|and)[ ]+(\d+)(?:[ ]+left(?:[ ]over)?)?\b")
_PLAIN = re.compile(r"([0-9]+) ([+−×]) ([0-9]+) = ([0-9]+)")
_WORK = {"+": operator.add, "−": operator.sub, "×": operator.mul}
_RELATION = re.compile(r"[=≠<>]")
_WRONG_MARK = re.compile(r"\[([^\]\n]+)\]\{wrong\}")
# A word with an operator beyond it is part of the sum: "the crab + 1 = 4" says nothing we can work out.
_WORD_BEFORE = re.compile(r"(?:[+−×÷=≠<>][ ]*[A-Za-z][\w’' -]*|_[ ]*[+−×÷=≠<>]?[ ]*|[+−×÷=≠<>]|[□?]) *$")
_WORD_AFTER = re.compile(r" *(?:[A-Za-z][A-Za-z’' -]*[+−×÷=≠<>]|[_?][ _]|□|[+−×÷=≠<>])")


@dataclass(frozen=True, slots=True)
class NumberSentence:
    """A number sentence in a text: the words, where they start, and whether it is marked as a mistake."""

    text: str
    start: int
    marked_wrong: bool = False
    left_over: int | None = None


@lru_cache(maxsize=4096)  # several rules read each page, one rule after another
def find_number_sentences(text: str) -> tuple[NumberSentence, ...]:
    """The number sentences of a text that can be worked out; those with gaps or names are passed over."""
    return tuple(_found(text))


def _found(text: str) -> Iterator[NumberSentence]:
    marked = [(mark.start(1), mark.end(1)) for mark in _WRONG_MARK.finditer(text)] if "{wrong}" in text else []
    for low, high in _lines_with_relations(text):
        for match in _SENTENCE.finditer(text, low, high):
            start, end = match.span()
            inside = next(((a, b) for a, b in marked if a <= start < b), None)
            first, last = inside or (low, high)
            if _WORD_BEFORE.search(text, max(first, start - 60), start) or _WORD_AFTER.match(text, end, last):
                continue
            remainder = _WITH_LEFT.match(text, end, last) if "÷" in match.group() else None
            left_over = int(remainder.group(1)) if remainder else None
            yield NumberSentence(match.group().strip(), start, inside is not None, left_over)


def _lines_with_relations(text: str) -> Iterator[tuple[int, int]]:
    """Where the lines that hold = ≠ < or > start and end: looking only there is several times faster."""
    end = -1
    for sign in _RELATION.finditer(text):
        if sign.start() >= end:
            start = text.rfind("\n", 0, sign.start()) + 1
            end = text.find("\n", sign.start())
            end = len(text) if end < 0 else end
            yield start, end


def marked_mistakes(text: str) -> Iterator[tuple[str, int]]:
    """What stands in ``[…]{wrong}`` marks, and where."""
    if "{wrong}" in text:
        for mark in _WRONG_MARK.finditer(text):
            yield mark.group(1), mark.start(1)


def is_true(sentence: NumberSentence) -> bool | None:
    """Whether it holds, exactly; None where its amounts cannot be compared or a divisor is nought."""
    return _worked_out(sentence.text, sentence.left_over)


@lru_cache(maxsize=4096)  # lessons say the same sentence again and again
def _worked_out(text: str, left_over: int | None) -> bool | None:
    plain = _PLAIN.fullmatch(text)
    if plain and left_over is None:  # most sentences are; a fifth of the work
        first, sign, second, whole = plain.groups()
        return bool(_WORK[sign](int(first), int(second)) == int(whole))
    try:
        sides, relations = _Reader(text).sentence()
        if left_over is not None:
            return _true_with_left_over(text, left_over)
        return all(_holds(sides[i].compare(sides[i + 1]), relation) for i, relation in enumerate(relations))
    except (UnlikeQuantities, ZeroDivisionError, _NotASentence):
        return None


def value_of(text: str) -> Quantity:
    """The worth of one side, such as ``3 × (2 + 4)``. Raises ``ValueError`` if it is not one."""
    reader = _Reader(text)
    try:
        value = reader.sum()
        reader.end()
    except _NotASentence:
        raise ValueError(f"{text} is not a sum") from None
    return value


def _holds(order: int, relation: str) -> bool:
    return {"=": order == 0, "≠": order != 0, "<": order < 0, ">": order > 0}[relation]


_DIVISION = re.compile(rf"({_WHOLE})[ ]*÷[ ]*({_WHOLE})[ ]*=[ ]*({_WHOLE})$")


def _true_with_left_over(text: str, left_over: int) -> bool | None:
    match = _DIVISION.search(text)
    if match is None:
        return None
    shared, among, each = (int(part.replace(",", "")) for part in match.groups())
    return divmod(shared, among) == (each, left_over)


class _NotASentence(ValueError):
    """The text does not follow the grammar."""


class _Reader:
    """A reader of one sentence by recursive descent, a token ahead."""

    def __init__(self, text: str) -> None:
        self._text, self._at = text, 0
        # Pound sign, number, unit, sign: all but one or two empty.
        self._tokens: list[tuple[str, str, str, str]] = _TOKEN.findall(text)
        self._tokens.append(("", "", "", ""))

    def _take(self, *signs: str) -> str | None:
        sign = self._tokens[self._at][3]
        if sign not in signs:
            return None
        self._at += 1
        return sign

    def sentence(self) -> tuple[list[Quantity], list[str]]:
        sides, relations = [self.sum()], []
        while relation := self._take("=", "≠", "<", ">"):
            relations.append(relation)
            sides.append(self.sum())
        self.end()
        return sides, relations

    def end(self) -> None:
        """Raises ``_NotASentence`` unless all has been read, and nothing stands between the tokens."""
        if self._at < len(self._tokens) - 1 or _TOKEN.sub("", self._text).strip():
            raise _NotASentence(self._text)

    def sum(self) -> Quantity:
        total = self._product()
        while sign := self._take("+", "−"):
            total = total + self._product() if sign == "+" else total - self._product()
        return total

    def _product(self) -> Quantity:
        total = self._value()
        while sign := self._take("×", "÷", "of"):
            total = total / self._value() if sign == "÷" else total * self._value()
        return total

    def _value(self) -> Quantity:
        if self._take("−"):
            return Quantity(-1) * self._value()
        if self._take("("):
            inner = self.sum()
            if not self._take(")"):
                raise _NotASentence(self._text)
            return inner
        pound, number, unit, _ = self._tokens[self._at]
        if not number:
            raise _NotASentence(self._text)
        self._at += 1
        return Quantity.of(exact(number), pound or unit)


def exact(number: str) -> Fraction | int:
    """A written number as an exact fraction: ``1,200``, ``2.5``, ``3/4``, ``1 1/2``, ``1½``.

    Nought under the line raises ``ZeroDivisionError``.
    """
    if number.isdecimal():  # nearly all are, and a whole number needs no fraction
        return int(number)
    total = Fraction(0)
    for part in re.findall(rf"\d+/\d+|[{_V}]|[\d,]+(?:\.\d+)?", number):
        if part in VULGAR:
            total += VULGAR[part]
        elif "/" in part:
            above, below = part.split("/")
            total += Fraction(int(above), int(below))
        else:
            total += Fraction(part.replace(",", ""))
    return total
