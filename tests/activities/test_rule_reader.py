"""The language of rules held against sentences made together with what they mean, piece by piece."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import suppress
from fractions import Fraction
from math import isqrt
from typing import Any

import pytest
from activities.contexts import the_reference
from hypothesis import given
from hypothesis import strategies as st
from storymaths.activities.rule_language.functions import TooLarge
from storymaths.activities.rule_language.reader import RuleFault, read_rule
from storymaths.activities.rule_language.reasons import explain
from storymaths.activities.rule_language.tree import NoValue, decider
from storymaths.activities.rule_language.words import clause
from storymaths.parse.number_sentence import find_number_sentences, is_true

LETTERS = {"a": "number", "b": "number"}
Meaning = Callable[[int, int], Any]
Made = tuple[str, Meaning]


def whole(value: Any) -> bool:
    return Fraction(value).denominator == 1


def factors(value: Any) -> list[int]:
    return [f for f in range(1, abs(int(value)) + 1) if int(value) % f == 0] if whole(value) else []


PROPERTIES: dict[str, Callable[..., bool]] = {
    "odd": lambda n: whole(n) and int(n) % 2 != 0,
    "even": lambda n: whole(n) and int(n) % 2 == 0,
    "prime": lambda n: n > 0 and len(factors(n)) == 2,
    "square": lambda n: whole(n) and n >= 0 and isqrt(int(n)) ** 2 == n,
    "cube": lambda n: whole(n) and any(base**3 == n for base in range(0, 60)),
    "multiple": lambda n, of: whole(n) and whole(of) and of != 0 and int(n) % int(of) == 0,
    "factor": lambda n, of: whole(n) and whole(of) and n != 0 and int(of) % int(n) == 0,
}


def amounts() -> st.SearchStrategy[Made]:
    letters = st.sampled_from([("a", lambda a, b: a), ("b", lambda a, b: b)])
    numbers = st.integers(0, 12).map(lambda n: (str(n), lambda a, b: n))
    fractions = st.builds(lambda o, u: (f"{o}/{u}", lambda a, b: Fraction(o, u)), st.integers(0, 9), st.integers(1, 9))

    def grown(inner: st.SearchStrategy[Made]) -> st.SearchStrategy[Made]:
        return st.builds(_joined, inner, st.sampled_from("+-*−×"), inner)

    return st.recursive(letters | numbers | fractions, grown, max_leaves=4)


def _joined(left: Made, sign: str, right: Made) -> Made:
    work = {
        "+": lambda a, b: left[1](a, b) + right[1](a, b),
        "-": lambda a, b: left[1](a, b) - right[1](a, b),
        "*": lambda a, b: left[1](a, b) * right[1](a, b),
    }
    return f"({left[0]} {sign} {right[0]})", work[{"−": "-", "×": "*"}.get(sign, sign)]


def rules() -> st.SearchStrategy[Made]:
    compare = {
        "=": lambda x, y: x == y, "≠": lambda x, y: x != y, "<": lambda x, y: x < y,
        ">": lambda x, y: x > y, "<=": lambda x, y: x <= y, "≥": lambda x, y: x >= y,
    }  # fmt: skip
    comparisons = st.builds(
        lambda x, sign, y: (f"{x[0]} {sign} {y[0]}", lambda a, b: compare[sign](x[1](a, b), y[1](a, b))),
        amounts(), st.sampled_from(list(compare)), amounts(),
    )  # fmt: skip
    ones = st.builds(
        lambda name, x: (f"{name}({x[0]})", lambda a, b: PROPERTIES[name](x[1](a, b))),
        st.sampled_from(["odd", "even", "prime", "square", "cube"]), amounts(),
    )  # fmt: skip
    twos = st.builds(
        lambda name, x, y: (f"{name}({x[0]}, {y[0]})", lambda a, b: PROPERTIES[name](x[1](a, b), y[1](a, b))),
        st.sampled_from(["multiple", "factor"]), amounts(), amounts(),
    )  # fmt: skip

    def grown(inner: st.SearchStrategy[Made]) -> st.SearchStrategy[Made]:
        both = st.builds(lambda x, y: (f"({x[0]}) and ({y[0]})", lambda a, b: x[1](a, b) and y[1](a, b)), inner, inner)
        either = st.builds(lambda x, y: (f"({x[0]}) or ({y[0]})", lambda a, b: x[1](a, b) or y[1](a, b)), inner, inner)
        return both | either | inner.map(lambda x: (f"not ({x[0]})", lambda a, b: not x[1](a, b)))

    return st.recursive(comparisons | ones | twos, grown, max_leaves=3)


@given(rules(), st.integers(0, 30), st.integers(0, 30))
def test_a_rule_comes_to_what_it_means(made: Made, a: int, b: int) -> None:
    text, meaning = made
    try:
        rule = read_rule(text, LETTERS)  # type: ignore[arg-type]
    except RuleFault:
        if len(text) <= 120:
            raise
        return  # too long, or too many brackets in one another
    assert bool(decider(rule)({"a": a, "b": b})) == bool(meaning(a, b)), text
    assert clause(rule, the_reference().years[2])
    for year in (1, 2, 5):
        line = explain(rule, {"a": a, "b": b}, the_reference().years[year])
        for sentence in find_number_sentences(line):
            assert is_true(sentence) is True, (text, line)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("a + b × 2 = 11", True),
        ("a − b − 1 = −2", True),
        ("-a + b = 1", True),
        ("a × b × 2 ÷ 3 = 8", True),
        ("2 < a < b", True),
        ("2 < b < a", False),
        ("odd(a) or odd(b) and b > 100", True),
        ("not odd(b) and a ÷ b = 3/4", True),
        ("digit_sum(a × 13) = 12", True),
        ("difference(a, b) = difference(b, a) = 1", True),
        ("has_digit(a × 9, 7) and ones(27) = 7 and tens(27) = 2 and digits(a) = 1", True),
        ("2.5 < a", True),
        ("odd(a) = even(b)", True),
        ("odd(a ÷ 2) or even(a ÷ 2)", False),
        ("multiple(a, 0) or factor(0, a)", False),
        ("prime(1) or prime(0) or prime(4) or cube(9)", False),
        ("cube(27) and cube(0) and cube(9938375) and square(9998244)", True),
    ],
)
def test_signs_bind_as_written_sums_do(text: str, value: bool) -> None:
    assert decider(read_rule(text, LETTERS))({"a": 3, "b": 4}) is value  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "text",
    [
        "", "a", "a +", "odd a", "odd()", "odd(a, b)", "multiple(a)", "a = ", "= a", "a ==", "(a > 2", "a > 2)", "and", "not",
        "a and b", "odd(a) + 1 = 2", "odd(a) > even(b)", "c > 1", "a > 1/0", "a > 99999999999", "__import__('os')", "a.b > 1",
        "a ** 2 > 1", "lambda: 1", "a if b else 1", "exec(a)", "a > 'x'", "1e400 > a", "nan > a", "a ; b", "a\nb", "²", "a² > 1",
        "(" * 60 + "a" + ")" * 60 + " > 1", "not " * 50 + "odd(a)", "- " * 90 + "a > 1", "x" * 40, "a > " + "9" * 300,
        "odd(" * 40 + "a" + ")" * 40,
    ],
)  # fmt: skip
def test_what_is_no_rule_is_told_plainly(text: str) -> None:
    with pytest.raises(RuleFault) as caught:
        read_rule(text, LETTERS)  # type: ignore[arg-type]
    assert caught.value.message[-1] in ".?!"
    assert caught.value.fix


@given(st.text(max_size=40) | st.text("ab()+-<>= oddeven,12", max_size=30))
def test_no_text_breaks_the_reader(text: str) -> None:
    try:
        rule = read_rule(text, LETTERS)  # type: ignore[arg-type]
    except RuleFault:
        return
    with suppress(NoValue, TooLarge):
        assert decider(rule)({"a": 2, "b": 3}) in (True, False)
