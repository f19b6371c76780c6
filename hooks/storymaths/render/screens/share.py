"""Things to deal out into equal groups, or the numbers of groups and in each to choose."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from ...activities.share.calculation import count_all
from ...activities.share.tasks import Groups, Parts, Pile, PilesTask, ShareAnswer, Shares, ShareTask, Together
from ...activities.worked import Worked
from .board import Board, Piece, Place, keyed
from .pieces import card, card_id, numbers_for, one_card, sort_in_two, with_nearby

ShareWorked = Worked[ShareTask, ShareAnswer]
_MOST_COUNTERS, _MOST_GROUPS = 30, 12


def boards(worked: ShareWorked) -> Iterable[Board]:
    """Counters and groups where there are few enough, else cards."""
    values = [answer.value for answer in worked.solution.answers]
    match values:
        case [Pile(), *_]:
            yield _which_piles(worked, [value for value in values if isinstance(value, Pile)])
        case [Parts() as shares]:
            yield _dealt(worked, shares.gets, shares.left)
        case [Shares() as shares] if shares.gets:
            yield _dealt(worked, shares.gets, shares.left)
        case [Together() as together]:
            yield one_card("", together.total, with_nearby([together.total]))
        case [Groups() as one] if count_all(one) <= _MOST_COUNTERS and one.groups < _MOST_GROUPS:
            yield _grouped(worked, one)
        case [Shares() as one] if count_all(one) <= _MOST_COUNTERS and one.groups <= _MOST_GROUPS:
            yield _dealt(worked, {f"group {n}": one.each for n in range(1, one.groups + 1)}, one.left)
        case [Groups() | Shares() as one]:
            asked = one.each if isinstance(one, Shares) else one.groups
            yield one_card("", asked, with_nearby([asked]))
        case [Groups(), *_]:
            yield _every_way([value for value in values if isinstance(value, Groups)])


def _grouped(worked: ShareWorked, one: Groups) -> Board:
    """Groups of one size, with places to spare: how many groups there are is what is asked."""
    places = tuple(Place(f"group-{n}", f"group {n}") for n in range(1, one.groups + 2))
    way = {place.id: ["counter"] * one.each for place in places[: one.groups]}
    answers = keyed(places, [[way]], empty_matters=False)
    return Board("rings", "", (_counter(worked, count_all(one)),), places, answers, empty_matters=False)


def _counter(worked: ShareWorked, copies: int) -> Piece:
    return Piece("counter", worked.fields.things or "counters", copies=copies, look="counter")


def _dealt(worked: ShareWorked, gets: Mapping[str, int], left: int) -> Board:
    names = {character.id: character.name for character in worked.context.characters}
    places = tuple(Place(slot.replace(" ", "-"), names.get(slot, slot)) for slot in gets)
    total = sum(gets.values()) + left
    if total > _MOST_COUNTERS:
        return numbers_for("", {names.get(slot, slot): number for slot, number in gets.items()})
    way = {place.id: ["counter"] * number for place, number in zip(places, gets.values(), strict=True)}
    return Board("rings", "", (_counter(worked, total),), places, keyed(places, [[way]]))


def _every_way(found: Sequence[Groups]) -> Board:
    places = (Place("groups", "how many groups", 1), Place("each", "how many in each", 1))
    ways = [[{"groups": [card_id(one.groups)], "each": [card_id(one.each)]}] for one in found]
    used = [number for one in found for number in (one.groups, one.each)]
    between = (f"{count_all(found[0])} = ", " × ", " and what is left over" if found[0].left else "")
    return Board("sentence", "", with_nearby(used, None), places, keyed(places, ways), between=between)


def _which_piles(worked: ShareWorked, found: Sequence[Pile]) -> Board:
    if isinstance(worked.fields, PilesTask):
        pieces = tuple(card(str(pile)) for pile in dict.fromkeys(worked.fields.piles))
        ids = list(dict.fromkeys(card_id(one.pile) for one in found))
    else:
        pieces = tuple(Piece(one.id, one.name, one.picture) for one in worked.context.characters)
        ids = [one.who for one in found if one.who]
    return sort_in_two("", pieces, ids, "with none left over", "with some left over")
