"""A row of places to put everybody in order; those that are equal share a place."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...activities.ordinals import ordinal
from ...activities.work_out import WorkedOut
from .board import Board, Piece, Place, keyed
from .pieces import cast, characters_of, ids_by_name


def boards(worked: WorkedOut) -> Iterable[Board]:
    """One row."""
    assert worked.solution is not None
    characters, ids = characters_of(worked), ids_by_name(characters_of(worked))
    found = [[[ids[name] for name in equal] for equal in answer.data["order"]] for answer in worked.solution.answers]
    yield in_a_row(cast(characters, worked.solution.task.shows), found)


def in_a_row(pieces: Sequence[Piece], found: Sequence[Sequence[Sequence[str]]]) -> Board:
    """A row with as many places as pieces; each order found is a list of those that stand together."""
    places = tuple(Place(f"place-{n}", ordinal(n)) for n in range(1, len(pieces) + 1))
    ways = [[{place.id: equal for place, equal in zip(places, order, strict=False)}] for order in found]
    return Board("slots", "", tuple(pieces), places, keyed(places, ways, False), empty_matters=False)
