"""Number sentences with unknowns: a card for each unknown that is asked for."""

from __future__ import annotations

from collections.abc import Iterable

from ...activities.unknowns.tasks import Found, UnknownsTask
from ...activities.worked import Worked
from .board import Board, Place, keyed
from .pieces import card_id, with_nearby


def boards(worked: Worked[UnknownsTask, Found]) -> Iterable[Board]:
    """One board. Ways that differ only in what is not asked are one answer."""
    asked = worked.fields.asked
    found = dict.fromkeys(tuple(answer.value.numbers[name] for name in asked) for answer in worked.solution.answers)
    if not found:
        return
    places = tuple(Place(f"unknown-{name}", name, 1) for name in asked)
    ways = [[{place.id: [card_id(number)] for place, number in zip(places, numbers, strict=True)}] for numbers in found]
    first, *others = asked
    between = (f"{first} = ", *(f", {name} = " for name in others), "")
    pieces = with_nearby([number for numbers in found for number in numbers], None)
    yield Board("sentence", "", pieces, places, keyed(places, ways), between=between)
