"""The tasks of a balance, one schema each, and two teams that are level."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import CastMember
from ...model.fields import Id, Strict, Text
from ...model.plain import Plain
from ..kind import ActivityFields

Team = tuple[CastMember, ...]


class BalanceFields(ActivityFields):
    """What every task may say."""

    fact: Text = "mass"
    """The fact whose values are added on each side; whole numbers from 1."""
    unit: str | None = None
    """The unit of the fact, such as kg; the book's own if not stated."""
    teams: Literal["any", "all"] | Annotated[int, Field(ge=1, strict=True)] = "any"
    """``any`` two teams; so many a side; or ``all``, when everybody must be in a team."""


class TeamsTask(BalanceFields):
    """Two teams that are level."""

    task_name: ClassVar[str] = "teams"


class Side(Strict):
    """One whole side."""

    side: Annotated[tuple[Id, ...], Field(min_length=1)]
    """Exactly these stand on the left; the question is who can stand on the right."""


class OppositeTask(BalanceFields):
    """Who goes opposite a team that is given."""

    task_name: ClassVar[str] = "opposite"
    given: Side
    """Who sits on one side already."""


class Player(Strict):
    """One character who must take part."""

    player: Id
    """This character is in one of the teams, and is shown on the left."""


class PlayerTask(BalanceFields):
    """Two teams that are level, with one character in them."""

    task_name: ClassVar[str] = "player"
    given: Player
    """Who is sitting already."""


class Start(Strict):
    """Who stands on each side at first. It is not level yet."""

    left: Annotated[tuple[Id, ...], Field(min_length=1)]
    """Who sits on the left."""
    right: tuple[Id, ...] = ()
    """Who sits on the right."""


class StartTask(BalanceFields):
    """Who joins to level a start that is not."""

    task_name: ClassVar[str] = "start"
    start: Start
    """Who sits where at first."""
    joining: Literal["lighter", "either"] = "lighter"
    """With a start: whether others may join the lighter side only, or both sides."""


BalanceTask = TeamsTask | OppositeTask | PlayerTask | StartTask


@dataclass(frozen=True, slots=True)
class LevelTeams:
    """Two teams that come to the same."""

    left: Team
    right: Team
    total: int

    def as_plain(self) -> Plain:
        """The names of both teams, and their total."""
        names = [[character.name for character in team] for team in (self.left, self.right)]
        return {"left": list(names[0]), "right": list(names[1]), "total": self.total}
