"""Amounts to read off, to add, to put in order and to compare: a card for each answer, or a row."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from ...activities.measure.amount import unit_name
from ...activities.measure.answers import AtMark, Compared, MeasureAnswer, Ordered, Total
from ...activities.measure.tasks import MeasureTask
from ...activities.saying import written
from ...activities.worked import Worked
from .board import Board
from .order import in_a_row
from .pieces import card, card_id, one_card, with_nearby

_MOST_PLACES = 3
_PLAYED = (AtMark, Total, Compared, Ordered)


def boards(worked: Worked[MeasureTask, MeasureAnswer]) -> Iterable[Board]:
    """A board for each answer that is one number or one order; none where any is of another sort."""
    values = [answer.value for answer in worked.solution.answers]
    if not all(isinstance(value, _PLAYED) for value in values):
        return
    for value in values:
        match value:
            case AtMark(arrow=arrow, reading=right, unit=unit):
                yield _number(f"Arrow {arrow}", right, unit)
            case Total(total=right, unit=unit):
                yield _number("", right, unit)
            case Compared(difference=right, unit=unit):
                yield _number("What is the difference?", right, unit)
            case Ordered():
                yield _row(value)


def _number(says: str, right: Fraction, unit: str) -> Board:
    if right.denominator == 1:
        numbers = [int(piece.name) for piece in with_nearby([int(right)])]
        whole = [card(_amount(str(number), unit, Fraction(number))) for number in numbers]
        return one_card(says, _amount(str(int(right)), unit, right), whole)
    near = sorted({right, *(right + step for step in (Fraction(1, 2), 1, -1, 10) if right + step > 0)})
    told = {number: _amount(written(number, _MOST_PLACES), unit, number) for number in near}
    return one_card(says, told[right], list(map(card, told.values())))


def _amount(says: str, unit: str, number: Fraction) -> str:
    return f"{says} {unit_name(unit, number)}" if unit else says


def _row(found: Ordered) -> Board:
    places = []
    for one in found.order:
        place = next((group for group in found.together if one in group), (one,))
        if one == place[0]:
            places.append(place)
    pieces = [card(one) for one in sorted(found.order)]
    return in_a_row(pieces, [[[card_id(one) for one in place] for place in places]])
