"""What a rule comes to in one case. Nothing is ever handed to Python to run: its tree becomes small functions."""

from __future__ import annotations

import operator
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any, TypeAlias

from ...expression.signs import COMPARE, OPERATE
from ...expression.tree import (
    Call,
    Comparison,
    Gap,
    Gives,
    Join,
    Name,
    Node,
    Not,
    Number,
    Operation,
    Words,
    gives,
)
from .functions import FUNCTIONS, TooLarge, within

Rule: TypeAlias = Node
Case: TypeAlias = Mapping[str, Any]
"""A value for each name: whole numbers and fractions, truth values, words."""


class NoValue(ArithmeticError):
    """A rule has no value in some case: a division by nought."""


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
            return _of_parts(_operate(sign), [decider(left), decider(right)])
        case Comparison(sign=sign, left=left, right=right):
            return _of_parts(COMPARE[sign], [decider(left), decider(right)])
        case Gap():
            raise ValueError("a rule has no gaps")


def _of_parts(make: Callable[..., Any], parts: list[Callable[[Case], Any]]) -> Callable[[Case], Any]:
    if len(parts) == 1:
        (only,) = parts
        return lambda case: make(only(case))
    one, other = parts
    return lambda case: make(one(case), other(case))


def _operate(sign: str) -> Callable[[Any, Any], Any]:
    if sign == "÷":
        return _divided
    work = OPERATE[sign]
    return lambda left, right: within(work(left, right))


def _divided(left: Any, right: Any) -> int | Fraction:
    if right == 0:
        raise NoValue
    return within(Fraction(left) / right)


__all__ = [
    "COMPARE", "Call", "Case", "Comparison", "Gives", "Join", "Name", "NoValue", "Not", "Number", "Operation",
    "Rule", "TooLarge", "Words", "decider", "gives",
]  # fmt: skip
