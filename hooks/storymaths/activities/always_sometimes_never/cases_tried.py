"""Every case of a statement over stated numbers, tried: where it holds, where it fails, where it says nothing."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import product
from math import prod
from typing import Any

from ...expression.number import read_stretch
from ...model.prose import Loc
from ..kind import Unsolvable
from ..rule_language.tree import Case, NoValue, Rule, TooLarge, decider
from ..saying import listed

MOST_CASES = 20_000
"""More cases than this take longer than a build should."""


@dataclass(slots=True)
class Tried:
    """What came of trying: cases in the order tried, the last letter changing fastest."""

    true: list[dict[str, int]] = field(default_factory=list)
    false: list[dict[str, int]] = field(default_factory=list)
    outside: list[dict[str, int]] = field(default_factory=list)
    """Cases its if-part does not speak of, though the then-part holds."""
    first: dict[str, int] = field(default_factory=dict)
    """The first case it speaks of."""
    passed_over: int = 0
    """All cases its if-part does not speak of."""

    @property
    def verdict(self) -> str:
        """``always``, ``sometimes`` or ``never``."""
        if not self.false:
            return "always"
        return "sometimes" if self.true else "never"


def numbers_of(over: str | Sequence[int], loc: Loc, largest: int) -> Sequence[int]:
    """The numbers a letter stands for: ``1 to 20``, or a list. Raises ``Unsolvable``."""
    if isinstance(over, str):
        stretch = read_stretch(over)
        if stretch is None:
            raise Unsolvable(loc, f'"{over[:40]}" is not a stretch of whole numbers.', "write it like: 1 to 20")
        first, last = stretch
        numbers: Sequence[int] = range(first, last + 1)
    else:
        numbers = tuple(dict.fromkeys(over))
    if not numbers:
        raise Unsolvable(loc, "There are no numbers to try.", "write the smaller number first, like: 1 to 20")
    if max(abs(numbers[0]), abs(numbers[-1]), *(() if isinstance(numbers, range) else map(abs, numbers))) > largest:
        raise Unsolvable(loc, "The numbers go too far.", f"stay within {largest:,}.")
    return numbers


def try_all(condition: Rule | None, then: Rule, letters: Mapping[str, Sequence[int]], most: int) -> Tried:
    """Every case. Raises ``Unsolvable`` for too many, for none to speak of, and where a part has no value."""
    cases = prod(len(numbers) for numbers in letters.values())
    if cases > most:
        message = f"There are {cases:,} cases to try, which is too many."
        raise Unsolvable(("over",), message, f"use smaller stretches of numbers, for at most {most:,} cases.")
    speaks: Callable[[Case], Any] = decider(condition) if condition else lambda case: True
    holds, tried = decider(then), Tried()
    for values in product(*letters.values()):
        case = dict(zip(letters, values, strict=True))
        if _value(speaks, case, "say"):
            tried.first = tried.first or case
            (tried.true if _value(holds, case, "then") else tried.false).append(case)
        else:
            tried.passed_over += 1
            if _so_far(holds, case):
                tried.outside.append(case)
    if not tried.true and not tried.false:
        raise Unsolvable(
            ("say",), "The if-part is true of none of the numbers.", "use other numbers, or another if-part."
        )
    return tried


def _value(decide: Callable[[Case], Any], case: Case, field_name: str) -> Any:
    try:
        return decide(case)
    except NoValue:
        raise Unsolvable(
            (field_name,), f"It divides by nought when {case_text(case)}.", "leave that number out."
        ) from None
    except TooLarge:
        message = f"It comes to more than ten million when {case_text(case)}."
        raise Unsolvable((field_name,), message, "use smaller numbers.") from None


def _so_far(decide: Callable[[Case], Any], case: Case) -> bool:
    """Whether the then-part holds where nobody asks; a case without a value is nobody's fault."""
    try:
        return bool(decide(case))
    except (NoValue, TooLarge):
        return False


def case_text(case: Case, with_letters: bool = True) -> str:
    """``a = 3, b = 5``; without letters ``the numbers are 3 and 5``."""
    values = {letter: str(value).replace("-", "−") for letter, value in case.items()}
    if with_letters:
        return ", ".join(f"{letter} = {value}" for letter, value in values.items())
    return f"the number{'s are' if len(values) > 1 else ' is'} {listed(list(values.values()))}"


def telling(cases: Sequence[dict[str, int]]) -> dict[str, int]:
    """The first case whose numbers all differ, which shows more than 1 and 1; else the first."""
    return next((case for case in cases if len(set(case.values())) == len(case)), cases[0])
