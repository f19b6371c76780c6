"""Rules that numbers in a row can follow, found from the ones that are known: equal steps, growing steps, times."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from .tasks import Known


@dataclass(frozen=True, slots=True)
class Steps:
    """Equal steps: so much is added each time. ``grows`` more each time where the steps themselves grow."""

    first: Fraction
    step: Fraction
    grows: Fraction = Fraction(0)
    places: int = 3
    """How many decimal places its numbers may be written with."""

    def at(self, place: int) -> Fraction:
        """The term at a place."""
        gone = place - 1
        return self.first + gone * self.step + self.grows * gone * (gone - 1) / 2


@dataclass(frozen=True, slots=True)
class Times:
    """Each term is so many times the one before."""

    first: Fraction
    factor: Fraction
    places: int = 3
    """How many decimal places its numbers may be written with."""

    def at(self, place: int) -> Fraction:
        """The term at a place."""
        return self.first * self.factor ** (place - 1)


Rule = Steps | Times
_NEEDED = {"step": 2, "growing": 3, "times": 2}


def terms_needed(sort: str, step: Fraction | None) -> int:
    """How many terms settle a rule of a sort, whose step may be given."""
    return _NEEDED[sort] if step is None else 1


def rule_through(known: Known, sort: str, step: Fraction | None = None) -> Rule | None:
    """The one rule of its sort through all the known terms; None if there is none. Needs as many as settle it."""
    places = sorted(known)
    rule: Rule | None
    if step is not None:
        rule = Steps(known[places[0]] - (places[0] - 1) * step, step)
    elif sort == "times":
        rule = _times(known, places)
    elif sort == "growing":
        rule = _growing(known, places)
    else:
        a, b = places[:2]
        slope = (known[b] - known[a]) / (b - a)
        rule = Steps(known[a] - (a - 1) * slope, slope)
    return rule if rule and all(rule.at(place) == known[place] for place in places) else None


def _growing(known: Known, places: list[int]) -> Steps:
    """The quadratic through three points, by divided differences."""
    a, b, c = places[:3]
    ab, bc = (known[b] - known[a]) / (b - a), (known[c] - known[b]) / (c - b)
    half = (bc - ab) / (c - a)

    def at(place: int) -> Fraction:
        return known[a] + ab * (place - a) + half * (place - a) * (place - b)

    return Steps(at(1), at(2) - at(1), 2 * half)


def _times(known: Known, places: list[int]) -> Times | None:
    a, b = places[:2]
    if known[a] == 0 or known[b] / known[a] <= 0:
        return None
    ratio = known[b] / known[a]
    top, below = whole_root(ratio.numerator, b - a), whole_root(ratio.denominator, b - a)
    if top is None or below is None:
        return None
    factor = Fraction(top, below)
    return Times(known[a] / factor ** (a - 1), factor)


def whole_root(number: int, power: int) -> int | None:
    """The whole number whose ``power``-th power is ``number``; None if there is none."""
    low, high = 0, number + 1
    while low < high:
        middle = (low + high) // 2
        if middle**power < number:
            low = middle + 1
        else:
            high = middle
    return low if low**power == number else None


def place_of(rule: Rule, number: Fraction) -> int | None:
    """Where a number stands in a count by equal steps that goes on for ever; None if it is never said."""
    if isinstance(rule, Times) or rule.grows:
        return None
    if rule.step == 0:
        return 1 if number == rule.first else None
    gone = (number - rule.first) / rule.step
    return int(gone) + 1 if gone >= 0 and gone.denominator == 1 else None


def mistakes_in(known: Known, sort: str, step: Fraction | None) -> list[tuple[int, Rule]]:
    """Each place where changing one term gives all a rule, and that rule; empty if all is right."""
    if rule_through(known, sort, step):
        return []
    found = []
    for place in sorted(known):
        rule = rule_through({other: term for other, term in known.items() if other != place}, sort, step)
        if rule and (known[place].denominator > 1 or rule.at(place).denominator == 1):
            found.append((place, rule))
    return found
