"""A comparison with nothing missing: whether it is true, and what its sides come to."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from ...expression.number import whole_if_can
from ...expression.tree import Node, Number, fill_gap, numbers_in, operations_in, quantity_of, units_in
from ...model.quantity import Quantity
from ..arithmetic import worth_of_unit
from ..saying import ending_places, written
from .statement import GAP, Statement, joined

_PLACES = 6
_SIGNS = {-1: "<", 0: "=", 1: ">"}


@dataclass(frozen=True, slots=True)
class Filling:
    """A number that fills a gap, with the unit it needs there."""

    number: Number

    def as_plain(self) -> str:
        """As it is written in the gap."""
        return write_amount(self.number)


@dataclass(frozen=True, slots=True)
class Completed:
    """A statement with nothing missing: what a pupil has written, the same in numbers, and as trees."""

    statement: Statement
    shown: tuple[str, ...]
    sides: tuple[str, ...]
    signs: tuple[str, ...]
    trees: tuple[Node, ...]

    @classmethod
    def of(cls, statement: Statement, signs: tuple[str, ...], fill: Filling | None = None) -> Completed:
        """A statement with its gap filled."""
        shown, sides, trees = statement.shown, statement.sides, statement.trees
        if fill:
            trees = tuple(fill_gap(tree, fill.number) for tree in trees)
            shown = tuple(side.replace(GAP, fill.as_plain()) for side in shown)
            sides = tuple(side.replace(GAP, fill.as_plain()) for side in sides)
        return cls(statement, shown, sides, signs, trees)

    @property
    def text(self) -> str:
        """As a pupil writes it."""
        return joined(self.shown, self.signs)

    def as_plain(self) -> str:
        """As a pupil writes it."""
        return self.text

    @property
    def worth(self) -> tuple[Quantity, ...]:
        """What each side comes to."""
        return tuple(map(quantity_of, self.trees))

    def true_signs(self) -> tuple[str, ...]:
        """The sign of = < > that is right between each side and the next."""
        return tuple(_SIGNS[one.compare(other)] for one, other in pairwise(self.worth))

    def holds(self) -> bool:
        """Whether it is true."""
        return all(_is(sign, true) for sign, true in zip(self.signs, self.true_signs(), strict=True))

    def results(self) -> Iterator[tuple[str, Number]]:
        """Each side that has something to work out, and what it comes to as it is written beside it."""
        for side, tree in zip(self.sides, self.trees, strict=True):
            if operations_in(tree):
                yield side, self._result(tree)

    def put_right(self, signs_known: bool) -> Completed:
        """A false statement as it should be: with < or > where those are known, else with ≠."""
        signs = tuple(
            sign if _is(sign, true) else (true if signs_known or true == "=" else "≠")
            for sign, true in zip(self.signs, self.true_signs(), strict=True)
        )
        return replace(self, signs=signs)

    def _result(self, tree: Node) -> Number:
        unit = next(iter(units_in(tree)), "") if quantity_of(tree).kind else ""
        number = Fraction(quantity_of(tree).amount) / worth_of_unit(unit)
        parts = any("/" in number.shown for number in numbers_in(tree))
        decimals = any("." in number.shown for side in self.trees for number in numbers_in(side))
        return number_in(number, unit, as_fraction=parts and not decimals)


def number_in(number: Fraction, unit: str, as_fraction: bool = False) -> Number:
    """So many of a unit: a decimal, unless it does not end or a fraction is wanted."""
    places = ending_places(number)
    if unit == "£" and places in (1, 2):
        pence = int(abs(number) * 100)
        shown = f"{'−' if number < 0 else ''}{pence // 100:,}.{pence % 100:02}"
    else:
        shown = written(number, 0 if as_fraction else _PLACES)
    return Number(whole_if_can(number * worth_of_unit(unit)), shown, unit)


def write_amount(number: Number) -> str:
    """``9``, ``2.5 kg``, ``£2.50``, ``65p``, ``3/4``."""
    if number.unit == "£":
        return f"−£{number.shown[1:]}" if number.value < 0 else f"£{number.shown}"
    return f"{number.shown}{number.unit}" if number.unit in ("", "p") else f"{number.shown} {number.unit}"


def _is(sign: str, true: str) -> bool:
    return sign == true or (sign == "≠" and true != "=")
