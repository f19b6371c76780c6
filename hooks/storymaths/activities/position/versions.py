"""A journey on a grid for another year: turns said as it says them, and for a younger one fewer steps."""

from __future__ import annotations

from collections.abc import Iterator

from ...model.activity import Context
from ...model.year import YearLimits
from ..saying import counted
from .tasks import FollowRoute, GridTask


def versions_of(task: GridTask, context: Context, year: YearLimits) -> Iterator[tuple[GridTask, Context, str]]:
    """The same grid first where turns are said alike."""
    usual = year.practice.position.turns
    if task.turns or usual == context.year.practice.position.turns:
        yield task, context, "The same grid."
    spoken = task.with_turns(usual)
    yield spoken, context, f"Turns are said with {usual}."
    if isinstance(spoken, FollowRoute) and year.year < context.year.year:
        for steps in range(len(spoken.route) - 1, 0, -1):
            yield spoken.with_first(steps), context, f"Only the first {counted(steps, 'steps')}."
