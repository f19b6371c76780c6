"""What the letters of a phrase come to: ``a + b = c`` worked out exactly with what a sentence tells for each letter."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from functools import lru_cache
from typing import NamedTuple

from ..expression.grammar import Reader
from ..expression.number import Rational
from ..expression.signs import COMPARE, PROSE
from ..expression.tokens import Token, read_tokens
from ..expression.tree import Node, Number, Operation
from .amounts import difference, says
from .phrase_values import Value

_NAMES = {letter: Token("name", letter) for letter in "abcdelp"}


class Unlike(ArithmeticError):
    """Two amounts that cannot be added, compared or so divided."""


class Judged(NamedTuple):
    """Whether it holds, None where nobody can say; and what is so."""

    holds: bool | None
    so: str = ""


UNKNOWN = Judged(None)
"""What nobody can say."""
UNLIKE = Judged(None, "unlike")
"""What cannot be compared, and so is read amiss."""


@lru_cache(maxsize=512)
def _sentence(text: str) -> tuple[tuple[Node, ...], tuple[str, ...]]:
    return Reader(tuple(read_tokens(text, PROSE, _NAMES))).sentence()


@lru_cache(maxsize=256)
def _sum(text: str) -> Node:
    return Reader(tuple(read_tokens(text, PROSE, _NAMES))).sum()


def judge_number(told: Rational, right: Rational, so: str = "") -> Judged:
    """Whether a number told is the right one; ``so`` where more is to be said than the right one."""
    return Judged(told == right, so or f"it is {says(right)}")


def work_out(text: str, told: Mapping[str, Value], end: int) -> Value | None:
    """A sum of letters as a value that ends at a word; None where it comes to nothing."""
    try:
        number, kind = _worth(_sum(text), told)
    except (ArithmeticError, KeyError):
        return None
    nouns = {told[letter].noun for letter in told if told[letter].noun}
    return Value(end, number, kind, nouns.pop() if len(nouns) == 1 else "", True)


def judge_letters(text: str, told: Mapping[str, Value]) -> Judged:
    """Whether each of some number sentences of letters, parted by ``;``, holds."""
    for each in text.split(";"):
        sides, relations = _sentence(each)
        judged = _judge(sides[0], relations[0], sides[1], told)
        if judged.holds is not True:
            return judged
    return Judged(True)


def _judge(left: Node, relation: str, right: Node, told: Mapping[str, Value]) -> Judged:
    try:
        (one, kind), (other, other_kind) = _worth(left, told), _worth(right, told)
        _alike(kind, one, other_kind, other)
    except ZeroDivisionError:
        return Judged(False, "nothing can be divided by 0")
    except (ArithmeticError, KeyError):
        return UNLIKE
    if COMPARE[relation](one, other):
        return Judged(True)
    if relation != "=":
        how = "equal to" if one == other else "less than" if one < other else "more than"
        return Judged(False, f"{in_words(one, kind)} is {how} {in_words(other, other_kind)}")
    if isinstance(right, Number):
        return Judged(False, f"it is {in_words(one, kind or other_kind)}")
    return Judged(False, f"they come to {in_words(other, other_kind or kind)}, not {in_words(one, kind or other_kind)}")


def in_words(number: Rational, kind: str) -> str:
    """An amount as a message tells it."""
    size = difference(number, 0)
    match kind:
        case "part":
            return str(number)
        case "money":
            return f"£{float(number):.2f}" if size >= 1 else f"{says(number * 100)}p"
        case "length" if size < 1:
            return f"{says(number * 100)} cm"
        case "length":
            return f"{says(number)} m"
        case "mass" | "capacity" if size < 1:
            return f"{says(number * 1000)} {'g' if kind == 'mass' else 'ml'}"
        case "mass" | "capacity":
            return f"{says(number)} {'kg' if kind == 'mass' else 'litres'}"
        case "time":
            many, unit = next((many, unit) for many, unit in _TIMES if size >= many or many == 1)
            return f"{says(Fraction(number) / many)} {unit}"
        case _:
            return says(number)


_TIMES = ((86400, "days"), (7200, "hours"), (60, "minutes"), (1, "seconds"))


def _worth(node: Node, told: Mapping[str, Value]) -> tuple[Rational, str]:
    match node:
        case Number(shown=shown) if shown in _NAMES:
            return told[shown].number, told[shown].kind
        case Number(value=value):
            return value, ""
        case Operation(sign=sign, left=left, right=right):
            (one, kind), (other, other_kind) = _worth(left, told), _worth(right, told)
            return _join(one, kind, sign, other, other_kind)
        case _:
            raise Unlike


def _join(one: Rational, kind: str, sign: str, other: Rational, other_kind: str) -> tuple[Rational, str]:
    match sign:
        case "+" | "−":
            _alike(kind, one, other_kind, other)
            return (one + other if sign == "+" else one - other), kind or other_kind
        case "×":
            if {kind, other_kind} <= {"part"}:
                return one * other, "part"
            if kind not in ("", "part") and other_kind not in ("", "part"):
                raise Unlike
            return one * other, (other_kind if kind in ("", "part") else kind).replace("part", "")
        case _:
            if not other_kind:
                return Fraction(one) / other, kind
            if kind != other_kind:
                raise Unlike
            return Fraction(one) / other, ""


def _alike(kind: str, one: Rational, other_kind: str, other: Rational) -> None:
    """Raises where a number of one kind cannot stand beside one of another: a half beside 6."""
    if kind == other_kind:
        return
    number = other if kind else one
    if {kind, other_kind} == {"", "temperature"}:
        return  # minus four, and five degrees warmer
    if {kind, other_kind} != {"", "part"} or (number > 1 and number.denominator == 1):
        raise Unlike
