"""The tasks of sorting, one schema each, and what their answers are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, ClassVar, Literal, Self

from pydantic import Field

from ...model.fields import Text
from ...model.picked import CastId, FactName
from ..kind import ActivityFields
from .cards import WrittenNumbers
from .rules import SortRule

Diagram = Literal["hoop", "venn", "carroll"]
Region = Literal[
    "in", "out", "both", "first", "second", "neither",
    "all", "first and second", "first and third", "second and third", "third", "none",
]  # fmt: skip
"""In a hoop and outside it; or by the first rule and the second: fits both, only the first, only the second, neither;
or by three: fits all, only those two, only that one, none."""


_THREE = 3


class _ByRules(ActivityFields):
    by: Annotated[tuple[Text | SortRule, ...], Field(max_length=6)] = ()
    """One rule, two or three (for boxes up to six) about facts of the cast, such as ``swims`` or ``legs > 4``;
    about numbers, with ``n``, such as ``odd(n)`` or ``multiple(n, 7)``."""
    diagram: Literal["hoop", "venn", "carroll", "boxes"] | None = None
    """What to sort into; when left out, a hoop for one rule and a Venn diagram for two or three."""
    numbers: WrittenNumbers | None = None
    """Numbers to sort in place of a cast: a list, or a stretch such as ``10 to 99``; at most a hundred."""

    def with_numbers(self, numbers: tuple[str, ...]) -> Self:
        """The task with other numbers."""
        return self.model_copy(update={"numbers": numbers})


class PlaceTask(_ByRules):
    """``by`` one rule or two: everyone in their place in a diagram."""

    task_name: ClassVar[str] = "place"

    @property
    def into(self) -> Diagram:
        """The diagram that is meant; boxes are a task of their own."""
        if self.diagram is None or self.diagram == "boxes":
            return "hoop" if len(self.by) == 1 else "venn"
        return self.diagram

    def with_diagram(self, diagram: Diagram) -> Self:
        """The same rules in another diagram."""
        return self.model_copy(update={"diagram": diagram})

    def with_one_rule(self, rule: str | SortRule) -> Self:
        """One rule alone in a hoop; what its author believes of the answers does not hold for it."""
        return self.model_copy(update={"by": (rule,), "diagram": "hoop", "answers": None})


class ThreeRingsTask(PlaceTask):
    """``by`` three rules: everyone in their place among three rings."""

    task_name: ClassVar[str] = "three"
    diagram: Literal["venn"] | None = None

    def with_two_rules(self) -> PlaceTask:
        """The first two rules alone; what its author believes of the answers does not hold for them."""
        told = dict(self)
        return PlaceTask.model_construct(**{**told, "by": self.by[:2], "answers": None})


class BoxesTask(_ByRules):
    """``by`` up to six rules and ``diagram: boxes``: a different one in each box."""

    task_name: ClassVar[str] = "boxes"
    diagram: Literal["boxes"]


class GuessTask(ActivityFields):
    """``inside``: what the rule of the sorting could be."""

    task_name: ClassVar[str] = "guess"
    inside: Annotated[tuple[CastId, ...], Field(min_length=1)]
    """Guess my rule: those in the hoop. Everyone else of the cast is outside."""
    looking_at: tuple[FactName, ...] = ()
    """Guess my rule: the facts to look at; all that everyone has when left out."""

    def with_facts(self, facts: tuple[str, ...]) -> Self:
        """The task that looks at these facts only."""
        return self.model_copy(update={"looking_at": facts})


SortTask = PlaceTask | ThreeRingsTask | BoxesTask | GuessTask


def schema_for(raw: Mapping[str, Any]) -> type[SortTask]:
    """A rule to be guessed where somebody is inside, boxes where the diagram says so, and three rings for three rules."""
    if "inside" in raw:
        return GuessTask
    if raw.get("diagram") == "boxes":
        return BoxesTask
    by = raw.get("by")
    three = isinstance(by, (list, tuple)) and len(by) == _THREE and raw.get("diagram") in (None, "venn")
    return ThreeRingsTask if three else PlaceTask


@dataclass(frozen=True, slots=True)
class Placing:
    """The ids of the cards in each region, in their order."""

    regions: Mapping[Region, tuple[str, ...]]
    empty: tuple[Region, ...]


@dataclass(frozen=True, slots=True)
class Filling:
    """The id of the card in each box."""

    boxes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class GuessedRule:
    """A rule that fits, in the language of rules."""

    rule: str


SortAnswer = Placing | Filling | GuessedRule
