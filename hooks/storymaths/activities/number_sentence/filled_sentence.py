"""A number sentence filled in: how it is written, and the reasoning that leads to it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from ...expression.gapped import GappedSentence
from ...expression.number import Rational
from ...expression.tree import Node, Operation, join, operations_in, worth_of
from ...model.activity import CastMember
from ..saying import written
from .gap_filling import Plan, plan_for

_INVERSE = {
    ("+", True): "−",
    ("+", False): "−",
    ("−", True): "+",
    ("×", True): "÷",
    ("×", False): "÷",
    ("÷", True): "×",
}


@dataclass(frozen=True, slots=True)
class Filled:
    """A sentence made true: which line of the task it is, and what stands in its gaps."""

    line: int
    sentence: GappedSentence
    numbers: tuple[Rational, ...]
    places: int
    """Decimal places a number may be written with."""
    who: tuple[CastMember, ...] = ()

    def in_gaps(self) -> list[Rational | str]:
        """What stands in the gaps, from left to right: numbers, digits and signs."""
        numbers, signs = list(self.numbers), list(self.sentence.signs)
        filled: list[Rational | str] = []
        for token in self.sentence.asked:
            if token.kind == "sign-gap":
                filled.append(signs.pop(0))
            else:
                missing = token.text.count("_") if token.kind == "digits" else token.kind == "gap"
                filled += [numbers.pop(0) for _ in range(missing)]
        return filled

    def sentence_text(self, names: bool = False) -> str:
        """The sentence filled in, all in numbers unless names are wanted."""
        gaps = [written(number, self.places) for number in self.numbers]
        return self.sentence.written(gaps, names)

    def data(self) -> dict[str, Any]:
        """As the kind documents it."""
        plain = [gap if isinstance(gap, (int, str)) else written(gap, self.places) for gap in self.in_gaps()]
        known = {"line": self.line, "gaps": plain, "sentence": self.sentence_text()}
        return known | ({"who": [character.id for character in self.who]} if self.who else {})

    def has_units(self) -> bool:
        """Whether it is about measures, which are not undone step by step here."""
        return any(token.unit for token in self.sentence.tokens)

    def single_plan(self) -> Plan | None:
        """How its one gap for a number can be undone; None when there is no such gap."""
        one = self.sentence.gaps == ("number",) and self.sentence.relations == ("=",)
        return plan_for(self.sentence, [None]) if one else None


def reasoning(filled: Filled) -> str:
    """True number sentences that lead to the filling: the known side worked out, then undone step by step."""
    if filled.has_units():
        return f"{filled.sentence_text()}."
    plan = filled.single_plan()
    if plan and not any(step.sign == "&" for step in plan.way):
        lines = list(_undone(filled, plan))
    else:
        lines = [line for side in filled.sentence.sides for line in worked_out(side, filled)]
        lines += _compared(filled)
    return f"{'; '.join(dict.fromkeys(lines)) or filled.sentence_text()}."


def worked_out(node: Node, filled: Filled) -> Iterator[str]:
    """The operations of a part, one true number sentence each, in the order they are done."""
    if isinstance(node, Operation) and node.sign != "&":
        yield from worked_out(node.left, filled)
        yield from worked_out(node.right, filled)
        left, right = worth_of(node.left, filled.numbers), worth_of(node.right, filled.numbers)
        if left is not None and right is not None:
            yield from _lines(filled, left, node.sign, right)


def _line(filled: Filled, left: Rational, sign: str, right: Rational) -> str:
    result = join(left, sign, right)
    assert result is not None, "a filled sentence never divides by nought"
    write = [written(number, filled.places) for number in (left, right, result)]
    return f"{write[0]} {sign} {write[1]} = {write[2]}"


def _lines(filled: Filled, left: Rational, sign: str, right: Rational) -> Iterator[str]:
    """One operation; a fraction of a number as sharing into parts and taking so many of them."""
    fraction, number = (left, right) if isinstance(left, Fraction) else (right, left)
    if sign != "×" or filled.places or not isinstance(fraction, Fraction) or isinstance(number, Fraction):
        yield _line(filled, left, sign, right)
        return
    part = join(number, "÷", fraction.denominator)
    yield _line(filled, number, "÷", fraction.denominator)
    if fraction.numerator != 1 and part is not None:
        yield _line(filled, part, "×", fraction.numerator)


def _whole_of(filled: Filled, target: Rational, fraction: Fraction) -> Iterator[str]:
    """The number of which a fraction is ``target``: one part first, then all of them."""
    part = join(target, "÷", fraction.numerator)
    if fraction.numerator != 1:
        yield _line(filled, target, "÷", fraction.numerator)
    if part is not None:
        yield _line(filled, part, "×", fraction.denominator)


def _compared(filled: Filled) -> Iterator[str]:
    worths = [worth_of(side, filled.numbers) for side in filled.sentence.sides]
    for at, relation in enumerate(filled.sentence.relations):
        left, right = worths[at], worths[at + 1]
        if relation != "=" and left is not None and right is not None:
            yield f"{written(left, filled.places)} {relation} {written(right, filled.places)}"


def _undone(filled: Filled, plan: Plan) -> Iterator[str]:
    known = filled.sentence.sides[plan.known_side]
    yield from worked_out(known, filled)
    target = worth_of(known, filled.numbers)
    for step in plan.way:
        yield from worked_out(step.other, filled)
        other = worth_of(step.other, filled.numbers)
        assert target is not None, "a filled sentence never divides by nought"
        assert other is not None, "a filled sentence never divides by nought"
        inverse = _INVERSE.get((step.sign, step.gap_is_left))
        left, sign, right = (target, inverse, other) if inverse else (other, step.sign, target)
        if join(left, sign, right) is None:  # 5 × ___ with nought on the other side: say it forwards
            yield filled.sentence_text()
            return
        if sign == "÷" and inverse and isinstance(right, Fraction) and not filled.places:
            yield from _whole_of(filled, left, right)
        else:
            yield from _lines(filled, left, sign, right)
        target = join(left, sign, right)


def steps_of(filled: Filled) -> int:
    """Operations, one for each gap after the first, one more if a gap is not alone on its side."""
    sentence = filled.sentence
    gaps = len(sentence.gaps) + len(sentence.signs)
    plan = filled.single_plan()
    return max(1, sum(map(operations_in, sentence.sides)) + max(0, gaps - 1) + bool(plan and plan.way))


def products_in(node: Node, numbers: Sequence[Rational]) -> Iterator[tuple[Rational, Rational]]:
    """The pairs that are multiplied, or that a division undoes."""
    if isinstance(node, Operation):
        yield from products_in(node.left, numbers)
        yield from products_in(node.right, numbers)
        left, right = worth_of(node.left, numbers), worth_of(node.right, numbers)
        if node.sign in "×÷" and left is not None and right is not None:
            yield (left if node.sign == "×" else join(left, "÷", right) or 0), right
