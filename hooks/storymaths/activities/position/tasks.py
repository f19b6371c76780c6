"""The two tasks on a grid, a route to follow and a goal to find, and what their answers are."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, ClassVar, Self

from pydantic import Field, model_validator

from ...model.fields import Text
from ...model.practice.position import Saying
from ..kind import ActivityFields
from .grid_squares import Facing


class _OnGrid(ActivityFields):
    grid: tuple[Annotated[int, Field(strict=True)], Annotated[int, Field(strict=True)]]
    """Columns and rows, in squares."""
    start: Text = "A1"
    """The square to start from: a letter for the column, a number for the row, from the bottom left."""
    facing: Facing = "up"
    """The way faced at first, on the page."""
    blocked: Annotated[tuple[Text, ...], Field(max_length=400)] = ()
    """Squares nobody may enter."""
    turns: Saying | None = None
    """How turns are said; when left out, as the year says them."""

    def with_turns(self, turns: Saying) -> Self:
        """The same with turns said in another way."""
        return self.model_copy(update={"turns": turns})


class FollowRoute(_OnGrid):
    """Where a route ends, and the way back if it is asked for."""

    task_name: ClassVar[str] = "route"

    route: Annotated[tuple[Text, ...], Field(max_length=40)] = ()
    """Steps to follow, such as ``forward 3``, ``quarter turn right``, ``half turn``, ``back 1``; or ``2 up``, ``3 left``."""
    back: bool = False
    """Whether the way back is asked for too."""

    def with_first(self, steps: int) -> Self:
        """The same with the first so many steps only."""
        return self.model_copy(update={"route": self.route[:steps]})


class FindRoutes(_OnGrid):
    """Every shortest route to a goal."""

    task_name: ClassVar[str] = "goal"

    goal: Text
    """The square to get to by every shortest route."""

    @model_validator(mode="before")
    @classmethod
    def _without_what_is_empty(cls, raw: dict[str, Any]) -> dict[str, Any]:
        """An empty route and no way back are as good as not written."""
        return {key: value for key, value in raw.items() if key not in ("route", "back") or value}


GridTask = FollowRoute | FindRoutes


def schema_for(raw: Mapping[str, Any]) -> type[GridTask]:
    """With a goal, routes are to be found; else one is to be followed."""
    return FollowRoute if raw.get("goal") is None or raw.get("route") else FindRoutes


@dataclass(frozen=True, slots=True)
class Ending:
    """Where a route ends."""

    ends: str
    facing: Facing
    degrees: int
    """Turned in all."""


@dataclass(frozen=True, slots=True)
class WayBack:
    """The steps that lead back."""

    back: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Route:
    """A shortest route: its steps, and the squares it goes over."""

    route: tuple[str, ...]
    squares: tuple[str, ...]


GridAnswer = Ending | WayBack | Route
