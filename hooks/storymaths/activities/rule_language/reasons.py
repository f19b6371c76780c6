"""Why a rule holds in one case, or does not: true number sentences a pupil could write, and what each demands."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from math import isqrt
from typing import Any, Literal

from ...model.demands import Demands, amounts, operation
from ...model.demands import Operation as Calculation
from ...model.year import YearLimits
from ..saying import counted, ending_places, listed
from .denial import denied
from .functions import FUNCTIONS, digits_of, root, smallest_factor
from .tree import COMPARE, Call, Case, Comparison, Name, Number, Operation, Rule, decider, gives
from .words import amount, leaves, number_text, parts_of, property_words, with_numbers


@dataclass(frozen=True, slots=True)
class Reason:
    """A reason as a person says it, and what it demands of a child."""

    says: str
    demands: Demands = field(default_factory=Demands)


def explain(rule: Rule, case: Case, year: YearLimits, shown: Mapping[str, str] | None = None) -> str:
    """The reasons of each part of a rule in one case, such as ``3 + 5 = 8; 8 = 4 + 4``."""
    return "; ".join(dict.fromkeys(reason.says for reason in find_reasons(rule, case, year, shown)))


def find_reasons(
    rule: Rule,
    case: Case,
    year: YearLimits,
    shown: Mapping[str, str] | None = None,
    names: Mapping[str, str] | None = None,
) -> list[Reason]:
    """The reason of each part of a rule in one case.

    ``shown`` says how the number of a letter is written, where that matters, and ``names`` what a fact is called.
    """
    return [reason for leaf in leaves(rule) for reason in _leaf(leaf, case, year, shown or {}, names or {})]


def demands_of_numbers(rule: Rule) -> Demands:
    """What the numbers a rule names demand."""
    demands = Demands()
    for part in parts_of(rule):
        if isinstance(part, Number):
            demands |= demands_of_number(part.value, part.shown)
    return demands


def demands_of_number(value: int | Fraction, shown: str = "") -> Demands:
    """What reading a number demands; ``shown`` is how its author writes it, such as 9/12."""
    number, under = Fraction(value), int(shown.rpartition("/")[2]) if "/" in shown else 0
    decimal = not under and 0 < (ending_places(number) or 0) <= 3
    return Demands(
        amounts=amounts((number,)),
        signs=frozenset("." if decimal else ""),
        parts=frozenset({under} - {0, number.denominator}),
    )


def _leaf(
    leaf: Rule, case: Case, year: YearLimits, shown: Mapping[str, str], names: Mapping[str, str]
) -> Iterator[Reason]:
    match leaf:
        case Call(parts=(first, *_)):
            for reason in _property(leaf, case, year):
                yield Reason(f"{_about(first, names)}{reason.says}", reason.demands)
        case Comparison(left=Name(name=fact) as left, right=Number()) if fact in names:
            count = counted(case[fact], names[fact]) if case[fact] else f"no {names[fact]}"
            yield Reason(f"has {count}", _demands_of_sum(left, case, shown))
        case Comparison(left=left) if gives(left) == "number":
            reason = _comparison(leaf, case, year, shown)
            yield Reason(f"{_about(left, names)}{reason.says}", reason.demands)
        case Comparison(left=left) if gives(left) == "text":
            yield Reason(f"{amount(left)}: {decider(left)(case)}")
        case Name(name=name):
            yield Reason(amount(leaf, names) if case[name] else denied(amount(leaf, names)))


def _about(part: Rule, names: Mapping[str, str]) -> str:
    """The fact a line is about; letters that stand for numbers need no such word."""
    return f"{amount(part, names)} " if isinstance(part, Name) and len(part.name) > 1 else ""


def _comparison(rule: Comparison, case: Case, year: YearLimits, shown: Mapping[str, str]) -> Reason:
    left, right = decider(rule.left)(case), decider(rule.right)(case)
    sign = next(sign for sign in "=<>" if COMPARE[sign](left, right))
    one, other = (_bare(with_numbers(side, case, shown)) for side in (rule.left, rule.right))
    first = _demands_of_sum(rule.left, case, shown)
    if one == other and {type(rule.left), type(rule.right)} == {Name, Number}:
        return Reason(one, first)  # "4 = 4" would tell nobody anything
    both = first | _demands_of_sum(rule.right, case, shown)
    if year.knows(sign):
        return Reason(f"{one} {sign} {other}", both | Demands(signs=frozenset(sign)))
    return Reason(
        f"{one} is {'the same as' if sign == '=' else 'less than' if sign == '<' else 'more than'} {other}", both
    )


def _bare(text: str) -> str:
    """A side without brackets that hold all of it."""
    inner = text[1:-1]
    return inner if text.startswith("(") and text.endswith(")") and "(" not in inner and ")" not in inner else text


def _demands_of_sum(part: Rule, case: Case, shown: Mapping[str, str]) -> Demands:
    """What a sum with a case's numbers in the place of its letters demands, as ``with_numbers`` writes it."""
    match part:
        case Operation(sign=("+" | "−" | "×" | "÷") as sign, left=left, right=right):
            numbers = (decider(left)(case), decider(right)(case), decider(part)(case))
            inside = _demands_of_sum(left, case, shown) | _demands_of_sum(right, case, shown)
            return inside | Demands(operations=(operation(sign, *numbers),), signs=frozenset(sign))
        case Call(name="digit_sum", parts=(of,)):
            digits = [int(digit) for digit in digits_of(decider(of)(case))]
            return _demands_of(operation("+", *digits, sum(digits))) if len(digits) > 1 else Demands()
        case Call(name="difference", parts=parts):
            larger, smaller = sorted((decider(one)(case) for one in parts), reverse=True)
            return _demands_of(operation("−", larger, smaller, larger - smaller))
        case Number(value=value, shown=written):
            return demands_of_number(value, written)
        case Name(name=name) if name in shown:
            return demands_of_number(case[name], shown[name])
        case _:
            value = decider(part)(case)
            return Demands() if isinstance(value, str) else demands_of_number(value)


