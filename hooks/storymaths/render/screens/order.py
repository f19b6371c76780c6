"""A row of places to put everybody in order; those that are equal share a place."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from ...activities.order.tasks import OrderFound, OrderTask
from ...activities.ordinals import ordinal
from ...activities.worked import Worked
from .board import Board, Piece, Place, keyed
from .pieces import cast, ids_by_name


def boards(worked: Worked[OrderTask, OrderFound]) -> Iterable[Board]:
    """One row."""
    characters = worked.context.characters
    ids = ids_by_name(characters)
    found = [[[ids[name] for name in equal] for equal in answer.value.order] for answer in worked.solution.answers]
    yield in_a_row(cast(characters, worked.solution.task.shows), found)


def ranked(order: Sequence[str], together: Sequence[Sequence[str]]) -> Board:
    """A row for cards with words; those that are written alike or belong together share a place."""
    places: list[list[Piece]] = []
    for number, words in enumerate(order):
        one, last = Piece(f"card-{number}", words), places[-1][-1].name if places else None
        if words == last or any(words in some and last in some for some in together):
            places[-1].append(one)
        else:
            places.append([one])
    pieces = sorted((one for place in places for one in place), key=lambda one: one.name)
    return in_a_row(pieces, [[[one.id for one in place] for place in places]])


def in_a_row(pieces: Sequence[Piece], found: Sequence[Sequence[Sequence[str]]]) -> Board:
    """A row with as many places as pieces; each order found is a list of those that stand together."""
    places = tuple(Place(f"place-{n}", ordinal(n)) for n in range(1, len(pieces) + 1))
    ways = [[{place.id: equal for place, equal in zip(places, order, strict=False)}] for order in found]
    return Board("slots", "", tuple(pieces), places, keyed(places, ways, False), empty_matters=False)
