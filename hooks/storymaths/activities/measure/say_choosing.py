"""Choosing a unit, in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from ...model.activity import LikelyError, Line
from ...model.year import YearLimits
from ..saying import capital, listed, written
from .amount import Amount, tell, unit_name

_ONE = Fraction(1)


def ask_for_units(units: Sequence[str], told: bool) -> str:
    """What is to be chosen, and what from."""
    choice = listed(units, "or")
    return f"Which unit is missing: {choice}?" if told else f"Which unit would you measure each in: {choice}?"


def leave_gap(name: str, amount: Amount, told: bool, year: YearLimits) -> Line:
    """``Length of a pencil: 15 ___``."""
    number = f"{written(amount.number, year.decimal_places)} " if told else ""
    return Line((f"{capital(name)}: {number}", ""))


def say_unit(name: str, amount: Amount, told: bool, year: YearLimits) -> str:
    """``Length of a pencil: 15 cm``."""
    return f"{capital(name)}: {tell(amount, year) if told else amount.unit}"


def explain_unit(
    amount: Amount,
    alike: tuple[list[str], list[str]],
    others: Mapping[str, Sequence[str]],
    told: bool,
    year: YearLimits,
) -> str:
    """What the other units would make of it, and what units of another kind are for."""
    kinds = [f"{kind} {'with' if n else 'goes with'} {listed(units)}" for n, (kind, units) in enumerate(others.items())]
    why = [f"{capital('; '.join(kinds))}."] if kinds else []
    smaller, larger = alike
    if told:
        for units, more in ((smaller, "less"), (larger, "more")):
            amounts = [tell(Amount(amount.number, unit), year) for unit in units]
            why += [f"{capital(listed(amounts))} would be far {more}."] if units else []
    else:
        why += [f"It takes very many {listed(smaller, 'or')}."] if smaller else []
        why += (
            [f"One {listed([unit_name(unit, _ONE) for unit in larger], 'or')} is more than all of it."]
            if larger
            else []
        )
    return " ".join(why)


def expect_unpictured(name: str, wrong: Amount, alike: bool, told: bool, year: YearLimits) -> LikelyError:
    """Taking another unit of the same kind, or one of another."""
    does = "Knows what is measured, but does not picture the unit." if alike else "Takes a unit of another measure."
    return LikelyError(does, say_unit(name, wrong, told, year) + ".")
