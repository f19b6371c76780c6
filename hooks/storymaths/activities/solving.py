"""An activity solved by its kind, whose own failings become a problem an author can report."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from ..model.activity import Context, Solution
from ..model.year import YearLimits
from .kind import ActivityFields, Kind, Unsolvable


def solve(kind: Kind[Any], fields: ActivityFields, context: Context) -> Solution:
    """Every answer. Raises ``Unsolvable``, also for data on which the kind itself fails."""
    try:
        solution = kind.solve(fields, context)
    except Unsolvable:
        raise
    except Exception as error:
        # A kind that fails on some data is a fault in the kind; the author still gets a report of every page.
        said = f"{type(error).__name__}: {error}"[:200]
        raise Unsolvable(
            (),
            f"The kind {kind.name} failed on this activity ({said}).",
            "change the numbers, and tell the developers.",
        ) from error
    return with_slips_of(context.year, solution)


def with_slips_of(year: YearLimits, solution: Solution) -> Solution:
    """The solution without its likely slip where the year writes nothing: slips are those of working out, and who only
    lays things out makes others, which the author knows."""
    return solution if year.writes else replace(solution, likely_error=None)
