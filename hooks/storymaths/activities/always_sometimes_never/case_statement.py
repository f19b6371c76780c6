"""A statement with its letters: read, given its numbers, and tried in every case."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Annotated, Any

from pydantic import PlainValidator

from ...model.reference import ActivityCaps
from ..kind import Unsolvable
from ..rule_language.reader import RuleFault, read_rule
from ..rule_language.tree import Name, Rule
from ..rule_language.words import parts_of
from .cases_tried import MOST_CASES, numbers_of, try_all

_LETTERS = "abcdefghijklmnopqrstuvwxyz"
Over = str | Sequence[int] | Mapping[str, str | Sequence[int]]
"""The numbers of every letter, or letter by letter: ``1 to 20``, or a list."""
_MOST_LISTED = 200


def _over(value: Any) -> Any:
    if not isinstance(value, Mapping):
        return _numbers(value)
    if not 1 <= len(value) <= 4 or not all(
        isinstance(letter, str) and len(letter) == 1 and letter in _LETTERS for letter in value
    ):
        raise ValueError("should name one to four letters, such as {a: 1 to 20, b: [1, 2, 4]}")
    return {letter: _numbers(numbers) for letter, numbers in value.items()}


def _numbers(value: Any) -> Any:
    if isinstance(value, str) and value.strip():
        return value
    whole = isinstance(value, (list, tuple)) and all(isinstance(n, int) and not isinstance(n, bool) for n in value)
    if not whole or not 1 <= len(value) <= _MOST_LISTED:
        raise ValueError("should be a stretch such as 1 to 20, or a list of whole numbers")
    return tuple(value)


OverNumbers = Annotated[str | tuple[int, ...] | Mapping[str, str | tuple[int, ...]], PlainValidator(_over)]
"""``1 to 20``, a list of at most 200 whole numbers, or either of these for each of one to four letters."""


class Statement:
    """If ``say``, then ``then``: its trees, its letters with their numbers, and what came of trying them.

    Raises ``Unsolvable`` for what cannot be read or tried.
    """

    def __init__(self, say: str | None, then: str, over: Over, caps: ActivityCaps) -> None:
        named = tuple(over) if isinstance(over, Mapping) else tuple(_LETTERS)
        self.say = _read(say, "say", named) if say else None
        self.then = _read(then, "then", named)
        rules = [rule for rule in (self.say, self.then) if rule]
        self.parts = [part for rule in rules for part in parts_of(rule)]
        used = sorted({part.name for part in self.parts if isinstance(part, Name)})
        if not used or len(used) > 4:
            message = f"The statement has {len(used)} letters."
            raise Unsolvable(("then",), message, "use one to four letters, such as a and b.")
        self.letters: dict[str, Sequence[int]] = {}
        for letter in used:
            loc = ("over", letter) if isinstance(over, Mapping) else ("over",)
            numbers = over[letter] if isinstance(over, Mapping) else over
            self.letters[letter] = numbers_of(numbers, loc, caps.number)
        self.tried = try_all(self.say, self.then, self.letters, min(caps.tries, MOST_CASES))


def _read(text: str, field_name: str, named: Sequence[str]) -> Rule:
    try:
        return read_rule(text, dict.fromkeys(named, "number"))
    except RuleFault as fault:
        raise Unsolvable((field_name,), fault.message, fault.fix) from None


def up_to(over: Any, top: int) -> Any:
    """Other ends for stretches of numbers, the same beginnings; lists without what is larger."""
    if isinstance(over, Mapping):
        return {letter: up_to(numbers, top) for letter, numbers in over.items()}
    if isinstance(over, str):
        return f"{numbers_of(over, ('over',), 10**7)[0]} to {top}"
    return tuple(number for number in over if number <= top)
