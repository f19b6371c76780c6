"""The numbers that make a statement with one gap true, found exactly."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from ...expression.signs import COMPARE
from ...expression.tree import Node, Number, Operation, numbers_in, units_in
from ...model.quantity import UNITS
from ..kind import Unsolvable
from .completed import Filling, number_in
from .statement import GAP, Statement

_TRIED = range(1, 12)
_FLIPPED = {"=": "=", "≠": "≠", "<": ">", ">": "<"}


@dataclass(frozen=True, slots=True)
class Curve:
    """How a side with one gap depends on what is written in it: ``(a·x + b) ÷ (c·x + d)``, whatever the side.

    A side built from +, −, × and ÷ with the gap standing once in it can be nothing else, so three values settle it.
    """

    a: Fraction
    b: Fraction
    c: Fraction
    d: Fraction

    @classmethod
    def through(cls, points: list[tuple[int, Fraction]]) -> Curve:
        """The curve through three points."""
        (x1, y1), (x2, y2), (x3, y3) = points
        slope = (y2 - y1) / (x2 - x1)
        if (y3 - y1) / (x3 - x1) == slope:
            return cls(slope, y1 - slope * x1, Fraction(0), Fraction(1))
        ratio = (y1 - y2) * (x3 - x1) / ((y1 - y3) * (x2 - x1))
        shift = (x3 - ratio * x2) / (ratio - 1)
        size = (y1 - y2) * (x1 + shift) * (x2 + shift) / (x2 - x1)
        level = y1 - size / (x1 + shift)
        return cls(level, level * shift + size, Fraction(1), shift)

    @property
    def straight(self) -> bool:
        """Whether it grows evenly: no gap under a ÷."""
        return self.c == 0

    def at(self, x: Fraction) -> Fraction | None:
        """The value for a number in the gap; None where it would divide by nought."""
        below = self.c * x + self.d
        return (self.a * x + self.b) / below if below else None

    def reaching(self, value: Fraction) -> Fraction | None:
        """The number in the gap that gives a value; None when there is none."""
        rest = self.a - value * self.c
        return (value * self.d - self.b) / rest if rest else None


def fillings_for(statement: Statement, most: int, limit: int) -> list[Filling]:
    """Every number for the gap, smallest first, written as the statement writes its own: as fractions or decimals."""
    shown = [number.shown for tree in statement.trees for number in numbers_in(tree)]
    fractions = any("/" in one for one in shown) or any(map(_has_line, statement.trees))
    decimals = any("." in one for one in shown)
    found = _numbers_for(statement, most, limit)
    return [Filling(number_in(number, unit, as_fraction=fractions and not decimals)) for number, unit in found]


def _has_line(tree: Node) -> bool:
    """Whether a fraction with a gap stands in it."""
    return isinstance(tree, Operation) and (tree.sign == "/" or _has_line(tree.left) or _has_line(tree.right))


def _numbers_for(statement: Statement, most: int, limit: int) -> list[tuple[Fraction, str]]:
    """The same, each with the unit it carries.

    With = any number; with only ≠ < > the whole numbers from 0 to ``most``. Raises ``Unsolvable`` where every
    number would do or there are more than ``limit``.
    """
    side = statement.gap_side
    assert side is not None
    unit, curve = _curve(statement, side)
    bounds = list(_bounds(statement, side))
    if curve.at(Fraction(2)) == curve.at(Fraction(5)) == curve.at(Fraction(7)):
        raise Unsolvable(statement.loc, "What stands in the gap makes no difference here.", "put the gap elsewhere.")
    if _false_elsewhere(statement, side):
        return []
    equal = [value for sign, value in bounds if sign == "="]
    if equal:
        x = curve.reaching(equal[0])
        return [(x, unit)] if x is not None and _holds(curve, x, bounds) else []
    if not curve.straight:
        raise Unsolvable(statement.loc, "The gap stands under a ÷ beside < or >.", "use =, or move the gap.")
    low, high = _between(curve, bounds, most)
    if high - low + 1 > limit + len(bounds):
        raise Unsolvable(
            statement.loc,
            f"{high - low + 1:,} numbers from {low:,} to {high:,} would do here.",
            "close the gap in from both sides, as in 5 < ___ < 9.",
            "activity-too-many-answers",
        )
    return [(Fraction(x), unit) for x in range(low, high + 1) if _holds(curve, Fraction(x), bounds)]


def _curve(statement: Statement, side: int) -> tuple[str, Curve]:
    """The unit that fits the gap and how the side depends on it."""
    others = [statement.value(i).kind for i in range(len(statement.sides)) if i != side]
    # A gap without a unit takes that of its own side, else that of another.
    stated = units_in(statement.trees[side], *statement.trees)
    units = ["", *(unit for unit in stated if UNITS[unit][0] in others)]
    for unit in units:
        points: list[tuple[int, Fraction]] = []
        for x in _TRIED:
            try:
                worth = statement.value(side, Number(x * (UNITS[unit][1] if unit else 1), str(x), unit))
            except (ValueError, ArithmeticError):
                continue
            if worth.kind in others:
                points.append((x, Fraction(worth.amount)))
        if len(points) >= 3:
            return unit, Curve.through(points[:3])
    raise Unsolvable(
        statement.loc, f'No number fits the gap in "{statement.text}".', f"write sums such as 6 + {GAP} = 9."
    )


def _bounds(statement: Statement, side: int) -> Iterator[tuple[str, Fraction]]:
    """What the gap's side must be beside its neighbours: ``("<", 9)`` for less than 9."""
    for index, sign in enumerate(statement.signs):
        if index == side:
            yield sign, Fraction(statement.value(index + 1).amount)
        elif index + 1 == side:
            yield _FLIPPED[sign], Fraction(statement.value(index).amount)


def _false_elsewhere(statement: Statement, side: int) -> bool:
    """Whether two sides without the gap are told of wrongly, so that nothing can mend the statement."""
    return any(
        not holds(statement.value(index).compare(statement.value(index + 1)), sign)
        for index, sign in enumerate(statement.signs)
        if side not in (index, index + 1)
    )


def holds(order: int, sign: str) -> bool:
    """Whether a sign is right for sides that compare as −1, 0 or 1."""
    return COMPARE[sign](order, 0)


def _holds(curve: Curve, x: Fraction, bounds: list[tuple[str, Fraction]]) -> bool:
    value = curve.at(x)
    return value is not None and all(holds((value > bound) - (value < bound), sign) for sign, bound in bounds)


def _between(curve: Curve, bounds: list[tuple[str, Fraction]], most: int) -> tuple[int, int]:
    """The whole numbers that the signs < and > leave, both ends included."""
    low, high = 0, most
    for sign, bound in bounds:
        if sign == "≠":
            continue
        edge = (bound - curve.b) / curve.a
        if (sign == "<") == (curve.a > 0):
            high = min(high, ceil(edge) - 1)
        else:
            low = max(low, floor(edge) + 1)
    return low, high
