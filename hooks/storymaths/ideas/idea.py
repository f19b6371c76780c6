"""What ``find_ideas`` gives: ideas for activities, best first, and what nothing in the book can carry. Plain values all through."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from .reason import Reason


@dataclass(frozen=True, slots=True)
class Practises:
    """An objective of the year that an idea practises."""

    framework: str
    code: str
    says: str
    """The objective in our words."""
    parts: tuple[str, ...] = ()
    """The ids of the parts it surely practises; empty where that is not known."""


@dataclass(frozen=True, slots=True)
class FromStory:
    """Something of the book that an idea is made of."""

    what: str
    """In words: ``mass, in bricks``, ``ten hooks``, ``half past 10``."""
    pages: tuple[int, ...] = ()
    """Where it stands; empty for the cast, and for what is said of the whole book."""


@dataclass(frozen=True, slots=True)
class Change:
    """A number of the story that an idea would change."""

    who: str
    """A character's name, or what is counted."""
    what: str
    """The fact; empty where ``who`` says it all."""
    book: int
    idea: int


@dataclass(frozen=True, slots=True)
class Hardness:
    """How hard an idea is, in the parts its difficulty is made of."""

    steps: int
    """Steps of thought one answer takes."""
    largest: str
    """The largest number met, as it is written."""
    answers: int
    difficulty: int
    """As of every activity: ``Solution.difficulty``."""


@dataclass(frozen=True, slots=True)
class Idea:
    """An activity that a book can carry, ready to be put into a session."""

    kind: str
    task: str
    title: str
    year: int
    block: str
    """The activity's lines, without the fences."""
    ask: str
    """What pupils are asked."""
    answers: tuple[str, ...]
    """Every answer, as a person says it."""
    note: str
    """How one knows these are all; empty where that needs no words."""
    hardness: Hardness
    practises: tuple[Practises, ...]
    concepts: tuple[str, ...]
    """Ids of concepts, those the book's notes see first."""
    uses: tuple[FromStory, ...]
    changes: tuple[Change, ...]
    reasons: tuple[Reason, ...]
    """The weightiest first."""

    @property
    def weight(self) -> int:
        """What its reasons come to."""
        return sum(reason.weight for reason in self.reasons)

    @property
    def fenced(self) -> str:
        """The block exactly as an author writes it into a page."""
        return f"```maths\n{self.block.rstrip()}\n```\n"


WhyNot = Literal["no kind", "nothing to feed it", "does not come out"]
"""No kind of activity practises it; some do, and the book has nothing for them; or what the book has does not come out."""


@dataclass(frozen=True, slots=True)
class NotCarried:
    """An objective of the year that nothing in the book can carry."""

    framework: str
    code: str
    says: str
    why: WhyNot
    kinds: tuple[str, ...] = ()
    """The kinds that could carry it, with other things in the story."""


@dataclass(frozen=True, slots=True)
class Unfed:
    """A kind of activity that gives no idea for this book and year."""

    kind: str
    needs: str
    """What a story must have for it, in words."""


@dataclass(frozen=True, slots=True)
class Ideas:
    """Everything found for a book and a year."""

    book: str
    """The id of the book."""
    title: str
    year: int
    objective: tuple[str, str] | None
    """The framework and code asked for; None for all of the year."""
    series: tuple[str, ...]
    """The ids of the series whose gaps were looked at."""
    ideas: tuple[Idea, ...]
    not_carried: tuple[NotCarried, ...]
    unfed: tuple[Unfed, ...]
    had: int = 0
    """How many more come out that a page of the book has already."""
