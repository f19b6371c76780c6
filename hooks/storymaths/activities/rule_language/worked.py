"""Why a rule holds in one case, or does not: true number sentences a pupil could write."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from math import isqrt
from typing import Any, Literal

from ..saying import listed
from .functions import FUNCTIONS, digits_of, root, smallest_factor
from .tree import COMPARE, Call, Case, Comparison, Name, Number, Operation, Rule, decider, gives
from .words import amount, leaves, number_text, property_words, with_numbers


def worked(rule: Rule, case: Case, year: int, shown: Mapping[str, str] | None = None) -> str:
    """The reasons of each part of a rule in one case, such as ``3 + 5 = 8; 8 = 4 + 4``.

    ``shown`` says how the number of a letter is written, where that matters.
    """
    lines = [line for leaf in leaves(rule) for line in _leaf(leaf, case, year, shown or {})]
    return "; ".join(dict.fromkeys(lines))


def _leaf(leaf: Rule, case: Case, year: int, shown: Mapping[str, str]) -> list[str]:
    match leaf:
        case Call(parts=(first, *_)):
            return [f"{_about(first)}{line}" for line in _property(leaf, case, year)]
        case Comparison(left=left) if gives(left) == "number":
            return [f"{_about(left)}{_comparison(leaf, case, year, shown)}"]
        case Comparison(left=left) if gives(left) == "text":
            return [f"{amount(left)}: {decider(left)(case)}"]
        case Name(name=name):
            return [f"{amount(leaf)} {'yes' if case[name] else 'no'}"]
    return []


def _about(part: Rule) -> str:
    """The fact a line is about; letters that stand for numbers need no such word."""
    return f"{amount(part)} " if isinstance(part, Name) and len(part.name) > 1 else ""


def _comparison(rule: Comparison, case: Case, year: int, shown: Mapping[str, str]) -> str:
    left, right = decider(rule.left)(case), decider(rule.right)(case)
    sign = next(sign for sign in "=<>" if COMPARE[sign](left, right))
    one, other = (_bare(with_numbers(side, case, shown)) for side in (rule.left, rule.right))
    if rule.sign == "=" and sign == "=" and isinstance(rule.left, Name) and isinstance(rule.right, Number):
        return one  # "4 = 4" would tell nobody anything
    if year >= 2 or (year == 1 and sign == "="):
        return f"{one} {sign} {other}"
    return f"{one} is {'the same as' if sign == '=' else 'less than' if sign == '<' else 'more than'} {other}"


def _bare(text: str) -> str:
    """A side without brackets that hold all of it."""
    inner = text[1:-1]
    return inner if text.startswith("(") and text.endswith(")") and "(" not in inner and ")" not in inner else text


def _property(call: Call, case: Case, year: int) -> list[str]:
    values = [decider(part)(case) for part in call.parts]
    found = []
    for part, value in zip(call.parts, values, strict=True):
        if isinstance(part, Operation) and year:
            found.append(f"{with_numbers(part, case)} = {number_text(value)}")
    holds = FUNCTIONS[call.name].decide(*values)
    reason = _reason(call.name, values, holds, year) if year else ""
    number = number_text(values[0])
    plain = f"{number} is {'' if holds else 'not '}{property_words(_on_values(call, values), year)}"
    return [*found, reason or plain]


def _on_values(call: Call, values: list[Any]) -> Call:
    return Call(call.name, tuple(Number(value, number_text(value)) for value in values), call.gives)


def _reason(name: str, values: list[Any], holds: bool, year: int) -> str:
    """A true sentence that shows it; empty where there is none to show."""
    number = values[0]
    if not isinstance(number, int) or number < 0:
        return ""
    if name in ("odd", "even"):
        half = f"{number // 2:,} + {number // 2:,}"
        return f"{number:,} = {half}{' + 1' if number % 2 else ''}"
    if name in ("multiple", "factor"):
        whole, by = values if name == "multiple" else values[::-1]
        return _counted_in(whole, by, year, factor_first=name == "factor")
    if name == "prime":
        return _prime(number, holds)
    if name in ("square", "cube"):
        return _power(number, 2 if name == "square" else 3)
    digits = digits_of(number)
    return (
        f"{number:,} has the digit{'s' if len(digits) > 1 else ''} {listed(list(digits))}"
        if name == "has_digit"
        else ""
    )


def _counted_in(whole: int | Fraction, by: int | Fraction, year: int, factor_first: bool) -> str:
    if not isinstance(whole, int) or not isinstance(by, int) or by <= 0 or whole < 0:
        return ""
    times, rest = divmod(whole, by)
    over = f" + {rest:,}" if rest else ""
    if year >= 2:
        product = f"{by:,} × {times:,}" if factor_first else f"{times:,} × {by:,}"
        return f"{product}{over} = {whole:,}"
    if 2 <= times <= 12:
        return f"{' + '.join([str(by)] * times)}{over} = {whole:,}"
    return ""


def _prime(number: int, holds: bool) -> str:
    if holds:
        return f"{number:,} = 1 × {number:,}, and no other whole numbers make it"
    if number < 2:
        return ""
    factor = smallest_factor(number)
    return f"{number:,} = {factor:,} × {number // factor:,}"


def _power(number: int, power: Literal[2, 3]) -> str:
    def times(base: int) -> str:
        return f"{' × '.join([f'{base:,}'] * power)} = {base**power:,}"

    exact = root(number, power)
    if exact is not None:
        return times(exact)
    below = isqrt(number) if power == 2 else next(b for b in range(number + 1) if (b + 1) ** 3 > number)
    return f"{times(below)} and {times(below + 1)}, so {number:,} is missed"
