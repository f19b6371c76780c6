"""A balance to load together: the beam tilts by what is really on it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from ...activities.balance.tasks import BalanceTask, LevelTeams, Team
from ...activities.worked import Worked
from .board import Board, Place, Placing, keyed
from .pieces import cast

_PLACES = (Place("left", "the left basket"), Place("right", "the right basket"))


def boards(worked: Worked[BalanceTask, LevelTeams]) -> Iterable[Board]:
    """One beam with two baskets. Either way round is the same answer."""
    characters, shows = worked.context.characters, worked.solution.task.shows
    pieces = tuple(
        replace(piece, worth=int(shown.number or 0))
        for piece, shown in zip(cast(characters, shows), shows, strict=True)
    )
    ways = [answer.value for answer in worked.solution.answers]
    either = [[_load(way.left, way.right), _load(way.right, way.left)] for way in ways]
    yield Board("beam", "", pieces, _PLACES, keyed(_PLACES, either))


def _load(left: Team, right: Team) -> Placing:
    return {"left": [one.id for one in left], "right": [one.id for one in right]}