def _demands_of(*calculations: Calculation) -> Demands:
    numbers = {number for one in calculations for number in one.numbers}
    signs = frozenset(one.sign for one in calculations)
    return Demands(amounts=amounts(numbers), operations=calculations, signs=signs)


def _sentence(says: str, *calculations: Calculation) -> Reason:
    return Reason(says, _demands_of(*calculations) | Demands(signs=frozenset("=")))


def _property(call: Call, case: Case, year: YearLimits) -> Iterator[Reason]:
    values = [decider(part)(case) for part in call.parts]
    for part, value in zip(call.parts, values, strict=True):
        if isinstance(part, Operation) and year.knows("="):
            result = Demands(amounts=amounts((value,)), signs=frozenset("="))
            says = f"{with_numbers(part, case)} = {number_text(value)}"
            yield Reason(says, _demands_of_sum(part, case, {}) | result)
    holds = FUNCTIONS[call.name].decide(*values)
    reason = _show(call.name, values, holds, year) if year.knows("=") else None
    turned = [f"{number_text(values[0])} = {with_numbers(part, case)}" for part in call.parts[:1]]
    if reason is None or reason.says not in turned:  # 1 + 1 = 2 needs no 2 = 1 + 1 after it
        yield reason or _tell(call, values, holds, year)


def _tell(call: Call, values: list[Any], holds: bool, year: YearLimits) -> Reason:
    on_values = Call(call.name, tuple(Number(value, number_text(value)) for value in values), call.gives)
    says = f"{number_text(values[0])} is {'' if holds else 'not '}{property_words(on_values, year)}"
    return Reason(says, demands_of_numbers(on_values))


def _show(name: str, values: list[Any], holds: bool, year: YearLimits) -> Reason | None:
    """A true sentence that shows it; None where there is none to show."""
    number = values[0]
    if not isinstance(number, int) or number < 0:
        return None
    match name:
        case "odd" | "even":
            half, odd = number // 2, number % 2
            over = " + 1" if odd else ""
            halves = operation("+", half, half, *[1] * odd, number)
            return _sentence(f"{number:,} = {half:,} + {half:,}{over}", halves)
        case "multiple" | "factor":
            whole, by = values if name == "multiple" else values[::-1]
            return _counted_in(whole, by, year, factor_first=name == "factor")
        case "prime":
            return _prime(number, holds)
        case "square" | "cube":
            return _power(number, 2 if name == "square" else 3)
        case "has_digit":
            digits = digits_of(number)
            says = f"{number:,} has the digit{'s' if len(digits) > 1 else ''} {listed(list(digits))}"
            return Reason(says, Demands(amounts=amounts({number, *map(int, digits)})))
    return None


def _counted_in(whole: int | Fraction, by: int | Fraction, year: YearLimits, factor_first: bool) -> Reason | None:
    if not isinstance(whole, int) or not isinstance(by, int) or by <= 0 or whole < 0:
        return None
    times, rest = divmod(whole, by)
    over = f" + {rest:,}" if rest else ""
    if year.knows("×"):
        product = f"{by:,} × {times:,}" if factor_first else f"{times:,} × {by:,}"
        onward = [operation("+", times * by, rest, whole)] if rest else []
        return _sentence(f"{product}{over} = {whole:,}", operation("×", times, by, times * by), *onward)
    if 2 <= times <= 12:
        added = operation("+", *[by] * times, *([rest] if rest else []), whole)
        return _sentence(f"{' + '.join([str(by)] * times)}{over} = {whole:,}", added)
    return None


def _prime(number: int, holds: bool) -> Reason | None:
    if holds:
        says = f"{number:,} = 1 × {number:,}, and no other whole numbers make it"
        return _sentence(says, operation("×", 1, number, number))
    if number < 2:
        return None
    factor = smallest_factor(number)
    says = f"{number:,} = {factor:,} × {number // factor:,}"
    return _sentence(says, operation("×", factor, number // factor, number))


def _power(number: int, power: Literal[2, 3]) -> Reason:
    def times(base: int) -> str:
        return f"{' × '.join([f'{base:,}'] * power)} = {base**power:,}"

    exact = root(number, power)
    if exact is not None:
        return _sentence(times(exact), operation("×", *[exact] * power, number))
    below = isqrt(number) if power == 2 else next(b for b in range(number + 1) if (b + 1) ** 3 > number)
    around = [operation("×", *[base] * power, base**power) for base in (below, below + 1)]
    missed = _sentence(f"{times(below)} and {times(below + 1)}, so {number:,} is missed", *around)
    return Reason(missed.says, missed.demands | Demands(amounts=amounts((number,))))
