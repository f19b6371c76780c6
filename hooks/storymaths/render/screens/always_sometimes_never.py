"""A statement to judge: always, sometimes or never."""

from __future__ import annotations

from collections.abc import Iterable
from typing import get_args

from ...activities.always_sometimes_never.tasks import JudgeTask, Verdict, VerdictWord
from ...activities.worked import Worked
from .board import Board
from .pieces import card, one_card


def boards(worked: Worked[JudgeTask, Verdict]) -> Iterable[Board]:
    """One board with the three cards under the statement."""
    words = [card(word) for word in get_args(VerdictWord)]
    for answer in worked.solution.answers:
        yield one_card(str(worked.solution.task.lines[0]), answer.value.verdict, words)
