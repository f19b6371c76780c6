"""Every way to fill the gaps of a number sentence: all gaps but one are tried in turn, the last is undone."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product
from math import prod

from ...expression.gapped import GappedSentence
from ...expression.number import Rational
from ...expression.tree import Gap, Node, Operation, gaps_in, holds, join, worth_of

Allowed = Sequence[Rational]
_NO_LAST: Sequence[Rational | None] = (None,)
MOST_TRIED = 100_000
"""Cases looked at in one activity: about half a second's work."""


class NeedsRange(Exception):
    """More than one number could stand in a gap, and nothing says which may."""


class TooManyCases(Exception):
    """There are more cases than can be looked at."""


@dataclass(frozen=True, slots=True)
class Undoing:
    """One operation on the way down to a gap: its sign, the other part, and whether the gap is on its left."""

    sign: str
    other: Node
    gap_is_left: bool


@dataclass(frozen=True, slots=True)
class Plan:
    """How a sentence is filled: which gap is undone, out of which side, from the worth of which other."""

    gap: int
    way: tuple[Undoing, ...]
    worth: Rational
    known_side: int


def way_to(node: Node, gap: int) -> tuple[Undoing, ...]:
    """The operations around a gap, outermost first."""
    way: list[Undoing] = []
    while isinstance(node, Operation):
        is_left = gap in gaps_in(node.left)
        way.append(Undoing(node.sign, node.right if is_left else node.left, is_left))
        node = node.left if is_left else node.right
    return tuple(way)


def undo(step: Undoing, target: Rational, other: Rational) -> tuple[Rational, ...] | None:
    """What the part with the gap must be for an operation to give ``target``: nothing, one number, or None for many."""
    if step.sign in "+&":
        return (target - other,)
    if step.sign == "−":
        return (target + other,) if step.gap_is_left else (other - target,)
    if step.sign == "÷" and step.gap_is_left:
        return (target * other,) if other else ()
    top, below = (target, other) if step.sign == "×" else (other, target)
    if top == 0 and below == 0:
        return None
    found = join(top, "÷", below)
    return () if found is None or (step.sign == "÷" and top == 0) else (found,)


def plan_for(sentence: GappedSentence, domains: Sequence[Allowed | None]) -> Plan | None:
    """The gap to undo: the one without a range if there is one, else the last beside an equals sign."""
    free = [gap for gap, domain in enumerate(domains) if domain is None]
    plans: dict[int, Plan] = {}
    for at, relation in enumerate(sentence.relations):
        for here, there in ((at, at + 1), (at + 1, at)):
            for gap in gaps_in(sentence.sides[here]) if relation == "=" else ():
                plans[gap] = Plan(gap, way_to(sentence.sides[here], gap), _worth(sentence.sides[here], gap), there)
    if len(free) > 1 or any(gap not in plans for gap in free):
        raise NeedsRange
    return plans[free[0]] if free else plans[max(plans)] if plans else None


def _worth(node: Node, gap: int) -> Rational:
    while isinstance(node, Operation):
        node = node.left if gap in gaps_in(node.left) else node.right
    return node.worth if isinstance(node, Gap) else 1


def domains_of(sentence: GappedSentence, allowed: Allowed | None) -> list[Allowed | None]:
    """What may stand in each gap; None for any number."""
    digits: dict[str, Allowed] = {"digit": range(10), "first": range(1, 10)}
    return [digits.get(kind, allowed) for kind in sentence.gaps]


def fillings(sentence: GappedSentence, allowed: Allowed | None, most: int) -> Iterator[tuple[Rational, ...]]:
    """Each filling that makes the sentence true. Raises ``NeedsRange`` and ``TooManyCases``."""
    domains = domains_of(sentence, allowed)
    plan = plan_for(sentence, domains)
    tried = [[None] if plan and gap == plan.gap else domain for gap, domain in enumerate(domains)]
    if prod(len(domain or ()) for domain in tried) > most:
        raise TooManyCases
    looked = 0
    for case in product(*(domain or () for domain in tried)):
        gaps = [number if number is not None else 0 for number in case]
        for number in _last(sentence, plan, gaps, domains) if plan else _NO_LAST:
            looked += 1
            if looked > most:
                raise TooManyCases
            if plan and number is not None:
                gaps[plan.gap] = number
            if is_filled_truly(sentence, gaps):
                yield tuple(gaps)


def only_filling(sentence: GappedSentence, plan: Plan, gaps: Sequence[Rational]) -> Rational | None:
    """What makes the sentence true in the gap of a plan, the others being filled; None where nothing or anything does."""
    filled = list(gaps)
    try:
        found = _last(sentence, plan, filled, [None] * len(filled))
    except NeedsRange:
        return None
    for number in found:
        filled[plan.gap] = number
        if is_filled_truly(sentence, filled):
            return number
    return None


def _last(
    sentence: GappedSentence, plan: Plan, gaps: list[Rational], domains: Sequence[Allowed | None]
) -> Sequence[Rational]:
    """What may stand in the gap that is undone, the others being filled."""
    domain = domains[plan.gap]
    target = worth_of(sentence.sides[plan.known_side], gaps)
    for step in plan.way:
        other = worth_of(step.other, gaps)
        if target is None or other is None:
            return ()
        found = undo(step, target, other)
        if found is None:
            if domain is None:
                raise NeedsRange
            return domain
        if not found:
            return ()
        target = found[0]
    number = None if target is None else join(target, "÷", plan.worth)
    return () if number is None or not may_stand(number, domain) else (number,)


def may_stand(number: Rational, domain: Allowed | None) -> bool:
    """Whether a number is one of those that may stand in a gap."""
    if domain is None:
        return True
    return (isinstance(number, int) or not isinstance(domain, range)) and number in domain


def is_filled_truly(sentence: GappedSentence, gaps: Sequence[Rational]) -> bool:
    """Whether every relation of the sentence holds with its gaps filled so."""
    worths = [worth_of(side, gaps) for side in sentence.sides]
    for left, relation, right in zip(worths, sentence.relations, worths[1:], strict=False):
        if left is None or right is None or not holds(left, relation, right):
            return False
    return True
