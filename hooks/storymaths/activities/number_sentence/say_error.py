"""The likely slip in a number sentence, and what it would give, worked out from its own numbers."""

from __future__ import annotations

from fractions import Fraction

from ...expression.number import Rational
from ...expression.tree import Gap, Node, Operation, join, worth_of
from ...model.activity import LikelyError
from ..saying import written
from .filled import Filled
from .gap_filling import Plan

_ACTS = {
    ("+", True): ("Adds the numbers that are there.", "+"),
    ("+", False): ("Adds the numbers that are there.", "+"),
    ("−", True): ("Takes away, because the sign is −.", "−"),
    ("−", False): ("Adds the numbers that are there.", "+"),
    ("×", True): ("Multiplies the numbers that are there.", "×"),
    ("×", False): ("Multiplies the numbers that are there.", "×"),
    ("÷", True): ("Divides, because the sign is ÷.", "÷"),
    ("÷", False): ("Multiplies the numbers that are there.", "×"),
}


def find_error(filled: Filled) -> LikelyError | None:
    """The slip for a sentence with one missing number; None where none is likely to give another number."""
    plan = filled.single_plan()
    if plan is None or filled.has_units():
        return None
    does, gives = _err(filled, plan) or ("", None)
    right = filled.numbers[0]
    if gives is None or gives == right or gives < 0 <= right or (_is_whole(right) and not _is_whole(gives)):
        return None
    return LikelyError(does, f"{written(gives, filled.places)} instead of {written(right, filled.places)}.")


def _is_whole(number: Rational) -> bool:
    """Nobody who works in whole numbers gets a part of one by a slip."""
    return Fraction(number).denominator == 1


def _err(filled: Filled, plan: Plan) -> tuple[str, Rational | None] | None:
    sides = filled.sentence.sides
    known = sides[plan.known_side]
    target = worth_of(known, filled.numbers)
    if not plan.way:
        return _in_working_out(known, any(token.text == "(" for token in filled.sentence.tokens))
    if plan.known_side == 0 and isinstance(known, Operation) and _starts_with_gap(sides[1], plan.gap):
        return "Takes = to mean that the answer comes next, and writes what stands before it.", target
    step = plan.way[-1]
    other = worth_of(step.other, filled.numbers)
    if len(plan.way) == 1 and other is not None and target is not None:
        does, sign = _ACTS.get((step.sign, step.gap_is_left), ("", "+"))
        return (does, join(*_in_order(other, target, sign))) if does else None
    return None


def _in_order(one: Rational, other: Rational, sign: str) -> tuple[Rational, str, Rational]:
    return (max(one, other), sign, min(one, other)) if sign in "−÷" else (one, sign, other)


def _starts_with_gap(node: Node, gap: int) -> bool:
    while isinstance(node, Operation):
        node = node.left
    return isinstance(node, Gap) and node.at == gap


def _in_working_out(known: Node, brackets: bool) -> tuple[str, Rational | None] | None:
    """Slips of working out: from left to right whatever the signs, or at the ten."""
    if not isinstance(known, Operation):
        return None
    right_first = (
        not brackets and isinstance(known.right, Operation) and known.right.sign in "×÷" and known.sign in "+−"
    )
    left, right = worth_of(known.left, ()), worth_of(known.right, ())
    if left is None or right is None:
        return None
    if right_first and isinstance(known.right, Operation):
        first, second = worth_of(known.right.left, ()), worth_of(known.right.right, ())
        so_far = None if first is None else join(left, known.sign, first)
        if so_far is not None and second is not None:
            return "Works from left to right, whatever the signs.", join(so_far, known.right.sign, second)
    if Fraction(left).denominator == Fraction(right).denominator == 1 and left >= 0 and right >= 0:
        return _at_the_ten(int(left), known.sign, int(right))
    return None


def _at_the_ten(left: int, sign: str, right: int) -> tuple[str, Rational] | None:
    if sign == "+" and left % 10 + right % 10 >= 10 and max(left, right) >= 10:
        return "Leaves out the ten that the ones make.", left + right - 10
    if sign == "−" and 10 <= right < left < 100 and left % 10 < right % 10:
        ones = right % 10 - left % 10
        return "Takes the smaller ones from the larger, whichever is on top.", (left // 10 - right // 10) * 10 + ones
    return None
