"""A line graph read between its points: what it shows at a number, and where it shows one."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import pairwise

from ...expression.noun import singular
from ...expression.number import read_number
from ...model.activity import Answer
from ...model.demands import Demands
from ...model.document import Loc
from ..kind import Unsolvable
from .asked import Asked
from .rows import Rows
from .say_questions import much
from .sums import demands_of_numbers
from .tasks import PLACES, Found, Question, ReadOff, write_number

Points = list[tuple[Fraction, Fraction]]


def read_off(question: Question, rows: Rows, loc: Loc) -> Asked:
    """The number read off, to the nearest that is wanted. Raises ``Unsolvable`` where there is none, or more than one."""
    points = list(zip(rows.along, (row.amount for row in rows.rows), strict=True))
    given, at = _number(question, rows, loc), question.ask == "at"
    found = set(_between(points if at else [(y, x) for x, y in points], given))
    if len(found) != 1:
        message = f"The graph shows {write_number(given)} {'nowhere' if not found else 'in more than one place'}."
        raise Unsolvable(loc, message, "ask for a number that the graph passes once.")
    exact = found.pop()
    told = _nearest(exact, question.nearest, loc)
    foot, side = (rows.axis, rows.thing) if at else (rows.thing, rows.axis)
    there = f"{write_number(given)} {foot}".strip()
    about = "About " if told != exact else ""
    unit = singular(side) if question.nearest == 1 and side else f"{question.nearest or 0:,}"
    nearest = f", to the nearest {unit}" if question.nearest else ""
    many = f"How many {side} are there" if side else "What does the line show"
    return Asked(
        f"{many} at {there}{nearest}?" if at else f"Where along the bottom does the line reach {there}{nearest}?",
        Answer(
            f"{about}{much(told, side)}.",
            _say_way(at, there),
            ReadOff("at" if at else "where", Found(given), Found(told)),
        ),
        demands_of_numbers([given, told]) | Demands(words=("line graph",)),
        2,
    )


def _say_way(at: bool, there: str) -> str:
    return (
        f"Go {'up' if at else 'across'} from {there} to the line, then {'across' if at else 'down'} to the other scale."
    )


def _number(question: Question, rows: Rows, loc: Loc) -> Fraction:
    number = read_number(question.of) if isinstance(question.of, str) else None
    if number is None or any(read_number(row.label) is None for row in rows.rows):
        message = f'The question "{question.ask}" needs a number, and a graph whose labels are numbers.'
        raise Unsolvable(loc, message, f'write {{ask: {question.ask}, of: "7"}}.')
    return number.value


def _between(points: Points, given: Fraction) -> Iterator[Fraction]:
    """Every number level with ``given`` on the lines between one point and the next."""
    for (x1, y1), (x2, y2) in pairwise(points):
        if x1 == x2 == given:
            yield from (y1, y2)
        elif min(x1, x2) <= given <= max(x1, x2):
            yield y1 + (y2 - y1) * (given - x1) / (x2 - x1)


def _nearest(exact: Fraction, nearest: int | None, loc: Loc) -> Fraction:
    if nearest:
        return Fraction(nearest * int(exact / nearest + Fraction(1, 2)))
    if (exact * 10**PLACES).denominator > 1:
        raise Unsolvable(loc, "What it shows there cannot be read off exactly.", "add nearest, such as nearest: 1.")
    return exact
