"""The kinds a class can do together on its screen, and how the boards of each are made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Generic

from ...activities import balance as balance_kind
from ...activities import bonds as bonds_kind
from ...activities import chart as chart_kind
from ...activities import clock as clock_kind
from ...activities import money as money_kind
from ...activities import number_sentence as number_sentence_kind
from ...activities import order as order_kind
from ...activities import sequence as sequence_kind
from ...activities import share as share_kind
from ...activities import sort as sort_kind
from ...activities.kind import F, Kind, V
from ...activities.work_out import WorkedOut
from ...activities.worked import AnyWorked, Worked
from . import balance, bonds, chart, clock, money, number_sentence, order, sequence, share, sort
from .board import Board


@dataclass(frozen=True, slots=True)
class Played(Generic[F, V]):
    """A kind with its boards, which are made of that kind's own tasks and answers."""

    kind: Kind[F, V]
    boards: Callable[[Worked[F, V]], Iterable[Board]]


_PLAYED: tuple[Played[Any, Any], ...] = (
    Played(balance_kind.KIND, balance.boards),
    Played(bonds_kind.KIND, bonds.boards),
    Played(chart_kind.KIND, chart.boards),
    Played(clock_kind.KIND, clock.boards),
    Played(money_kind.KIND, money.boards),
    Played(number_sentence_kind.KIND, number_sentence.boards),
    Played(order_kind.KIND, order.boards),
    Played(sequence_kind.KIND, sequence.boards),
    Played(share_kind.KIND, share.boards),
    Played(sort_kind.KIND, sort.boards),
)
PLAYED: Mapping[str, Played[Any, Any]] = {played.kind.name: played for played in _PLAYED}
"""By the name of the kind."""


def boards_of(worked: WorkedOut) -> list[Board]:
    """The boards of an activity, in order; none for a kind not played, or one that could not be worked out."""
    return [] if worked.done is None else boards_of_done(worked.done)


def boards_of_done(done: AnyWorked) -> list[Board]:
    """The same of one that could be worked out."""
    if done.kind.name not in PLAYED:
        return []
    return [board for board in PLAYED[done.kind.name].boards(done) if board.answers]
