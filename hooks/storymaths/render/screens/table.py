"""The kinds a class can do together on its screen, and how the boards of each are made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from ...activities.work_out import WorkedOut
from . import balance, bonds, chart, clock, money, number_sentence, order, sequence, share, sort
from .board import Board

PLAYED: Mapping[str, Callable[[WorkedOut], Iterable[Board]]] = {
    "balance": balance.boards,
    "bonds": bonds.boards,
    "chart": chart.boards,
    "clock": clock.boards,
    "money": money.boards,
    "number-sentence": number_sentence.boards,
    "order": order.boards,
    "sequence": sequence.boards,
    "share": share.boards,
    "sort": sort.boards,
}


def boards_of(worked: WorkedOut) -> list[Board]:
    """The boards of an activity, in order; none for a kind not played, or one that could not be worked out."""
    if worked.kind is None or worked.solution is None or worked.kind.name not in PLAYED:
        return []
    return [board for board in PLAYED[worked.kind.name](worked) if board.answers]
