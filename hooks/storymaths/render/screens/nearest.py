"""Which of some cards is nearest to a number; several may be as near."""

from __future__ import annotations

from collections.abc import Iterable

from ...activities.nearest.tasks import Nearest, NearestTask
from ...activities.worked import Worked
from .board import Board, Place, keyed
from .pieces import card, card_id


def boards(worked: Worked[NearestTask, Nearest]) -> Iterable[Board]:
    """One board, on which all that are nearest are laid."""
    pieces = tuple(
        map(card, dict.fromkeys(line.parts[0].strip().replace("-", "−") for line in worked.solution.task.lines))
    )
    place = Place("nearest", "nearest")
    right = [card_id(answer.value.choice) for answer in worked.solution.answers]
    yield Board("rings", "", pieces, (place,), keyed((place,), [[{"nearest": right}]]))
