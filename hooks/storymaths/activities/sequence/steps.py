"""How a term of a row is worked out: from its neighbour, by so many steps from the first term, or by counting along."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from ...model.demands import Operation, operation
from ...model.year import YearLimits
from .number_rules import Rule, Steps, Times

_MOST_COUNTED = 12
"""A count is written out up to so many numbers."""


@dataclass(frozen=True, slots=True)
class Jump:
    """So many equal steps at once."""

    steps: int
    first: Fraction
    calculations: tuple[Operation, ...]


@dataclass(frozen=True, slots=True)
class CountAlong:
    """The numbers that are said; ``last`` are the two at the end where the middle of a long count is passed over."""

    first: tuple[Fraction, ...]
    last: tuple[Fraction, ...] = ()


Working = Operation | Jump | CountAlong


def step_to(rule: Rule, place: int) -> Operation:
    """A term worked out from the one before it, or the first from the second."""
    before, here = (rule.at(place - 1), rule.at(place)) if place > 1 else (rule.at(2), rule.at(1))
    if isinstance(rule, Times):
        factor = rule.factor if place > 1 else 1 / rule.factor
        if factor < 1 and factor.numerator == 1:
            return operation("÷", before, factor.denominator, here)
        return operation("×", before, factor, here)
    return operation("+" if here >= before else "−", before, abs(here - before), here)


def count_to(rule: Rule, place: int) -> CountAlong:
    """The count up to a place, its middle passed over where it is long."""
    if place <= _MOST_COUNTED:
        return CountAlong(tuple(rule.at(n) for n in range(1, place + 1)))
    return CountAlong(tuple(rule.at(n) for n in (1, 2, 3)), (rule.at(place - 1), rule.at(place)))


def way_to(rule: Rule, place: int, year: YearLimits) -> Jump | CountAlong:
    """A term worked out in so many equal steps from the first; counted out where there is no such short cut."""
    if not isinstance(rule, Steps) or rule.grows or not rule.step or place <= 2 or not year.knows("×"):
        return count_to(rule, place)
    size, gone = abs(rule.step), place - 1
    product = operation("×", gone, size, gone * size)
    if rule.first == 0 and rule.step > 0:
        return Jump(gone, rule.first, (product,))
    onward = operation("+" if rule.step > 0 else "−", rule.first, gone * size, rule.at(place))
    return Jump(gone, rule.first, (product, onward))


def operations_of(working: Working) -> tuple[Operation, ...]:
    """The calculations in it."""
    return (working,) if isinstance(working, Operation) else working.calculations if isinstance(working, Jump) else ()


def numbers_of(working: Working) -> set[Fraction]:
    """The numbers in it."""
    numbers = {number for one in operations_of(working) for number in one.numbers}
    match working:
        case Jump():
            numbers |= {Fraction(working.steps), working.first}
        case CountAlong():
            numbers |= {*working.first, *working.last}
    return numbers
