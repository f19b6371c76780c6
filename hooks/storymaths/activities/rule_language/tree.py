"""Rules about numbers and facts, as trees: their parts, and what they come to in one case.

A rule such as ``odd(a) and a + b > 6`` is read by ``rule_reader`` into these parts. Nothing is ever
handed to Python to run: a tree is turned into small functions of this file, and only they are called.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Any, Literal, TypeAlias

from .functions import FUNCTIONS, TooLarge, within

Gives: TypeAlias = Literal["number", "truth", "text"]
Case: TypeAlias = Mapping[str, Any]
"""A value for each name: whole numbers and fractions, truth values, words."""


class NoValue(ArithmeticError):
    """A rule has no value in some case: a division by nought."""


@dataclass(frozen=True, slots=True)
class Number:
    """A number, and how its author wrote it."""

    value: int | Fraction
    shown: str


@dataclass(frozen=True, slots=True)
class Name:
    """A letter or a fact, and what kind of value it stands for."""

    name: str
    gives: Gives


@dataclass(frozen=True, slots=True)
class Words:
    """Words a fact is compared with."""

    text: str


@dataclass(frozen=True, slots=True)
class Operation:
    """Two numbers joined by + − × or ÷."""

    sign: str
    left: Rule
    right: Rule


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two values compared by = ≠ < > ≤ or ≥."""

    sign: str
    left: Rule
    right: Rule


@dataclass(frozen=True, slots=True)
class Call:
    """A named property or amount: ``odd(a)``, ``multiple(a, 5)``."""

    name: str
    parts: tuple[Rule, ...]


@dataclass(frozen=True, slots=True)
class Not:
    """What is so when ``inner`` is not."""

    inner: Rule


@dataclass(frozen=True, slots=True)
class Join:
    """Two truths joined by ``and`` or ``or``."""

    word: str
    left: Rule
    right: Rule


Rule: TypeAlias = Number | Name | Words | Operation | Comparison | Call | Not | Join
COMPARE: Mapping[str, Callable[[Any, Any], bool]] = {
    "=": operator.eq,
    "≠": operator.ne,
    "<": operator.lt,
    ">": operator.gt,
    "≤": operator.le,
    "≥": operator.ge,
}


def gives(rule: Rule) -> Gives:
    """What kind of value a rule comes to."""
    match rule:
        case Name():
            return rule.gives
        case Words():
            return "text"
        case Number() | Operation():
            return "number"
        case Call():
            return FUNCTIONS[rule.name].gives
        case _:
            return "truth"


def decider(rule: Rule) -> Callable[[Case], Any]:
    """A function from a case to what the rule comes to in it.

    It raises ``NoValue`` for a division by nought, and ``TooLarge`` for a number past ten million.
    """
    match rule:
        case Number(value=fixed) | Words(text=fixed):
            return lambda case: fixed
        case Name(name=name):
            return operator.itemgetter(name)
        case Not(inner=inner):
            decide = decider(inner)
            return lambda case: not decide(case)
        case Call(name=called, parts=parts):
            return _of_parts(FUNCTIONS[called].decide, [decider(part) for part in parts])
        case Join(word=word, left=left, right=right):
            one, other = decider(left), decider(right)
            if word == "and":
                return lambda case: one(case) and other(case)
            return lambda case: one(case) or other(case)
        case Operation(sign=sign, left=left, right=right):
            return _of_parts(_ARITHMETIC[sign], [decider(left), decider(right)])
        case Comparison(sign=sign, left=left, right=right):
            return _of_parts(COMPARE[sign], [decider(left), decider(right)])


def _of_parts(make: Callable[..., Any], parts: list[Callable[[Case], Any]]) -> Callable[[Case], Any]:
    if len(parts) == 1:
        (only,) = parts
        return lambda case: make(only(case))
    one, other = parts
    return lambda case: make(one(case), other(case))


def _divided(left: Any, right: Any) -> int | Fraction:
    if right == 0:
        raise NoValue
    return within(Fraction(left) / right)


_ARITHMETIC: Mapping[str, Callable[[Any, Any], Any]] = {
    "+": lambda left, right: within(left + right),
    "−": lambda left, right: within(left - right),
    "×": lambda left, right: within(left * right),
    "÷": _divided,
}


__all__ = [
    "COMPARE", "Call", "Case", "Comparison", "Gives", "Join", "Name", "NoValue", "Not", "Number", "Operation",
    "Rule", "TooLarge", "Words", "decider", "gives",
]  # fmt: skip
