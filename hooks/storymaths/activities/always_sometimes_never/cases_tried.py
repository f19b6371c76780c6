"""Every case of a statement, tried: where it holds, where it fails, where it says nothing."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from itertools import product
from math import prod
from typing import Any

from ...model.reference import ActivityCaps
from ..kind import Unsolvable
from ..rule_language.tree import NoValue, Rule, TooLarge, decider
from .say import say_case
from .statement import Statement
from .tasks import NumberCase, VerdictWord

_MOST_CASES = 20_000
"""More cases than this take longer than a build should."""
Decide = Callable[[NumberCase], Any]


@dataclass(slots=True)
class Tried:
    """What came of trying: cases in the order tried, the last letter changing fastest."""

    true: list[NumberCase] = field(default_factory=list)
    false: list[NumberCase] = field(default_factory=list)
    outside: list[NumberCase] = field(default_factory=list)
    """Cases its if-part does not speak of, though the then-part holds."""
    first: NumberCase = field(default_factory=dict)
    """The first case it speaks of."""
    passed_over: int = 0
    """All cases its if-part does not speak of."""

    @property
    def verdict(self) -> VerdictWord:
        """What is to be said of it."""
        if not self.false:
            return "always"
        return "sometimes" if self.true else "never"

    @property
    def spoken_of(self) -> int:
        """How many cases it speaks of."""
        return len(self.true) + len(self.false)


def try_all(statement: Statement, caps: ActivityCaps) -> Tried:
    """Every case. Raises ``Unsolvable`` for too many, for none to speak of, and where a part has no value."""
    letters, most = statement.letters, min(caps.tries, _MOST_CASES)
    cases = prod(len(numbers) for numbers in letters.values())
    if cases > most:
        message = f"There are {cases:,} cases to try, which is too many."
        raise Unsolvable(("over",), message, f"use smaller stretches of numbers, for at most {most:,} cases.")
    speaks, holds = _decide(statement.say), decider(statement.then)
    tried = Tried()
    for values in product(*letters.values()):
        case = dict(zip(letters, values, strict=True))
        if _value(speaks, case, "say"):
            tried.first = tried.first or case
            (tried.true if _value(holds, case, "then") else tried.false).append(case)
        else:
            tried.passed_over += 1
            if value_or_none(holds, case):
                tried.outside.append(case)
    if not tried.spoken_of:
        message = "The if-part is true of none of the numbers."
        raise Unsolvable(("say",), message, "use other numbers, or another if-part.")
    return tried


def _decide(condition: Rule | None) -> Decide:
    return decider(condition) if condition else lambda case: True


def _value(decide: Decide, case: NumberCase, field_name: str) -> Any:
    try:
        return decide(case)
    except NoValue:
        raise Unsolvable(
            (field_name,), f"It divides by nought when {say_case(case)}.", "leave that number out."
        ) from None
    except TooLarge:
        message = f"It comes to more than ten million when {say_case(case)}."
        raise Unsolvable((field_name,), message, "use smaller numbers.") from None


def value_or_none(decide: Decide, case: NumberCase) -> Any:
    """What a part comes to where nobody asks; None where it has no value, which is nobody's fault."""
    try:
        return decide(case)
    except (NoValue, TooLarge):
        return None


def choose_telling(cases: Sequence[NumberCase]) -> NumberCase:
    """The first case whose numbers all differ, which shows more than 1 and 1; else the first."""
    return next((case for case in cases if len(set(case.values())) == len(case)), cases[0])
