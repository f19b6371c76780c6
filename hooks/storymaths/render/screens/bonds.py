"""A whole and its parts: put the parts in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from itertools import permutations
from typing import Any

from ...activities.work_out import WorkedOut
from .board import Board, Place, keyed
from .pieces import card, card_id, cast, characters_of

_MOST_CARDS = 21


def boards(worked: WorkedOut) -> Iterable[Board]:
    """One board with a place for each part, or one for each whole where there are several."""
    assert worked.solution is not None
    answers = worked.solution.answers
    for whole in dict.fromkeys(answer.data["whole"] for answer in answers):
        mine = [answer.data for answer in answers if answer.data["whole"] == whole]
        yield _whole(worked, whole, mine)


def _whole(worked: WorkedOut, whole: int, found: Sequence[Mapping[str, Any]]) -> Board:
    who = "who" in found[0]
    parts = [[str(one) for one in data["who" if who else "parts"]] for data in found]
    places = tuple(Place(f"part-{n}", f"part {n}", 1) for n in range(1, len(parts[0]) + 1))
    turned = getattr(worked.fields, "order", "same") == "same"
    ways = []
    for row in parts:
        ids = row if who else [card_id(one) for one in row]
        orders = dict.fromkeys(permutations(ids)) if turned else [tuple(ids)]
        ways.append([{place.id: [one] for place, one in zip(places, order, strict=True)} for order in orders])
    if who:
        assert worked.solution is not None
        pieces = cast(characters_of(worked), worked.solution.task.shows)
    else:
        used = {int(one) for row in parts for one in row}
        some = range(whole + 1) if whole < _MOST_CARDS else sorted(used)
        pieces = tuple(card(number, None) for number in sorted({*some, *used}))
    between = (f"{whole} = ", *[" + "] * (len(places) - 1), "")
    return Board("sentence", "", pieces, places, keyed(places, ways), between=between)
