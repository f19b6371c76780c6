"""Rules said as a person says them: whole clauses, and the sums inside them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Any

from ...model.year import YearLimits
from ..saying import written
from .functions import FUNCTIONS, digits_of
from .tree import Call, Case, Comparison, Join, Name, Not, Number, Operation, Rule, Words, decider, gives

NEGATED = {"=": "≠", "≠": "=", "<": "≥", ">": "≤", "≤": ">", "≥": "<"}
COMPARED_WORDS: Mapping[str, str] = {
    "=": "{0}", "≠": "not {0}", "<": "less than {0}", ">": "more than {0}", "≤": "{0} or less", "≥": "{0} or more"
}  # fmt: skip


def number_text(value: int | Fraction) -> str:
    """A number as decimals where up to three places write it exactly, else as a fraction."""
    return written(value, places=3)


def clause(rule: Rule, year: YearLimits | None, names: Mapping[str, str] | None = None) -> str:
    """A rule in words for a year, or with every sign: ``a is odd and a + b > 6``. ``names`` says what stands for a name."""
    said = names or {}
    match rule:
        case Join(word=word, left=left, right=right):
            return f"{clause(left, year, said)} {word} {clause(right, year, said)}"
        case Not(inner=inner):
            return _denied(inner, year, said)
        case Comparison():
            return _compared(rule, rule.sign, year, said)
        case Call(parts=parts):
            return f"{amount(parts[0], said)} is {property_words(rule, year, said)}"
        case _:
            return amount(rule, said)


def _denied(inner: Rule, year: YearLimits | None, said: Mapping[str, str]) -> str:
    match inner:
        case Call(parts=parts):
            return f"{amount(parts[0], said)} is not {property_words(inner, year, said)}"
        case Comparison():
            return _compared(inner, NEGATED[inner.sign], year, said)
        case Not(inner=twice):
            return clause(twice, year, said)
        case Name():
            return f"not {amount(inner, said)}"
        case _:
            return f"it is not so that {clause(inner, year, said)}"


def _compared(rule: Comparison, sign: str, year: YearLimits | None, said: Mapping[str, str]) -> str:
    left, right = amount(rule.left, said), amount(rule.right, said)
    if is_with_sign(rule, sign, year):
        return f"{left} {sign} {right}"
    return f"{left} is {COMPARED_WORDS[sign].format(right)}"


def is_with_sign(rule: Comparison, sign: str, year: YearLimits | None) -> bool:
    """Whether a comparison by a sign is said with it, and not in words."""
    in_words = any(isinstance(side, Call) for side in (rule.left, rule.right))
    return not in_words and sign in "=≠<>" and (year is None or year.knows(sign))


def property_words(call: Call, year: YearLimits | None, names: Mapping[str, str] | None = None) -> str:
    """What a property says after "is": ``odd``, ``a multiple of 5``."""
    function = FUNCTIONS[call.name]
    form = function.says if _is_named(call, year) else function.earlier
    return form.format(*(amount(part, names or {}) for part in call.parts))


def _is_named(call: Call, year: YearLimits | None) -> bool:
    """Whether the year calls a property by its name."""
    return year is None or not FUNCTIONS[call.name].earlier or call.name in year.practice.rules.names


def amount(rule: Rule, names: Mapping[str, str] | None = None) -> str:
    """A sum, a letter, or words, as written: ``2 × (a + b)``."""
    said = names or {}
    match rule:
        case Number(shown=shown):
            return shown if "/" in shown or "." in shown else number_text(rule.value)
        case Name(name=name):
            return said.get(name, name.replace("_", " "))
        case Words(text=text):
            return text
        case Operation(sign=sign, left=left, right=right):
            return (
                f"{_held(left, sign, False, amount(left, said))} {sign} {_held(right, sign, True, amount(right, said))}"
            )
        case Call(name=called, parts=parts):
            return FUNCTIONS[called].says.format(*(amount(part, said) for part in parts))
        case _:
            return f"({clause(rule, None, said)})"


def _held(part: Rule, sign: str, is_right: bool, text: str) -> str:
    """In brackets where the sum would be read otherwise without them."""
    if isinstance(part, Operation):
        loose = part.sign in "+−"
        if (sign in "×÷" and loose) or (is_right and ((sign == "−" and loose) or sign == "÷")):
            return f"({text})"
    return f"({text})" if is_right and text.startswith("−") else text


def with_numbers(rule: Rule, case: Case, shown: Mapping[str, str] | None = None) -> str:
    """A sum with a case's numbers in the place of its letters: ``3 + 5``; amounts with names are worked out.

    ``shown`` says how the number of a letter is written, where that matters: 9/12, not 3/4.
    """
    match rule:
        case Operation(sign=sign, left=left, right=right):
            one = _held(left, sign, False, with_numbers(left, case, shown))
            return f"{one} {sign} {_held(right, sign, True, with_numbers(right, case, shown))}"
        case Call(name="digit_sum", parts=(of,)):
            return _sum_of(digits_of(decider(of)(case)))
        case Call(name="difference", parts=parts):
            larger, smaller = sorted((decider(part)(case) for part in parts), reverse=True)
            return f"({number_text(larger)} − {_negative_held(smaller)})"
        case Number():
            return amount(rule)
        case Name(name=name) if shown and name in shown:
            return shown[name]
        case _:
            value: Any = decider(rule)(case)
            return value if isinstance(value, str) else number_text(value)


def _sum_of(digits: str) -> str:
    return f"({' + '.join(digits)})" if len(digits) > 1 else digits or "0"


def _negative_held(value: int | Fraction) -> str:
    return f"({number_text(value)})" if value < 0 else number_text(value)


def leaves(rule: Rule) -> Iterator[Rule]:
    """The comparisons, properties and yes-or-no facts a rule is joined from, in their order."""
    match rule:
        case Join(left=left, right=right):
            yield from leaves(left)
            yield from leaves(right)
        case Not(inner=inner):
            yield from leaves(inner)
        case Comparison(left=left, right=right) if gives(left) == "truth":
            yield from leaves(left)
            yield from leaves(right)
        case _:
            yield rule


def parts_of(rule: Rule) -> Iterator[Rule]:
    """A rule and everything inside it."""
    yield rule
    match rule:
        case Join(left=left, right=right) | Operation(left=left, right=right) | Comparison(left=left, right=right):
            yield from parts_of(left)
            yield from parts_of(right)
        case Not(inner=inner):
            yield from parts_of(inner)
        case Call(parts=parts):
            for part in parts:
                yield from parts_of(part)
        case _:
            return


def signs_in_clause(rule: Rule, year: YearLimits | None) -> frozenset[str]:
    """The signs of arithmetic in a rule that is said in words for a year."""
    match rule:
        case Not(inner=Comparison(sign=sign) as inner):
            return _signs_compared(inner, NEGATED[sign], year)
        case Comparison(sign=sign):
            return _signs_compared(rule, sign, year)
        case Not(inner=inner):
            return signs_in_clause(inner, year)
        case Operation(sign=sign, left=left, right=right):
            return signs_in_clause(left, year) | signs_in_clause(right, year) | {sign}
        case Join(left=left, right=right):
            return signs_in_clause(left, year) | signs_in_clause(right, year)
        case Call(parts=parts):
            return frozenset().union(*(signs_in_clause(part, year) for part in parts))
        case _:
            return frozenset()


def _signs_compared(rule: Comparison, sign: str, year: YearLimits | None) -> frozenset[str]:
    sides = signs_in_clause(rule.left, year) | signs_in_clause(rule.right, year)
    return sides | {sign} if is_with_sign(rule, sign, year) else sides


def words_in(rule: Rule, year: YearLimits | None) -> tuple[str, ...]:
    """The words of the word bank a rule uses when said for a year, in order, once each."""
    called = (part for part in parts_of(rule) if isinstance(part, Call) and _is_named(part, year))
    return tuple(dict.fromkeys(FUNCTIONS[part.name].word for part in called))


def tables_in(rule: Rule) -> frozenset[int]:
    """The multiplication tables a rule leans on: numbers up to twelve that it counts in, multiplies or divides by."""
    leaning = [
        part
        for part in parts_of(rule)
        if (isinstance(part, Call) and part.name in ("multiple", "factor"))
        or (isinstance(part, Operation) and part.sign in "×÷")
    ]
    numbers = [inner.value for part in leaning for inner in parts_of(part) if isinstance(inner, Number)]
    return frozenset(value for value in numbers if isinstance(value, int) and 1 < value <= 12)
