"""A comparison told: what a completed statement says, why it holds, and what a false one should say."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from ...model.quantity import UNITS, Quantity
from ...parse.number_sentence import value_of
from ..saying import ending_places, written
from .statement import CALCULATION, GAP, Statement, units_in

_PLACES = 6
_SIGNS = {-1: "<", 0: "=", 1: ">"}


@dataclass(frozen=True, slots=True)
class Completed:
    """A statement with nothing missing: what a pupil has written, and the same in numbers."""

    shown: tuple[str, ...]
    sides: tuple[str, ...]
    signs: tuple[str, ...]

    @classmethod
    def of(cls, statement: Statement, signs: tuple[str, ...], fill: str = "") -> Completed:
        """A statement with its gap filled."""
        return cls(
            tuple(side.replace(GAP, fill) for side in statement.shown),
            tuple(side.replace(GAP, fill) for side in statement.sides),
            signs,
        )

    @property
    def text(self) -> str:
        """As a pupil writes it."""
        return _joined(self.shown, self.signs)

    @property
    def worth(self) -> tuple[Quantity, ...]:
        """What each side comes to."""
        return tuple(value_of(side) for side in self.sides)

    def true_signs(self) -> tuple[str, ...]:
        """The sign of = < > that is right between each side and the next."""
        worth = self.worth
        return tuple(_SIGNS[one.compare(other)] for one, other in pairwise(worth))

    def holds(self) -> bool:
        """Whether it is true."""
        return all(_is(sign, true) for sign, true in zip(self.signs, self.true_signs(), strict=True))

    def worked(self) -> str:
        """One line that shows that it holds: in numbers, then what each sum comes to. True sentences only."""
        sums = dict.fromkeys(f"{side} = {self._amount(side)}" for side in self.sides if CALCULATION.search(side))
        line = _joined(self.sides, self.signs)
        # 6 + 3 = 9 needs no second telling.
        told = [one for one in sums if one != line]
        return f"{line}, because {'; '.join(told)}." if told else f"{line}."

    def put_right(self, signs_known: bool) -> str:
        """A false statement as it should be: with < or > where those are known, else with ≠."""
        signs = tuple(
            sign if _is(sign, true) else (true if signs_known or true == "=" else "≠")
            for sign, true in zip(self.signs, self.true_signs(), strict=True)
        )
        return Completed(self.shown, self.sides, signs).worked()

    def _amount(self, side: str) -> str:
        worth = value_of(side)
        unit = next(iter(units_in(side)), "")
        number = Fraction(worth.amount) / (UNITS[unit][1] if unit else 1)
        return in_unit(number, unit, as_fraction="/" in side and "." not in " ".join(self.sides))


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


def _joined(sides: tuple[str, ...], signs: tuple[str, ...]) -> str:
    return sides[0] + "".join(f" {sign} {side}" for sign, side in zip(signs, sides[1:], strict=True))
