"""The named properties and amounts a rule may speak of: what each decides, and how it is said and shown."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from math import isqrt
from typing import Any, Literal

LARGEST = 10_000_000
"""The largest number primary schools meet."""


class TooLarge(ArithmeticError):
    """A rule comes to a number past ten million in some case."""


def within(number: int | Fraction) -> int | Fraction:
    """The number, as a whole number where it is one. Raises ``TooLarge`` past ten million either way."""
    if number > LARGEST or -number > LARGEST:
        raise TooLarge
    if isinstance(number, Fraction) and number.denominator == 1:
        return number.numerator
    return number


@dataclass(frozen=True, slots=True)
class RuleFunction:
    """A property (gives a truth) or an amount (gives a number) of one or two numbers."""

    takes: int
    gives: Literal["number", "truth"]
    decide: Callable[..., Any]
    says: str
    """After "is" for a property; the whole phrase for an amount. ``{0}`` and ``{1}`` are its numbers in words."""
    earlier: str = ""
    """How a property is said in a year that does not call it by its name yet; empty where it always is."""
    word: str = ""
    """The word of the word bank it uses."""


def divides(part: Any, whole: Any) -> bool:
    """Whether whole number ``part`` goes into whole number ``whole`` exactly; nought goes into nothing."""
    return isinstance(part, int) and isinstance(whole, int) and part != 0 and whole % part == 0


@lru_cache(maxsize=65536)
def smallest_factor(number: int) -> int:
    """The smallest factor above 1 of a whole number above 1: itself when it is prime."""
    return next((trial for trial in range(2, isqrt(number) + 1) if number % trial == 0), number)


def is_prime(number: Any) -> bool:
    """Whether it is a whole number with exactly two factors."""
    return isinstance(number, int) and number > 1 and smallest_factor(number) == number


_CUBES = {base**3: base for base in range(216)}  # 215 × 215 × 215 is the last within ten million


def root(number: Any, power: Literal[2, 3]) -> int | None:
    """The whole number, nought or more, whose square or cube this is; None where there is none."""
    if not isinstance(number, int) or number < 0:
        return None
    if power == 3:
        return _CUBES.get(number)
    base = isqrt(number)
    return base if base * base == number else None


def digits_of(number: Any) -> str:
    """The digits of a whole number; none for any other."""
    return str(abs(number)) if isinstance(number, int) else ""


FUNCTIONS: Mapping[str, RuleFunction] = {
    "odd": RuleFunction(1, "truth", lambda n: isinstance(n, int) and n % 2 == 1, "odd", word="odd"),
    "even": RuleFunction(1, "truth", lambda n: isinstance(n, int) and n % 2 == 0, "even", word="even"),
    "multiple": RuleFunction(
        2,
        "truth",
        lambda n, of: divides(of, n),
        "a multiple of {1}",
        "reached when counting in {1}s from 0",
        "multiple",
    ),
    "factor": RuleFunction(2, "truth", divides, "a factor of {1}", "a number that goes into {1} exactly", "factor"),
    "prime": RuleFunction(1, "truth", is_prime, "a prime number", word="prime number"),
    "square": RuleFunction(1, "truth", lambda n: root(n, 2) is not None, "a square number", word="square number"),
    "cube": RuleFunction(1, "truth", lambda n: root(n, 3) is not None, "a cube number", word="cube number"),
    "has_digit": RuleFunction(
        2, "truth", lambda n, digit: str(digit) in digits_of(n), "a number with the digit {1}", word="digit"
    ),
    "digits": RuleFunction(1, "number", lambda n: len(digits_of(n)), "how many digits {0} has", word="digit"),
    "digit_sum": RuleFunction(
        1, "number", lambda n: sum(map(int, digits_of(n))), "the sum of the digits of {0}", word="digit"
    ),
    "ones": RuleFunction(1, "number", lambda n: int(digits_of(n)[-1:] or 0), "the ones digit of {0}", word="ones"),
    "tens": RuleFunction(1, "number", lambda n: int(digits_of(n)[-2:-1] or 0), "the tens digit of {0}", word="tens"),
    "difference": RuleFunction(
        2, "number", lambda a, b: abs(a - b), "the difference between {0} and {1}", word="difference"
    ),
}
