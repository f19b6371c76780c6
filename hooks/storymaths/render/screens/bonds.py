"""A whole and its parts: put in what is asked for, the parts or the whole."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import permutations

from ...activities.bonds.say import says_whole
from ...activities.bonds.tasks import Bond, BondsTask, MissingTask, SplitTask, WholeTask
from ...activities.worked import Worked
from .board import Board, Place, keyed
from .pieces import card, card_id, cast, with_nearby

_MOST_CARDS = 21


def boards(worked: Worked[BondsTask, Bond]) -> Iterable[Board]:
    """One board with a place for each part, or for the whole where that is asked for; in words before the year's signs."""
    bonds = [answer.value for answer in worked.solution.answers]
    if not bonds:
        return
    task, whole = worked.fields, bonds[0].whole
    equals, plus = (" = ", " + ") if says_whole(worked.context.year) else (" is ", " and ")
    if isinstance(task, WholeTask):
        place = Place("whole", "whole", 1)
        answer = keyed((place,), [[{place.id: [card_id(whole)]}]])
        given = plus.join(map(str, bonds[0].parts))
        around = ("", f"{equals}{given}") if says_whole(worked.context.year) else (f"{given}{equals}", "")
        yield Board("sentence", "", with_nearby([whole]), (place,), answer, between=around)
        return
    places = tuple(Place(f"part-{n}", f"part {n}", 1) for n in range(1, len(bonds[0].parts) + 1))
    turned = not isinstance(task, (SplitTask, MissingTask)) or task.order == "same"
    ways = []
    for bond in bonds:
        ids = bond.who or tuple(card_id(part) for part in bond.parts)
        orders = dict.fromkeys(permutations(ids)) if turned else [ids]
        ways.append([{place.id: [one] for place, one in zip(places, order, strict=True)} for order in orders])
    if bonds[0].who:
        pieces = cast(worked.solution.task.characters, worked.solution.task.shows)
    else:
        used = {part for bond in bonds for part in bond.parts}
        some = range(whole + 1) if whole < _MOST_CARDS else ()
        pieces = tuple(card(number, None) for number in sorted({*some, *used}))
    between = (f"{whole}{equals}", *[plus] * (len(places) - 1), "")
    yield Board("sentence", "", pieces, places, keyed(places, ways), between=between)
