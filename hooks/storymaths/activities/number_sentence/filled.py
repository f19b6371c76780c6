"""A number sentence with its gaps filled: its sides with nothing missing, and how it is written."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...expression.gapped import GappedSentence
from ...expression.number import Rational
from ...expression.tree import Gap, Node, Number, Operation, numbers_in, operations_in, worth_of
from ...model.activity import CastMember
from ...model.plain import Plain
from ..saying import written
from .gap_filling import Plan, plan_for

PLACES = 3
"""Decimal places a number may be written with where the sentence has no fractions."""


@dataclass(frozen=True, slots=True)
class Filled:
    """A sentence made true: which line of the task it is, and what stands in its gaps."""

    line: int
    """From 1."""
    sentence: GappedSentence
    numbers: tuple[Rational, ...]
    who: tuple[CastMember, ...] = ()

    @property
    def places(self) -> int:
        """Decimal places a number may be written with: none beside a fraction."""
        return 0 if any("/" in token.text for token in self.sentence.tokens) else PLACES

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

    def as_plain(self) -> Plain:
        """As the kind documents it."""
        gaps: list[Plain] = [
            gap if isinstance(gap, (int, str)) else written(gap, self.places) for gap in self.in_gaps()
        ]
        known: dict[str, Plain] = {"line": self.line, "gaps": gaps, "sentence": self.sentence_text()}
        return known | ({"who": [character.id for character in self.who]} if self.who else {})

    def has_units(self) -> bool:
        """Whether it is about measures, which are not undone step by step here."""
        return any(token.unit for token in self.sentence.tokens)

    def single_plan(self) -> Plan | None:
        """How its one gap for a number can be undone; None when there is no such gap."""
        one = self.sentence.gaps == ("number",) and self.sentence.relations == ("=",)
        return plan_for(self.sentence, [None]) if one else None

    def numbers_met(self) -> Iterator[Number]:
        """The numbers that stand in it when it is filled."""
        for side in self.sentence.sides:
            yield from numbers_in(fill_in(side, self.numbers, self.places))

    def count_steps(self) -> int:
        """Operations, one for each gap after the first, one more if a gap is not alone on its side."""
        gaps = len(self.sentence.gaps) + len(self.sentence.signs)
        plan = self.single_plan()
        return max(1, sum(map(operations_in, self.sentence.sides)) + max(0, gaps - 1) + bool(plan and plan.way))


def fill_in(node: Node, gaps: Sequence[Rational], places: int = PLACES) -> Node:
    """A side with numbers in its gaps, the digits of a number put together."""
    match node:
        case Gap(at=at, worth=worth, unit=unit):
            return Number(gaps[at] * worth, written(gaps[at], places), unit)
        case Operation(sign="&"):
            worth_together = worth_of(node, gaps) or 0
            return Number(worth_together, written(worth_together))
        case Operation(sign=sign, left=left, right=right):
            return Operation(sign, fill_in(left, gaps, places), fill_in(right, gaps, places))
        case _:
            return node
