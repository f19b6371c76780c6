"""Shapes for another year: only what is counted there; of a shape to be made, more or less is drawn in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from ...model.activity import Context
from ...model.year import YearLimits
from .say import name_properties
from .tasks import CountTask, Drawn, MakeTask, ShapeTask

_HELPS: Mapping[Drawn, str] = {
    "pieces": "One way is drawn in, to lay the pieces on.",
    "squares": "The squares inside it are drawn.",
    "outline": "Only its outline is drawn.",
}
"""What is drawn inside the shape to be made, from the most help to the least."""


def versions_of(task: ShapeTask, context: Context, year: YearLimits) -> Iterator[tuple[ShapeTask, Context, str]]:
    """The same shapes last."""
    match task:
        case CountTask(count=count):
            known = tuple(prop for prop in count if prop in year.practice.shape.counts)
            if known and known != count:
                yield task.with_count(known), context, f"Only {name_properties(known)} are counted."
        case MakeTask(drawn=drawn):
            helps = list(_HELPS)
            years_on = year.year - context.year.year
            step = helps.index(drawn) + (years_on > 0) - (years_on < 0)
            fitting = helps[min(max(step, 0), len(helps) - 1)]
            if fitting != drawn:
                yield task.with_drawn(fitting), context, _HELPS[fitting]
    yield task, context, "The same shapes."
