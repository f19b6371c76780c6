"""An activity in a few lines for an adult: what it asks, and its first answers."""

from __future__ import annotations

from typing import Any

from .sheet_context import SheetActivity
from .words import runs

_MOST_ANSWERS = 6


def in_brief(activity: SheetActivity) -> dict[str, Any]:
    """The task of an activity and its answers, as briefly as they can be said; ``more`` is how many are left out."""
    solution = activity.own
    answers = [runs(answer.says.removesuffix(".")) for answer in solution.answers]  # they stand in one line
    return {
        "title": runs(activity.title),
        "stop": "" if activity.title.endswith((".", "?", "!")) else ".",
        "ask": runs(solution.task.ask),
        "answers": answers[:_MOST_ANSWERS],
        "more": max(0, len(answers) - _MOST_ANSWERS),
        "none": runs(solution.note) if not answers else [],
    }
