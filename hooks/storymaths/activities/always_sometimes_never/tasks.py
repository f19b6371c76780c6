"""A statement to be judged, and what the verdict on it holds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, ClassVar, Literal, Self

from pydantic import PlainValidator

from ...expression.number import read_stretch
from ...model.fields import Text
from ..kind import ActivityFields

LETTERS = "abcdefghijklmnopqrstuvwxyz"
_MOST_LISTED = 200
Numbers = str | tuple[int, ...]
"""``1 to 20``, or a list of whole numbers."""
NumberCase = Mapping[str, int]
"""A number for each letter."""
VerdictWord = Literal["always", "sometimes", "never"]


def _read_over(value: Any) -> Numbers | Mapping[str, Numbers]:
    if not isinstance(value, Mapping):
        return _read_numbers(value)
    if not 1 <= len(value) <= 4 or not all(
        isinstance(letter, str) and len(letter) == 1 and letter in LETTERS for letter in value
    ):
        raise ValueError("should name one to four letters, such as {a: 1 to 20, b: [1, 2, 4]}")
    return {letter: _read_numbers(numbers) for letter, numbers in value.items()}


def _read_numbers(value: Any) -> Numbers:
    if isinstance(value, str) and value.strip():
        return value
    whole = isinstance(value, (list, tuple)) and all(isinstance(n, int) and not isinstance(n, bool) for n in value)
    if not whole or not 1 <= len(value) <= _MOST_LISTED:
        raise ValueError("should be a stretch such as 1 to 20, or a list of whole numbers")
    return tuple(value)


OverNumbers = Annotated[
    Numbers | Mapping[str, Numbers], PlainValidator(_read_over, json_schema_input_type=Numbers | Mapping[str, Numbers])
]
"""``1 to 20``, a list of at most 200 whole numbers, or either of these for each of one to four letters."""


class JudgeTask(ActivityFields):
    """A statement ``if say, then then`` about letters that stand for whole numbers."""

    task_name: ClassVar[str] = "judge"
    say: Text | None = None
    """What the statement supposes, such as ``odd(a) and odd(b)``; it speaks of every case when left out."""
    then: Text
    """What it claims, such as ``even(a + b)``."""
    over: OverNumbers = "1 to 20"
    """The whole numbers every letter stands for, ``1 to 20`` or a list; or these letter by letter."""
    statement: Text | None = None
    """The statement in the author's own words."""
    because: Text | None = None
    """The reason behind it, for the adult: trying is not a proof."""

    @property
    def own_words(self) -> tuple[str, ...]:
        """The author's own words for the statement too."""
        return (*super().own_words, *([self.statement] if self.statement else []))

    def with_top(self, top: int) -> Self:
        """Other ends for stretches of numbers, the same beginnings; lists without what is larger."""
        over = self.over
        if isinstance(over, Mapping):
            return self.model_copy(update={"over": {letter: _up_to(numbers, top) for letter, numbers in over.items()}})
        return self.model_copy(update={"over": _up_to(over, top)})


def _up_to(numbers: Numbers, top: int) -> Numbers:
    if isinstance(numbers, tuple):
        return tuple(number for number in numbers if number <= top)
    stretch = read_stretch(numbers)
    return f"{stretch[0]} to {top}" if stretch else numbers


@dataclass(frozen=True, slots=True)
class Verdict:
    """Whether a statement is true, in how many cases, and the first cases of each sort."""

    verdict: VerdictWord
    tried: int
    true: int
    false: int
    examples: tuple[NumberCase, ...]
    counter_examples: tuple[NumberCase, ...]
