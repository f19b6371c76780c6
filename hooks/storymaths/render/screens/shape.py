"""Shapes to sort: the names go into the diagram."""

from __future__ import annotations

from collections.abc import Iterable

from ...activities.shape.tasks import ShapeAnswer, ShapeTask
from ...activities.sort.tasks import Placing
from ...activities.worked import Worked
from .board import Board
from .pieces import card
from .sort import lay_out


def boards(worked: Worked[ShapeTask, ShapeAnswer]) -> Iterable[Board]:
    """One board for a sorting; none for what is counted, drawn or built."""
    for answer in worked.solution.answers:
        if isinstance(answer.value, Placing):
            pieces = [card(shape) for region in answer.value.regions.values() for shape in region]
            yield lay_out(worked.solution.task, pieces, answer.value)
