"""Things to deal out into equal groups, or the numbers of groups and in each to choose."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from ...activities.work_out import WorkedOut
from ...model.activity import Answer
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, characters_of, one_card, with_nearby

_MOST_COUNTERS, _MOST_GROUPS = 30, 12


def boards(worked: WorkedOut) -> Iterable[Board]:
    """Counters and groups where there are few enough, else cards."""
    assert worked.solution is not None
    answers, fields = worked.solution.answers, worked.fields
    if not answers:
        return
    first = answers[0].data
    total = getattr(fields, "total", None)
    if "pile" in first:
        yield _which_piles(worked, answers)
    elif "gets" in first:
        yield _dealt(worked, first["gets"], int(first.get("left", 0)))
    elif isinstance(total, int) and len(answers) > 1:
        yield _every_way(total, answers)
    elif isinstance(total, int) and total <= _MOST_COUNTERS and first["groups"] <= _MOST_GROUPS:
        groups = {f"group {n}": first["each"] for n in range(1, first["groups"] + 1)}
        yield _dealt(worked, groups, int(first["left"]))
    else:
        asked = "total" if "total" in first else "each" if getattr(fields, "among", None) else "groups"
        yield one_card("", first[asked], with_nearby([first[asked]]))


def _dealt(worked: WorkedOut, gets: Mapping[str, int], left: int) -> Board:
    characters = {character.id: character for character in characters_of(worked)}
    places = tuple(
        Place(slot.replace(" ", "-"), characters[slot].name if slot in characters else slot) for slot in gets
    )
    total = sum(gets.values()) + left
    if total > _MOST_COUNTERS:
        return _numbers_for(places, gets)
    things = str(getattr(worked.fields, "things", None) or "counters")
    counter = Piece("counter", things, copies=total)
    way = {place.id: ["counter"] * number for place, number in zip(places, gets.values(), strict=True)}
    return Board("rings", "", (counter,), places, keyed(places, [[way]]))


def _numbers_for(places: Sequence[Place], gets: Mapping[str, int]) -> Board:
    one_each = tuple(Place(place.id, place.name, 1) for place in places)
    way = {place.id: [card_id(number)] for place, number in zip(one_each, gets.values(), strict=True)}
    return Board("rows", "", with_nearby(gets.values(), None), one_each, keyed(one_each, [[way]]))


def _every_way(total: int, answers: Sequence[Answer]) -> Board:
    places = (Place("groups", "how many groups", 1), Place("each", "how many in each", 1))
    ways = [[{"groups": [card_id(one.data["groups"])], "each": [card_id(one.data["each"])]}] for one in answers]
    used = [number for one in answers for number in (one.data["groups"], one.data["each"])]
    left = {one.data["left"] for one in answers}
    after = "" if left == {0} else " and what is left over"
    between = (f"{total} = ", " × ", after)
    return Board("sentence", "", with_nearby(used, None), places, keyed(places, ways), between=between)


def _which_piles(worked: WorkedOut, answers: Sequence[Answer]) -> Board:
    piles = [str(pile) for pile in getattr(worked.fields, "piles", ())]
    who: dict[str, Any] = {str(one.data["pile"]): one.data.get("who") for one in answers}
    names = {character.id: character for character in characters_of(worked)}
    if not piles:
        ids = [one for one in who.values() if one]
        pieces = tuple(Piece(character.id, character.name, character.picture) for character in names.values())
    else:
        ids = [card_id(pile) for pile in who]
        pieces = tuple(card(pile) for pile in piles)
    others = [piece.id for piece in pieces if piece.id not in ids]
    places = (Place("can", "can be shared so"), Place("cannot", "cannot"))
    return Board("rings", "", pieces, places, keyed(places, [[{"can": ids, "cannot": others}]]))
