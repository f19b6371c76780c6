"""Two teams that are worth the same: every way of making them, or of levelling an unfair start."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind
from .solve import solve
from .tasks import BalanceTask, LevelTeams, OppositeTask, PlayerTask, StartTask, TeamsTask
from .versions import versions_of


class Balance(Kind[BalanceTask, LevelTeams]):
    """Teams that are worth the same.

    Steps of thought: every + that the longest answer needs, and one to see that both sides are the same.
    """

    name: ClassVar[str] = "balance"
    says: ClassVar[str] = "Two teams of characters that come to the same, such as two sides of a boat that float level."
    answer_shape: ClassVar[str] = (
        '{"left": [names], "right": [names], "total": number}, the smallest total first; of mirror images one'
    )
    tasks = (TeamsTask, OppositeTask, PlayerTask, StartTask)
    unordered: ClassVar[bool] = True
    """An author may write the characters of a side in any order, and the sides either way round."""
    example: ClassVar[str] = """\
kind: balance
title: Level the lifeboat
fact: mass
cast:
  gull: {mass: 2}
  crab: {mass: 3}
  puffin: {mass: 5}
  limpet: {mass: 6}
  seal: {mass: 9}
teams: any
answers:
  - gull + crab = puffin
  - gull + limpet = crab + puffin
  - crab + limpet = seal
  - gull + seal = puffin + limpet
years: {1: {largest: 10}, 3: {unit: kg}}
"""
    practises: ClassVar[dict[str, str]] = {
        "1AS-1": "numbers to ten made from two others, every way",
        "1AS-2": "= read as “is worth the same as”, with a sum on either side or on both",
        "2NF-1": "facts to ten used again and again while teams are tried",
        "2AS-1": "three or more numbers added, crossing ten on the way",
        "2AS-2": "how much more one side needs to be level",
    }

    def schema_for(self, raw: Mapping[str, Any]) -> type[ActivityFields]:
        """The task is told by what is settled beforehand: a start, a whole side, one character, or nothing."""
        if "start" in raw:
            return StartTask
        given = raw.get("given")
        if "given" in raw:
            return (
                PlayerTask if isinstance(given, Mapping) and "player" in given and "side" not in given else OppositeTask
            )
        return TeamsTask

    def solve(self, fields: BalanceTask, context: Context) -> Solution[LevelTeams]:
        """Every way, the smallest total first, then the fewest characters, then as the cast is listed."""
        return solve(fields, context)

    def versions(
        self, fields: BalanceTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[BalanceTask, Context, str]]:
        """First casts in which the same teams are level, then others."""
        yield from versions_of(fields, context, year)


KIND = Balance()
