"""Which of some cards is nearest to a number; several may be as near."""

from __future__ import annotations

from collections.abc import Iterable

from ...activities.nearest.tasks import Nearest, NearestTask
from ...activities.worked import Worked
from .board import Board
from .pieces import pick


def boards(worked: Worked[NearestTask, Nearest]) -> Iterable[Board]:
    """One board, on which all that are nearest are laid."""
    solution = worked.solution
    choices = (line.parts[0].strip().replace("-", "−") for line in solution.task.lines)
    yield pick("nearest", choices, [answer.value.choice for answer in solution.answers])
