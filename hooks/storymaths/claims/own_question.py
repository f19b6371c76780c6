"""A question that says what must be worked out, and the answer written beside it: is the number that it comes to in it?

It reads: how many more, with two numbers; so many shared equally between so many; ten more or less than one number;
double, half and a sum; which sign belongs between two numbers; half past which, where the short hand is halfway between
two. It leaves questions with other numbers in them, and answers without any. Source: what the question asks, worked out.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from ..expression.number import Rational
from .amounts import InFigures, N, number, numbers, says
from .form import Form

_MORE = Form(r"\bhow (?:many|much) (?:more|fewer|less)\b|\bwhat is the difference\b")
_SHARED = Form(
    rf"(?P<all>{N})(?: [a-z]+){{1,2}} (?:are |is )?shared (?:out )?(?:equally|fairly) (?:between|among) (?P<among>{N})\b"
)
_SHIFT = Form(rf"\bwhat is (?P<by>{N}) (?P<way>more|less)(?: than (?P<of>{N}))?(?=[?,.]| and\b)")
_OF_ONE = Form(rf"\bwhat is (?P<way>double|half of|twice|half) (?P<of>{N})(?=\?)")
_SUM = Form(rf"\bwhat is (?P<one>{N}) (?P<sign>[+−×]) (?P<other>{N})(?=\?)")
_BETWEEN = Form(rf"\bsign\b[^.?!]*\bbetween (?P<one>{N}) and (?P<other>{N})(?=[.,;?!]|$)")
_HALFWAY = Form(rf"\bhalf ?way (?:from|between) (?:the )?(?P<one>{N}) (?:to|and) (?:the )?{N}")
_HALF_PAST = Form(rf"\bhalf past (?P<hour>{N})")
_WORK_OUT: dict[str, Callable[[Rational, Rational], Rational]] = {
    "+": lambda one, other: one + other, "−": lambda one, other: one - other, "×": lambda one, other: one * other,
    "more": lambda one, by: one + by, "less": lambda one, by: one - by,
}  # fmt: skip


class Missed(NamedTuple):
    """A number that the question comes to and the answer does not have, and the words that ask for it."""

    words: str
    right: str


def missed_answers(ask: str, answer: str) -> Iterator[Missed]:
    """What a question comes to, as far as it is read, that is not in its answer."""
    plain, told = (InFigures.of(" ".join(text.lower().split())).text for text in (ask, answer))
    given = numbers(told)
    for words, right in _wanted(plain) if given else ():
        if right not in given:
            yield Missed(words, says(right))
    times = [number(match["hour"]) for match in _HALF_PAST.finditer(told)]
    for match in _HALFWAY.finditer(plain) if times else ():
        if number(match["one"]) not in times:
            yield Missed(match.group(), f"half past {match['one']}")


def _wanted(ask: str) -> Iterator[tuple[str, Rational]]:
    every = numbers(ask)
    more = _MORE.search(ask)
    if more and len(every) == 2:
        yield more.group(), max(every) - min(every)
    for match in _SHARED.finditer(ask):
        whole, among = number(match["all"]), number(match["among"])
        if among and whole % among == 0 and "how many" in ask:
            yield match.group(), Fraction(whole) / among
    for match in _SHIFT.finditer(ask):
        of = _one_other(match, every)
        if of is not None:
            yield match.group(), _WORK_OUT[match["way"]](of, number(match["by"]))
    for match in _OF_ONE.finditer(ask):
        of = number(match["of"])
        yield match.group(), Fraction(of) / 2 if match["way"].startswith("half") else 2 * of
    for match in _SUM.finditer(ask):
        yield match.group(), _WORK_OUT[match["sign"]](number(match["one"]), number(match["other"]))
    for match in _BETWEEN.finditer(ask):
        yield match.group(), number(match["one"])
        yield match.group(), number(match["other"])


def _one_other(match: re.Match[str], every: Sequence[Rational]) -> Rational | None:
    """What it is more or less than: what is told with it, or the one other number of the question."""
    if match["of"]:
        return number(match["of"])
    others = [value for value in every if value != number(match["by"])]
    return others[0] if len(others) == 1 else None
