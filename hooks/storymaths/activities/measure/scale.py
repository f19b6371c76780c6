"""A scale with marks at equal steps, and where on it a value stands."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Standing:
    """Where an arrow stands: so many marks past a number, and what part of the way to the next mark."""

    number: Fraction
    """The last number written at or before it."""
    past: int
    low: Fraction
    """The mark it is at, or the one before."""
    beyond: Fraction
    """From 0, at the mark, to less than 1."""


@dataclass(frozen=True, slots=True)
class Scale:
    """From a number to a larger one in equal parts, with a number at every ``numbered`` marks."""

    start: Fraction
    end: Fraction
    parts: int
    numbered: int
    unit: str

    @property
    def step(self) -> Fraction:
        """What each part is worth."""
        return (self.end - self.start) / self.parts

    @property
    def between_numbers(self) -> Fraction:
        """From one number to the next."""
        return self.step * self.numbered

    def marks(self, value: Fraction) -> Fraction:
        """How many marks from the start a value stands."""
        return (value - self.start) / self.step

    def stand(self, value: Fraction) -> Standing:
        """Where a value on the scale stands."""
        at = self.marks(value)
        before = at.numerator // at.denominator
        last = before // self.numbered * self.numbered
        low = self.start + before * self.step
        return Standing(self.start + last * self.step, before - last, low, at - before)
