"""What every kind of activity offers, and the fields they share."""

from __future__ import annotations

from abc import ABC, abstractmethod
from collections.abc import Iterator, Mapping
from fractions import Fraction
from typing import Annotated, Any, ClassVar, Generic, Literal

from pydantic import BeforeValidator, Field
from typing_extensions import TypeVar

from ..expression.noun import Noun
from ..expression.number import read_number
from ..expression.say import written
from ..model.activity import Context, Solution
from ..model.book import FactValue
from ..model.document import Loc
from ..model.fields import Id, Strict, Text, Year
from ..model.year import YearLimits
from .revalue import SAME_NUMBERS, revalued


class Unsolvable(Exception):
    """An activity cannot be worked out as its author wrote it. Becomes a Problem at ``loc``.

    ``rule`` is one of the names in ``activities/rules.py``; ``message`` and ``fix`` are for a teacher.
    """

    def __init__(self, loc: Loc, message: str, fix: str, rule: str = "activity-cannot-be") -> None:
        super().__init__(message)
        self.loc, self.message, self.fix, self.rule = loc, message, fix, rule


def _exact(value: Any) -> Any:
    if isinstance(value, Fraction):
        return value
    if isinstance(value, bool) or not isinstance(value, (int, float, str)):
        raise ValueError("should be a number such as 7, 2.5 or 3/4")
    text = str(value).strip()
    try:
        number = read_number(text) if len(text) <= 24 else None
    except ZeroDivisionError:
        number = None
    if number is None or text.endswith("%"):
        raise ValueError("should be a number such as 7, 2.5 or 3/4")
    if abs(number.value) > 10_000_000:
        raise ValueError("should be within ten million, the largest number primary schools meet")
    return number.value


Exact = Annotated[Fraction, BeforeValidator(_exact)]
"""A number kept exactly, written 7, 2.5, "3/4" or "1,200"; never floating point, never past ten million."""

InlineCast = Mapping[Id, Mapping[str, FactValue]]


class ActivityFields(Strict):
    """Fields of every kind. A kind adds its own."""

    task_name: ClassVar[str] = ""
    """The name of the task, as in ``site_data/tasks.yaml`` and after the field that says which is meant."""

    kind: Text
    """The kind of activity, in one word."""
    id: Id | None = None
    """A short name of its own on its page, by which a bend names it; without one it goes by its title."""
    title: Text
    """What it is called."""
    ask: Text | None = None
    """The task in the author's own words, in place of the kind's."""
    cast: tuple[Id, ...] | InlineCast | Literal["all"] | None = None
    """Ids from the book's cast, or the characters themselves with their facts."""
    fact: Text | None = None
    """The fact of the cast the activity turns on, such as ``mass``."""
    singular: Text | None = None
    """One of the things that are counted, where the usual singular is another word: ``die`` for ``dice``."""
    year: Year | None = None
    """The year it is for; on a page, the page's own if not stated."""
    years: Mapping[Year, Mapping[str, Any]] = Field(default_factory=dict)
    """Versions for other years, off the pages that bend: what the author wants to pin; the rest is searched for."""
    answers: int | tuple[Any, ...] | None = None
    """What the author believes: how many, or which. The build checks it."""
    at_most: Annotated[int, Field(ge=1, le=500)] = 60
    """More answers than this is a problem."""
    wished: tuple[int, int] = (1, 12)
    """How many answers a computed year version may have."""

    @property
    def own_words(self) -> tuple[str, ...]:
        """What pupils read in the author's own words."""
        return (self.ask,) if self.ask else ()

    def noun(self, things: str | None) -> Noun:
        """Things that are counted, with the author's own singular; empty where they have no name."""
        return Noun(things or "", self.singular or "")

    def is_called(self, name: str) -> bool:
        """Whether a bend means it by a name: its id or its title, in which letters' size and spaces do not count."""
        return _plain(name) in map(_plain, filter(None, (self.id, self.title)))


def _plain(name: str) -> str:
    return " ".join(name.casefold().split())


F = TypeVar("F", bound=ActivityFields, default=Any)
V = TypeVar("V", default=Any)


class Kind(ABC, Generic[F, V]):
    """One kind of activity: ``F`` are its tasks, ``V`` its answers. Stateless; all in and out through arguments."""

    name: ClassVar[str]
    """As written after ``kind:``."""
    says: ClassVar[str]
    """One sentence for an author: what it is for."""
    answer_shape: ClassVar[str]
    """The shape of an answer as plain data, as documented to authors."""
    example: ClassVar[str]
    """A whole activity in YAML with an inline cast: documentation, gallery and test bed at once."""
    more_examples: ClassVar[tuple[str, ...]] = ()
    """Further ones for the gallery, where one alone does not show what the kind can do."""
    practises: ClassVar[Mapping[str, str]] = {}
    """Ready-to-progress codes of Years 1 and 2 it can practise, and how."""
    tasks: ClassVar[tuple[type[ActivityFields], ...]]
    """The schema of each task it sets; the first is meant where an author does not say."""
    told_by: ClassVar[str] = ""
    """The field that says which task is meant, such as ``find``; empty where it is told by what is given."""
    unordered: ClassVar[bool] = False
    """Whether a claimed answer may name its parts in any order: ``hare + otter`` for ``otter + hare``."""

    @abstractmethod
    def solve(self, fields: F, context: Context) -> Solution[V]:
        """Every answer, exact, complete and in a stated order. Raises ``Unsolvable`` for what cannot be."""

    def schema_for(self, raw: Mapping[str, Any]) -> type[ActivityFields]:
        """The schema of the task that an author means by what is written."""
        wanted = raw.get(self.told_by)
        return next((schema for schema in self.tasks if schema.task_name == wanted), self.tasks[0])

    def versions(self, fields: F, context: Context, year: YearLimits) -> Iterator[tuple[F, Context, str]]:
        """Candidate versions for another year, best first, each with what changed in words.

        Deterministic. The caller takes the first whose solution fits the year and the wished number of
        answers. The default offers the activity unchanged, then with new values for the fact of the cast.
        """
        yield fields, context, SAME_NUMBERS
        if fields.fact:
            for changed, why in revalued(context, fields.fact, year):
                yield fields, changed, why


def whole_fact(context: Context, fact: str, loc: Loc = ("fact",), below_nought: bool = False) -> dict[str, int]:
    """The whole-number values of a fact by character id, above nought where nothing else is said.

    Raises ``Unsolvable`` where one lacks it or it is not one.
    """
    least = -context.caps.number if below_nought else 1
    values: dict[str, int] = {}
    for character in context.characters:
        value = character.facts.get(fact)
        if value is None:
            raise Unsolvable(
                loc,
                f'{character.name} has no fact "{fact}".',
                "give the character that fact, or choose another.",
                "activity-fact-missing",
            )
        if isinstance(value, bool) or not isinstance(value, int):
            raise Unsolvable(
                loc,
                f"The {fact} of {character.name} is {_as_written(value)}, which is not a whole number.",
                "write a whole number.",
            )
        if not least <= value <= context.caps.number:
            raise Unsolvable(
                loc,
                f"The {fact} of {character.name} is {written(value)}.",
                f"write a whole number from {written(least)} to {context.caps.number:,}.",
            )
        values[character.id] = value
    return values


def _as_written(value: bool | str) -> str:
    """A fact that is no number, as an author writes it."""
    return f'"{value}"' if isinstance(value, str) else "true" if value else "false"
