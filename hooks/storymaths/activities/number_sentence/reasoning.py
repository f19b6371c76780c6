"""The steps that lead to the filling of a number sentence: its known side worked out, then undone."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from ...expression import tree
from ...expression.number import Rational
from ...expression.tree import Node, holds, join, worth_of
from ...model.demands import Operation, Sign, operation
from ...model.year import YearLimits
from .filled import Filled
from .gap_filling import Plan, Undoing

_INVERSE: dict[tuple[str, bool], Sign] = {
    ("+", True): "−",
    ("+", False): "−",
    ("−", True): "+",
    ("×", True): "÷",
    ("×", False): "÷",
    ("÷", True): "×",
}
_SIGNS: dict[str, Sign] = {"+": "+", "−": "−", "×": "×", "÷": "÷"}


@dataclass(frozen=True, slots=True)
class Compared:
    """Two worths set side by side."""

    left: Fraction
    relation: str
    right: Fraction


Step = Operation | Compared


def find_steps(filled: Filled, year: YearLimits) -> tuple[Step, ...]:
    """The steps in the signs of the year, each once; none where the sentence speaks for itself."""
    if filled.has_units():
        return ()
    plan = filled.single_plan()
    if plan and not any(step.sign == "&" for step in plan.way) and _can_undo(plan, year):
        undone = _undo(filled, plan, year)
        return tuple(dict.fromkeys(undone)) if undone is not None else ()
    steps: list[Step] = [step for side in filled.sentence.sides for step in work_out(side, filled, year)]
    return tuple(dict.fromkeys((*steps, *_compare(filled))))


def _can_undo(plan: Plan, year: YearLimits) -> bool:
    return all(year.knows(_INVERSE.get((step.sign, step.gap_is_left), step.sign)) for step in plan.way)


def work_out(node: Node, filled: Filled, year: YearLimits) -> Iterator[Operation]:
    """The operations of a part, in the order they are done."""
    if isinstance(node, tree.Operation) and node.sign != "&":
        yield from work_out(node.left, filled, year)
        yield from work_out(node.right, filled, year)
        left, right = worth_of(node.left, filled.numbers), worth_of(node.right, filled.numbers)
        if left is not None and right is not None:
            yield from _calculate(filled, left, _SIGNS[node.sign], right, year)


def _step(left: Rational, sign: Sign, right: Rational) -> Operation:
    result = join(left, sign, right)
    assert result is not None, "a filled sentence never divides by nought"
    return operation(sign, left, right, result)


def _calculate(filled: Filled, left: Rational, sign: Sign, right: Rational, year: YearLimits) -> Iterator[Operation]:
    """One operation; a fraction of a number as sharing into parts and taking so many of them."""
    fraction, number = (left, right) if isinstance(left, Fraction) else (right, left)
    if sign != "×" or filled.places or not isinstance(fraction, Fraction) or isinstance(number, Fraction):
        yield _step(left, sign, right)
    elif year.knows("÷"):
        part = _step(number, "÷", fraction.denominator)
        yield part
        if fraction.numerator != 1:
            yield _step(_whole(part.numbers[-1]), "×", fraction.numerator)


def _whole(number: Fraction) -> Rational:
    return number.numerator if number.denominator == 1 else number


def _find_whole(target: Rational, fraction: Fraction) -> Iterator[Operation]:
    """The number of which a fraction is ``target``: one part first, then all of them."""
    if fraction.numerator != 1:
        yield _step(target, "÷", fraction.numerator)
    part = join(target, "÷", fraction.numerator)
    if part is not None:
        yield _step(part, "×", fraction.denominator)


def _compare(filled: Filled) -> Iterator[Compared]:
    worths = [worth_of(side, filled.numbers) for side in filled.sentence.sides]
    for relation, left, right in zip(filled.sentence.relations, worths, worths[1:], strict=False):
        if relation != "=" and left is not None and right is not None:
            yield Compared(Fraction(left), relation, Fraction(right))


def _undo(filled: Filled, plan: Plan, year: YearLimits) -> list[Step] | None:
    """The known side worked out and undone; None for 5 × ___ with nought on the other side."""
    known = filled.sentence.sides[plan.known_side]
    steps: list[Step] = [*work_out(known, filled, year)]
    target = worth_of(known, filled.numbers)
    for step in plan.way:
        steps += work_out(step.other, filled, year)
        other = worth_of(step.other, filled.numbers)
        assert target is not None, "a filled sentence never divides by nought"
        assert other is not None, "a filled sentence never divides by nought"
        left, sign, right = _turn(step, target, other)
        if join(left, sign, right) is None:
            return None
        by_fraction = sign == "÷" and step.sign == "×" and isinstance(right, Fraction) and not filled.places
        if by_fraction:
            steps += _find_whole(left, Fraction(right))
        else:
            steps += _calculate(filled, left, sign, right, year)
        target = join(left, sign, right)
    return steps


def _turn(step: Undoing, target: Rational, other: Rational) -> tuple[Rational, Sign, Rational]:
    """The calculation that undoes an operation."""
    inverse = _INVERSE.get((step.sign, step.gap_is_left))
    return (target, inverse, other) if inverse else (other, _SIGNS[step.sign], target)


def find_steps_to_judge(one: Filled, year: YearLimits) -> tuple[Step, ...]:
    """The steps that show that a sentence is untrue; none where a side divides by nought.

    Where a side comes to what the year has not met, it is not worked out: that it is wrong is seen without.
    """
    right = put_right(one)
    if right is None:
        return ()
    steps = [step for side in one.sentence.sides for step in work_out(side, one, year)]
    numbers = (right.left, right.right, *(number for step in steps for number in step.numbers))
    return (*steps, right) if len(one.sentence.relations) > 1 or all(map(year.meets, numbers)) else ()


def put_right(filled: Filled) -> Compared | None:
    """The first relation that does not hold, as it should be; None where a side divides by nought."""
    sides, relations = filled.sentence.sides, filled.sentence.relations
    worths = [worth_of(side, filled.numbers) for side in sides]
    for relation, left, right in zip(relations, worths, worths[1:], strict=False):
        if left is None or right is None:
            return None
        if not holds(left, relation, right):
            so = "≠" if relation == "=" else "=" if left == right else "<" if left < right else ">"
            return Compared(Fraction(left), so, Fraction(right))
    raise AssertionError("an untrue sentence has a relation that does not hold")
