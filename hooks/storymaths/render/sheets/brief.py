"""An activity in a few lines for an adult: what it asks, and its first answers."""

from __future__ import annotations

from typing import Any

from .sheet_context import SheetActivity
from .words import ended, runs

_MOST_ANSWERS = 6


def in_brief(activity: SheetActivity) -> dict[str, Any]:
    """The task of an activity and its answers, as briefly as they can be said; ``more`` is how many are left out."""
    solution = activity.own
    *before, last = [answer.says.removesuffix(".") for answer in solution.answers[:_MOST_ANSWERS]] or [""]
    return {
        "title": runs(ended(activity.title)),
        "ask": runs(solution.task.ask),
        "answers": [runs(says) for says in (*before, ended(last))] if last else [],  # they stand in one line
        "more": max(0, len(solution.answers) - _MOST_ANSWERS),
        "none": runs(solution.note) if not solution.answers else [],
    }
