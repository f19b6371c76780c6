"""Position: routes on a grid, followed, turned back, or found, with steps forward and turns."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, ClassVar

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Text
from ...model.year import YearLimits
from ..kind import ActivityFields, Kind, Unsolvable
from ..saying import counted
from .grid_find import find
from .grid_follow import follow
from .grid_journey import Journey
from .grid_moves import Saying, Stand
from .grid_squares import Facing, grid_of, square_of


class PositionFields(ActivityFields):
    """A grid with a ``route`` to follow, or a ``goal`` to find every shortest route to."""

    grid: tuple[Annotated[int, Field(strict=True)], Annotated[int, Field(strict=True)]]
    """Columns and rows, in squares."""
    start: Text = "A1"
    """The square to start from: a letter for the column, a number for the row, from the bottom left."""
    facing: Facing = "up"
    """The way faced at first, on the page."""
    blocked: Annotated[tuple[Text, ...], Field(max_length=400)] = ()
    """Squares nobody may enter."""
    route: Annotated[tuple[Text, ...], Field(max_length=40)] = ()
    """Steps to follow, such as ``forward 3``, ``quarter turn right``, ``half turn``, ``back 1``."""
    back: bool = False
    """With a route: whether the way back is asked for too."""
    goal: Text | None = None
    """The square to get to by every shortest route."""
    turns: Saying | None = None
    """How turns are said; when left out, left and right to Year 1, clockwise from Year 2, degrees from Year 5."""


class Position(Kind[PositionFields]):
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
    fields = PositionFields
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

    def solve(self, fields: PositionFields, context: Context) -> Solution:
        """Where the route ends, then the way back if asked for; or every shortest route, up before right first."""
        if len(context.characters) > context.caps.characters:
            raise Unsolvable(("cast",), "There are too many characters.", "name the one who moves.")
        if bool(fields.route) == (fields.goal is not None):
            raise Unsolvable(
                ("route",), "Either a route to follow or a goal to find is needed.", "give one of the two."
            )
        grid = grid_of(fields.grid, fields.blocked, context.caps.cells)
        start = Stand(square_of(fields.start, grid, ("start",)), fields.facing)
        journey = Journey(context, grid, start, fields.turns or _saying(context.year.year), fields.ask)
        return find(journey, fields.goal) if fields.goal is not None else follow(journey, fields.route, fields.back)

    def versions(
        self, fields: PositionFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[PositionFields, Context, str]]:
        """The same grid with turns said as the year says them; for a younger year also a shorter route."""
        own = fields.turns or _saying(context.year.year)
        if fields.turns or own == _saying(year.year):
            yield fields, context, "The same grid."
        spoken = fields.model_copy(update={"turns": _saying(year.year)})
        yield spoken, context, f"Turns are said with {_saying(year.year)}."
        if year.year < context.year.year:
            for steps in range(len(fields.route) - 1, 0, -1):
                yield (
                    spoken.model_copy(update={"route": fields.route[:steps]}),
                    context,
                    f"Only the first {counted(steps, 'steps')}.",
                )


def _saying(year: int) -> Saying:
    return "left and right" if year < 2 else "clockwise" if year < 5 else "degrees"


KIND = Position()
