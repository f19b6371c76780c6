"""The kinds a class can do together on its screen, and how the boards of each are made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Generic

from ...activities import always_sometimes_never as always_sometimes_never_kind
from ...activities import angle as angle_kind
from ...activities import balance as balance_kind
from ...activities import bonds as bonds_kind
from ...activities import chart as chart_kind
from ...activities import clock as clock_kind
from ...activities import compare as compare_kind
from ...activities import coordinates as coordinates_kind
from ...activities import fraction as fraction_kind
from ...activities import measure as measure_kind
from ...activities import money as money_kind
from ...activities import nearest as nearest_kind
from ...activities import number_sentence as number_sentence_kind
from ...activities import order as order_kind
from ...activities import position as position_kind
from ...activities import sequence as sequence_kind
from ...activities import shape as shape_kind
from ...activities import share as share_kind
from ...activities import sort as sort_kind
from ...activities import unknowns as unknowns_kind
from ...activities.kind import F, Kind, V
from ...activities.worked import AnyWorked, Worked
from . import (
    always_sometimes_never,
    angle,
    balance,
    bonds,
    chart,
    clock,
    compare,
    coordinates,
    fraction,
    measure,
    money,
    nearest,
    number_sentence,
    order,
    position,
    sequence,
    shape,
    share,
    sort,
    unknowns,
)
from .board import Board


@dataclass(frozen=True, slots=True)
class Played(Generic[F, V]):
    """A kind with its boards, which are made of that kind's own tasks and answers."""

    kind: Kind[F, V]
    boards: Callable[[Worked[F, V]], Iterable[Board]]


_PLAYED: tuple[Played[Any, Any], ...] = (
    Played(always_sometimes_never_kind.KIND, always_sometimes_never.boards),
    Played(angle_kind.KIND, angle.boards),
    Played(balance_kind.KIND, balance.boards),
    Played(bonds_kind.KIND, bonds.boards),
    Played(chart_kind.KIND, chart.boards),
    Played(clock_kind.KIND, clock.boards),
    Played(compare_kind.KIND, compare.boards),
    Played(coordinates_kind.KIND, coordinates.boards),
    Played(fraction_kind.KIND, fraction.boards),
    Played(measure_kind.KIND, measure.boards),
    Played(money_kind.KIND, money.boards),
    Played(nearest_kind.KIND, nearest.boards),
    Played(number_sentence_kind.KIND, number_sentence.boards),
    Played(order_kind.KIND, order.boards),
    Played(position_kind.KIND, position.boards),
    Played(sequence_kind.KIND, sequence.boards),
    Played(shape_kind.KIND, shape.boards),
    Played(share_kind.KIND, share.boards),
    Played(sort_kind.KIND, sort.boards),
    Played(unknowns_kind.KIND, unknowns.boards),
)
PLAYED: Mapping[str, Played[Any, Any]] = {played.kind.name: played for played in _PLAYED}
"""By the name of the kind."""


def boards_of(done: AnyWorked) -> list[Board]:
    """The boards of an activity, in order; none for a kind not played."""
    if done.kind.name not in PLAYED:
        return []
    return [board for board in PLAYED[done.kind.name].boards(done) if board.answers]
