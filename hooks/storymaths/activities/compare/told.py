"""A comparison told: what a completed statement says, why it holds, and what a false one should say."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import pairwise

from ...expression.grammar import Reader
from ...expression.signs import PROSE
from ...expression.tokens import read_tokens
from ...expression.tree import Node, Number, fill_gap, numbers_in, operations_in, quantity_of, units_in
from ...model.quantity import UNITS, Quantity
from ..saying import ending_places, written
from .statement import GAP, Statement, joined

_PLACES = 6
_SIGNS = {-1: "<", 0: "=", 1: ">"}


@dataclass(frozen=True, slots=True)
class Completed:
    """A statement with nothing missing: what a pupil has written, the same in numbers, and as trees."""

    shown: tuple[str, ...]
    sides: tuple[str, ...]
    signs: tuple[str, ...]
    trees: tuple[Node, ...]

    @classmethod
    def of(cls, statement: Statement, signs: tuple[str, ...], fill: str = "") -> Completed:
        """A statement with its gap filled."""
        trees = statement.trees
        if fill:
            number = Reader(tuple(read_tokens(fill, PROSE))).sum()
            assert isinstance(number, Number), "a gap is filled with one number"
            trees = tuple(fill_gap(tree, number) for tree in trees)
        return cls(
            tuple(side.replace(GAP, fill) for side in statement.shown),
            tuple(side.replace(GAP, fill) for side in statement.sides),
            signs,
            trees,
        )

    @property
    def text(self) -> str:
        """As a pupil writes it."""
        return joined(self.shown, self.signs)

    @property
    def worth(self) -> tuple[Quantity, ...]:
        """What each side comes to."""
        return tuple(map(quantity_of, self.trees))

    def true_signs(self) -> tuple[str, ...]:
        """The sign of = < > that is right between each side and the next."""
        worth = self.worth
        return tuple(_SIGNS[one.compare(other)] for one, other in pairwise(worth))

    def holds(self) -> bool:
        """Whether it is true."""
        return all(_is(sign, true) for sign, true in zip(self.signs, self.true_signs(), strict=True))

    def worked(self) -> str:
        """One line that shows that it holds: in numbers, then what each sum comes to. True sentences only."""
        sums = dict.fromkeys(
            f"{side} = {self._amount(tree)}"
            for side, tree in zip(self.sides, self.trees, strict=True)
            if operations_in(tree)
        )
        line = joined(self.sides, self.signs)
        # 6 + 3 = 9 needs no second telling.
        told = [one for one in sums if one != line]
        return f"{line}, because {'; '.join(told)}." if told else f"{line}."

    def put_right(self, signs_known: bool) -> str:
        """A false statement as it should be: with < or > where those are known, else with ≠."""
        signs = tuple(
            sign if _is(sign, true) else (true if signs_known or true == "=" else "≠")
            for sign, true in zip(self.signs, self.true_signs(), strict=True)
        )
        return replace(self, signs=signs).worked()

    def _amount(self, tree: Node) -> str:
        unit = next(iter(units_in(tree)), "")
        number = Fraction(quantity_of(tree).amount) / (UNITS[unit][1] if unit else 1)
        parts = any("/" in number.shown for number in numbers_in(tree))
        decimals = any("." in number.shown for side in self.trees for number in numbers_in(side))
        return in_unit(number, unit, as_fraction=parts and not decimals)


def in_unit(number: Fraction, unit: str, as_fraction: bool = False) -> str:
    """``9``, ``2.5 kg``, ``£2.50``, ``3/4``; a decimal unless it does not end or a fraction is wanted."""
    if unit == "£" and (ending_places(number) or 0) <= 2 and number.denominator > 1:
        pence = abs(number) * 100
        return f"{'−' if number < 0 else ''}£{int(pence) // 100:,}.{int(pence) % 100:02}"
    figures = written(number, 0 if as_fraction else _PLACES)
    if unit in ("", "£"):
        return f"{unit}{figures}"
    return f"{figures}{unit}" if unit == "p" else f"{figures} {unit}"


def _is(sign: str, true: str) -> bool:
    return sign == true or (sign == "≠" and true != "=")
