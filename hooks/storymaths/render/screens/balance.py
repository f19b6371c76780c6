"""A balance to load together: the beam tilts by what is really on it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from ...activities.work_out import WorkedOut
from .board import Board, Place, Placing, keyed
from .pieces import cast, characters_of, ids_by_name

_PLACES = (Place("left", "the left basket"), Place("right", "the right basket"))


def boards(worked: WorkedOut) -> Iterable[Board]:
    """One beam with two baskets. Either way round is the same answer."""
    assert worked.solution is not None
    assert worked.fields is not None
    characters, ids = characters_of(worked), ids_by_name(characters_of(worked))
    fact = worked.fields.fact or "mass"
    pieces = tuple(
        replace(piece, worth=int(character.facts[fact]))
        for piece, character in zip(cast(characters, worked.solution.task.shows), characters, strict=True)
    )
    ways = []
    for answer in worked.solution.answers:
        left, right = ([ids[name] for name in answer.data[side]] for side in ("left", "right"))
        ways.append([_loaded(left, right), _loaded(right, left)])
    yield Board("beam", "", pieces, _PLACES, keyed(_PLACES, ways))


def _loaded(left: list[str], right: list[str]) -> Placing:
    return {"left": left, "right": right}
