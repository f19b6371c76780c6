"""Amounts to read off, to add, to change, to put in order and to compare: a card for each answer, or a row."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from ...activities.measure.amount import of_many, unit_name
from ...activities.measure.answers import (
    AtMark,
    BetweenMarks,
    ChosenUnit,
    Compared,
    Converted,
    Levelled,
    MeasureAnswer,
    Ordered,
    Parts,
    Perimeter,
    Rate,
    Reached,
    Total,
    UnitCount,
    Volume,
)
from ...activities.measure.tasks import ChooseUnit, MeasureTask
from ...activities.saying import capital, written
from ...activities.worked import Worked
from . import weighing
from .board import Board
from .order import ranked
from .pieces import card, nearby, numbers_for, one_card, one_each

_MOST_PLACES, _MOST_OTHERS = 3, 8


def boards(worked: Worked[MeasureTask, MeasureAnswer]) -> Iterable[Board]:
    """A beam where something is weighed; else a board for each answer, or one for answers that belong together."""
    values = [answer.value for answer in worked.solution.answers]
    lines = worked.solution.task.lines
    yield from weighing.boards(worked)
    if counts := [value for value in values if isinstance(value, UnitCount)]:
        yield from _counts(counts)
    if isinstance(worked.fields, ChooseUnit):
        chosen = [value.unit for value in values if isinstance(value, ChosenUnit)]
        told = {line.parts[0].strip(): unit for line, unit in zip(lines, chosen, strict=True)}
        yield one_each("", told, [card(of_many(unit), None) for unit in worked.fields.units])
    for number, value in enumerate(values):
        match value:
            case AtMark(arrow=arrow, reading=right, unit=unit):
                yield _number(f"Arrow {arrow}", right, unit)
            case BetweenMarks():
                yield _between(value)
            case (
                Total(total=right, unit=unit)
                | Rate(amount=right, unit=unit)
                | Volume(volume=right, unit=unit)
                | Perimeter(perimeter=right, unit=unit)
            ):
                yield _number("", right, unit)
            case Compared(difference=right, unit=unit):
                yield _number("What is the difference?", right, unit)
            case Converted(number=right, unit=unit):
                yield _number(str(lines[number].parts[0]).rstrip("= "), right, unit)
            case Parts(parts=parts, unit=unit):
                told = {f"part {n}": _tell(part, unit) for n, part in enumerate(parts, 1)}
                near = dict.fromkeys(one for part in parts for one in _near(part, unit))
                cards = sorted({*told.values(), *list(near)[:_MOST_OTHERS]})
                yield one_each("", told, [card(one, None) for one in cards])
            case Ordered(order=order, together=together):
                yield ranked(order, together)
            case UnitCount() | Levelled() | Reached() | ChosenUnit():
                pass  # these have boards of their own


def _counts(found: Sequence[UnitCount]) -> Iterator[Board]:
    """A board for each unit; what is left over is asked where anything ever is."""
    left = any(one.left for one in found)
    for one in found:
        asked = {"how many": one.count, **({"left over": int(one.left)} if left else {})}
        if one.left.denominator == 1:
            yield numbers_for(capital(one.unit), asked)


def _between(one: BetweenMarks) -> Board:
    """Between which marks an arrow is, and which of them is nearer, among readings beside it."""
    (low, high), unit = one.between, one.unit
    told = [_tell(mark, unit) for mark in (2 * low - high, low, high, 2 * high - low)]
    pairs = ((0, 1, 1), (1, 2, 1), (1, 2, 2), (2, 3, 2))
    cards = [f"between {told[first]} and {told[last]}, nearer {told[near]}" for first, last, near in pairs]
    cards.append(f"halfway between {told[1]} and {told[2]}")
    right = cards[-1] if one.nearer == "halfway" else cards[1 if one.nearer == low else 2]
    return one_card(f"Arrow {one.arrow}", right, list(map(card, cards)))


def _number(says: str, right: Fraction, unit: str) -> Board:
    return one_card(says, _tell(right, unit), list(map(card, _near(right, unit))))


def _near(right: Fraction, unit: str) -> list[str]:
    """An amount and others near it, the least first."""
    numbers: Iterable[Fraction | int]
    if right.denominator == 1:
        numbers = nearby([int(right)], below_nought=unit == "°C")
    else:
        steps = (Fraction(1, 2), 1, -1, 10)
        numbers = sorted({right, *(right + step for step in steps if right + step > 0)})
    return [_tell(Fraction(number), unit) for number in numbers]


def _tell(number: Fraction, unit: str) -> str:
    told = written(number, _MOST_PLACES)
    return f"{told} {unit_name(unit, number)}" if unit else told
