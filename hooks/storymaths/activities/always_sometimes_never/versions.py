"""A statement for another year: over a stretch of numbers that suits it, while the verdict stays the same."""

from __future__ import annotations

from collections.abc import Iterator

from ...model.activity import Context
from ...model.reference import ActivityCaps
from ...model.year import YearLimits
from ..kind import Unsolvable
from ..revalue import SAME_NUMBERS
from .cases_tried import try_all
from .statement import read_statement
from .tasks import JudgeTask, VerdictWord


def versions_of(task: JudgeTask, context: Context, year: YearLimits) -> Iterator[tuple[JudgeTask, Context, str]]:
    """The same numbers first in its own year and last in another; between them, stretches of the year."""
    if year.year == context.year.year:
        yield task, context, SAME_NUMBERS
    verdict = _find_verdict(task, context.caps)
    for top in year.practice.always_sometimes_never.up_to:
        changed = task.with_top(top)
        if verdict and _find_verdict(changed, context.caps) == verdict:
            yield changed, context, f"Numbers up to {top}."
    yield task, context, SAME_NUMBERS


def _find_verdict(task: JudgeTask, caps: ActivityCaps) -> VerdictWord | None:
    """None where it cannot be judged over these numbers."""
    try:
        return try_all(read_statement(task, caps), caps).verdict
    except Unsolvable:
        return None
