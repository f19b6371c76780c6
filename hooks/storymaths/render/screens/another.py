"""An activity's boards with other numbers, which a class asks for when it has played its own."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from ...activities.work_out import WorkedOut
from ...activities.worked import Worked
from .board import Board
from .table import boards_of_done


@dataclass(frozen=True, slots=True)
class OtherBoards:
    """One further set of numbers as it is played."""

    ask: str
    boards: tuple[Board, ...]
    answers: tuple[str, ...]
    """For the adult."""


def other_boards(worked: WorkedOut, own: tuple[Board, ...]) -> Iterator[OtherBoards]:
    """Those that are played on as many boards of the same layout; what stands beside the boards must not change."""
    done, solution = worked.done, worked.solution
    if done is None or solution is None or not own or solution.task.table:
        return
    for one in worked.other_sets:
        boards = tuple(boards_of_done(Worked(done.kind, one.fields, one.context, one.solution, {})))
        if [board.layout for board in boards] == [board.layout for board in own]:
            says = tuple(answer.says for answer in one.solution.answers)
            yield OtherBoards(one.solution.task.ask, boards, says)
