"""The board of a question with other numbers, which a class asks for when it has played its own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...activities.bending import Version
from ...activities.worked import AnyWorked, Worked
from .board import Board
from .table import boards_of


@dataclass(frozen=True, slots=True)
class OtherBoard:
    """A question in one further set of numbers, as it is played."""

    ask: str
    board: Board
    answers: tuple[str, ...]
    """For the adult."""


def other_boards(done: AnyWorked, others: Sequence[Version], own: Sequence[Board], number: int) -> Iterator[OtherBoard]:
    """The question of this number in the sets that have as many, each played in the same way."""
    for one in others:
        boards = boards_of(Worked(done.kind, one.fields, one.context, one.solution, {}))
        if [board.layout for board in boards] == [board.layout for board in own]:
            yield OtherBoard(
                one.solution.task.ask, boards[number], tuple(answer.says for answer in one.solution.answers)
            )
