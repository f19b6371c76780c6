"""A statement with its letters: read, and given its numbers."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from ...expression.number import read_stretch
from ...model.document import Loc
from ...model.reference import ActivityCaps
from ..kind import Unsolvable
from ..rule_language.reader import RuleFault, read_rule
from ..rule_language.tree import Name, Rule
from ..rule_language.words import parts_of
from .tasks import LETTERS, JudgeTask, Numbers

_MOST_LETTERS = 4


@dataclass(frozen=True, slots=True)
class Statement:
    """If ``say``, then ``then``, for all the numbers of its letters."""

    say: Rule | None
    then: Rule
    letters: Mapping[str, Sequence[int]]

    @property
    def rules(self) -> tuple[Rule, ...]:
        """The if-part, where there is one, and the then-part."""
        return (self.then,) if self.say is None else (self.say, self.then)

    @property
    def parts(self) -> Iterator[Rule]:
        """The rules and everything inside them."""
        return (part for rule in self.rules for part in parts_of(rule))


def read_statement(task: JudgeTask, caps: ActivityCaps) -> Statement:
    """The statement of a task. Raises ``Unsolvable`` for what cannot be read."""
    over = task.over
    named = tuple(over) if isinstance(over, Mapping) else tuple(LETTERS)
    say = _read(task.say, "say", named) if task.say else None
    statement = Statement(say, _read(task.then, "then", named), {})
    used = sorted({part.name for part in statement.parts if isinstance(part, Name)})
    if not 1 <= len(used) <= _MOST_LETTERS:
        message = f"The statement has {len(used)} letters."
        raise Unsolvable(("then",), message, "use one to four letters, such as a and b.")
    letters = {
        letter: _numbers_of(over[letter], ("over", letter), caps.number)
        if isinstance(over, Mapping)
        else _numbers_of(over, ("over",), caps.number)
        for letter in used
    }
    return Statement(say, statement.then, letters)


def _read(text: str, field_name: str, named: Sequence[str]) -> Rule:
    try:
        return read_rule(text, dict.fromkeys(named, "number"))
    except RuleFault as fault:
        raise Unsolvable((field_name,), fault.message, fault.fix) from None


def _numbers_of(over: Numbers, loc: Loc, largest: int) -> Sequence[int]:
    """The numbers a letter stands for. Raises ``Unsolvable``."""
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
    farthest = (numbers[0], numbers[-1]) if isinstance(numbers, range) else numbers
    if max(map(abs, farthest)) > largest:
        raise Unsolvable(loc, "The numbers go too far.", f"stay within {largest:,}.")
    return numbers
