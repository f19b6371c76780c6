"""What activities came to, by all that each depends on: what the last pass solved is not solved again in the next."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Generic, TypeVar

from ..model.bend import YearBend
from ..model.book import Book
from ..model.reference import Reference

Outcome = TypeVar("Outcome")


@dataclass(frozen=True, slots=True)
class ActivityInput:
    """All that an activity depends on. Two are equal when what they come to is."""

    text: str
    year: int
    bends_key: str
    folder: str
    signs: tuple[str, ...]
    """At choice in its year, and chosen by its page."""
    unmet: tuple[str, ...]
    """That its year meets, and that a later session of its book brings in."""
    judged: bool
    book_key: str
    reference_key: str
    book: Book | None = field(compare=False)
    reference: Reference = field(compare=False)
    bends: Mapping[int, YearBend] = field(compare=False)


class Memory(Generic[Outcome]):
    """What was solved in one pass over activities, and at hand what was solved in the one before.

    It holds exactly what its pass asked for: what nobody asks for any more is forgotten with the pass before.
    """

    def __init__(self, before: Memory[Outcome] | None = None) -> None:
        self._before: Mapping[ActivityInput, Outcome] = before._used if before else {}
        self._used: dict[ActivityInput, Outcome] = {}

    def recall(self, asked: ActivityInput, solve: Callable[[ActivityInput], Outcome]) -> Outcome:
        """What an activity comes to: as it was found before, or solved now."""
        outcome = self._used.get(asked)
        if outcome is None:
            outcome = self._before.get(asked)
            self._used[asked] = outcome = solve(asked) if outcome is None else outcome
        return outcome

    def forget_the_pass_before(self) -> None:
        """Lets go of what this pass did not ask for."""
        self._before = {}
