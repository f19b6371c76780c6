"""Position: routes on a grid, followed, turned back, or found, with steps forward and turns."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any, ClassVar

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import FindRoutes, FollowRoute, GridAnswer, GridTask, schema_for
from .versions import versions_of


class Position(Kind[GridTask, GridAnswer]):
    """Routes on a grid.

    Steps: one for each step of the route, walked or found; the longest answer counts.
    """

    name = "position"
    says = "Steps and turns on a grid: where you end, the way back, or every shortest route past what is in the way."
    answer_shape = (
        "{ends: D4, facing: right, degrees: 90} (degrees turned in all), then {back: [steps]}; or for a goal "
        "{route: [steps], squares: [names]}"
    )
    practises: ClassVar[dict[str, str]] = {
        "1NPV-1": "squares counted on, forward and back",
        "1AS-1": "one number of squares made from several stretches",
    }
    tasks = (FollowRoute, FindRoutes)
    example = """\
kind: position
title: Limpet's ways home
cast:
  limpet: {feet: 1}
grid: [5, 4]
start: A1
facing: up
goal: D3
blocked: [B2]
answers: 4
years: {1: {}, 3: {}}
"""

    def schema_for(self, raw: Mapping[str, Any]) -> type[GridTask]:
        """By whether there is a goal."""
        return schema_for(raw)

    def solve(self, fields: GridTask, context: Context) -> Solution[GridAnswer]:
        """Where the route ends, then the way back if asked for; or every shortest route, up before right first."""
        return solve(fields, context)

    def versions(self, fields: GridTask, context: Context, year: YearLimits) -> Iterator[tuple[GridTask, Context, str]]:
        """The same grid with turns said as the year says them; for a younger year also a shorter route."""
        return versions_of(fields, context, year)


KIND = Position()
