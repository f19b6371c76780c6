"""How the numbers of a fact are spoken of to a class: bricks that somebody weighs, coats somebody has, pence somebody pays."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from ..activities.saying import counted, owner
from ..expression.number_words import TENS
from ..expression.say import number_word
from .material import NumberFact

WEIGHS, SPANS = "mass", ("length", "capacity", "time")


@dataclass(frozen=True, slots=True)
class Said:
    """How what a fact measures is compared in words."""

    least: str
    more: str


MEASURES: Mapping[str, Said] = {
    "mass": Said("lightest", "heavier"),
    "length": Said("shortest", "longer"),
    "time": Said("shortest", "longer"),
    "capacity": Said("least full", "fuller"),
    "money": Said("least money", "more"),
}
"""What is said of each measure; of a count, more and fewer of the things."""


@dataclass(frozen=True, slots=True)
class FactWords:
    """A fact as a teacher says it."""

    fact: NumberFact

    @property
    def things(self) -> str:
        """What is counted, or what it is measured in; money as such."""
        return "money" if self.fact.of == "money" else self.fact.things

    @property
    def same(self) -> str:
        """What two sides do that come to the same."""
        if self.fact.of == WEIGHS:
            return "are level"
        return "have the same money" if self.fact.of == "money" else f"have the same number of {self.fact.things}"

    @property
    def everybodys(self) -> str:
        """``how heavy everybody is, in bricks``; ``everybody’s coats``."""
        if self.fact.of == WEIGHS:
            return f"how heavy everybody is, in {self.fact.things}"
        return f"everybody’s {self.things}"

    @property
    def least_first(self) -> str:
        """``lightest first``, ``fewest coats first``."""
        return f"{self.said.least} first"

    @property
    def said(self) -> Said:
        """Its words for less and more."""
        return MEASURES.get(self.fact.of, Said(f"fewest {self.fact.things}", "more"))

    def amount(self, number: int) -> str:
        """``9 bricks``."""
        return counted(number, self.fact.things)

    def tells(self, name: str, number: int) -> str:
        """``Donkey is as heavy as 9 bricks``, ``Nan has 4 coats``."""
        name = f"{owner(name)} {self.fact.bearer}" if self.fact.bearer else name
        if self.fact.of == WEIGHS:
            return f"{name} is as heavy as {self.amount(number)}"
        return f"{name} {'is' if self.fact.of in SPANS else 'has'} {self.amount(number)}"

    def as_many_as(self, name: str) -> str:
        """``as heavy as Donkey``, ``as many coats as Nan``."""
        if self.fact.of == WEIGHS:
            return f"as heavy as {name}"
        return f"as much money as {name}" if self.fact.of == "money" else f"as many {self.fact.things} as {name}"


def number_of(size: int) -> str:
    """``twos``, ``fives``, ``tens``; figures past them: ``25s``."""
    word = next((word for word, ten in TENS.items() if ten == size), number_word(size))
    return f"{word}s" if word.isdigit() else "ones" if size == 1 else f"{word}es" if word.endswith("x") else f"{word}s"
