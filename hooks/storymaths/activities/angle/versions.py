"""Angles for another year: the same ones, or ones that are easier to add and take away."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from ...model.activity import Context
from ...model.year import YearLimits
from ..revalue import SAME_NUMBERS
from .tasks import AngleTask, FindAround, FindInShape

Version = tuple[AngleTask, Context, str]


def versions_of(task: AngleTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """The same first; then what is known to the next five or ten degrees."""
    there = replace(context, year=year)
    yield task, there, SAME_NUMBERS
    if isinstance(task, (FindAround, FindInShape)):
        for step in (5, 10):
            known = tuple(max(step, round(one / step) * step) for one in task.known)
            if known != task.known and sum(known) < task.total:
                yield task.with_known(known), there, f"Angles in steps of {step}°."
