"""Every way of setting two teams level, found from two halves of the cast that meet in the middle."""

from __future__ import annotations

from collections import defaultdict
from dataclasses import dataclass

LEFT, RIGHT, OUT = "left", "right", "out"
ANYWHERE = frozenset({LEFT, RIGHT, OUT})

Teams = tuple[int, int]
"""The left and the right team as bits: character ``i`` of the cast is ``1 << i``."""
_Way = tuple[int, int, int]  # left minus right, and who stands on the left and on the right


@dataclass(frozen=True, slots=True)
class Question:
    """What each character weighs, where each may stand, and what the teams must keep besides being level."""

    masses: tuple[int, ...]
    """Above nought, so that a team of nobody is never level with a team of somebody."""
    places: tuple[frozenset[str], ...]
    a_side: int | None = None
    """How many stand on each side, where that is laid down."""
    mirrored: bool = True
    """Whether the sides are alike, so that two teams and their mirror image are one way."""


def every_balance(question: Question) -> list[Teams]:
    """All pairs of teams that are level, in no stated order.

    Of two mirror images it gives the one with the earliest character on the left. The work grows with
    the number of ways to place half the cast, so twelve characters take some milliseconds.
    """
    middle = len(question.masses) // 2
    by_difference: defaultdict[int, list[Teams]] = defaultdict(list)
    for difference, left, right in _ways(question, middle, len(question.masses)):
        by_difference[-difference].append((left, right))
    found: list[Teams] = []
    for difference, left, right in _ways(question, 0, middle):
        meeting = by_difference.get(difference)
        if meeting is None:
            continue
        if not left | right:
            found += [teams for teams in meeting if teams[0] and (not question.mirrored or _leads(*teams))]
        elif not question.mirrored or _leads(left, right):
            found += [(left | more_left, right | more_right) for more_left, more_right in meeting]
    # Two sides without anybody are level too, and are no teams; where one side has somebody, so has the other.
    a_side = question.a_side
    return found if a_side is None else [teams for teams in found if _are(a_side, teams)]


def _ways(question: Question, first: int, end: int) -> list[_Way]:
    """All ways of placing the characters from ``first`` up to ``end``."""
    ways: list[_Way] = [(0, 0, 0)]
    for index in range(first, end):
        mass, bit, places = question.masses[index], 1 << index, question.places[index]
        grown: list[_Way] = []
        if OUT in places:
            grown += ways
        if LEFT in places:
            grown += [(difference + mass, left | bit, right) for difference, left, right in ways]
        if RIGHT in places:
            grown += [(difference - mass, left, right | bit) for difference, left, right in ways]
        ways = grown
    return ways


def _leads(left: int, right: int) -> bool:
    """Whether the earliest character of the two teams stands on the left."""
    return left & -left < right & -right if left and right else bool(left)


def _are(a_side: int, teams: Teams) -> bool:
    return teams[0].bit_count() == a_side == teams[1].bit_count()
