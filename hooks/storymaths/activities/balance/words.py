"""A balance in words and drawings: the task, each answer's reasoning, how one knows it is all, and the slip."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations
from typing import TYPE_CHECKING

from ...model.activity import CastMember, Context, Demands, Figure, LikelyError
from ...model.quantity import UNITS
from ..saying import capital, counted, listed
from .search import LEFT, RIGHT, Teams
from .sides import Sides
from .why import why_none

if TYPE_CHECKING:
    from . import BalanceFields

Team = Sequence[CastMember]
_LISTED_TOTALS = 8


class Words:
    """Says what a balance is about."""

    def __init__(self, fields: BalanceFields, context: Context, sides: Sides) -> None:
        self._fields, self._context, self._sides = fields, context, sides
        about = context.facts.get(fields.fact)
        self._unit = fields.unit if fields.unit is not None else about.unit if about else ""
        self._measure = self._unit in UNITS
        self._value = {
            character.id: mass for character, mass in zip(sides.characters, sides.question.masses, strict=True)
        }

    # What a pupil sees.

    def ask(self) -> str:
        """The task."""
        same = f"the same number of {self._unit}" if self._unit and not self._measure else f"the same {self._fact}"
        teams = self._fields.teams
        if self._fields.start:
            return self._ask_to_level()
        left, _ = self._sides.characters_of(self._sides.start)
        if self._fields.given and self._fields.given.side is not None:
            everybody = " Everybody must be used." if teams == "all" else ""
            one = "one side" if teams == "any" else "one of two teams"
            return f"{_names(left)} {_is(left)} on {one}. Who goes opposite, so that both sides have {same}?{everybody} Find every way."
        some = f" {capital(left[0].name)} must be in one of them." if left else ""
        if teams == "all":
            return f"Put everybody into two teams with {same}.{some} Find every way."
        size = "teams" if teams == "any" else f"teams of {teams}" if teams != 1 else "characters"
        rest = " Not everybody has to join in." if teams == "any" else ""
        return f"Make two {size} with {same}.{rest}{some} Find every way."

    def _ask_to_level(self) -> str:
        left, right = self._sides.characters_of(self._sides.start)
        there = listed([character.name for character in right])
        opposite = f"{there} {_is(right)} on the right" if right else "nobody is on the right"
        uneven = f"{self._sum(left)} ≠ {self._sum(right)}" if right else "only one side has anybody"
        less = "the lighter side" if self._fields.fact == "mass" else "the side that has less"
        side = less if self._fields.joining == "lighter" else "either side"
        everybody = self._fields.teams == "all"
        who = f"Everybody else must join {side}. Can they" if everybody else f"Who can join {side} to"
        return f"{_names(left)} {_is(left)} on the left and {opposite}. It is not level: {uneven}. {who} make it level? Find every way."

    def shows(self) -> tuple[str, ...]:
        """What each card carries."""
        return tuple(self.amount(mass) for mass in self._sides.question.masses)

    def lines(self) -> tuple[str, ...]:
        """A frame to write an answer into."""
        left, _ = self._sides.characters_of(self._sides.start)
        if self._fields.given and self._fields.given.side is not None:
            return (f"{_plus(left)} = ___",)
        gaps = " + ".join(["___"] * self._fields.teams) if isinstance(self._fields.teams, int) else "___"
        return (f"{gaps} = {gaps}",)

    # One answer.

    def said(self, left: Team, right: Team) -> str:
        """Such as ``gull + crab = puffin``."""
        return f"{_plus(left)} = {_plus(right)}"

    def worked(self, left: Team, right: Team) -> str:
        """Why the two are level, and who joined where there was a start."""
        line = f"{self._sum(left)} = {self._sum(right)}"
        if len(left) > 1 and len(right) > 1:
            line += f", because both sides come to {self.amount(self.total(left))}"
        if self._fields.start:
            before = self._sides.characters_of(self._sides.start)
            joined = [
                f"{listed([p.name for p in team if p not in there])} on the {side}"
                for team, there, side in ((left, before[0], "left"), (right, before[1], "right"))
                if len(team) > len(there)
            ]
            line += f"; joined by {listed(joined)}"
        return f"{line}."

    def total(self, team: Team) -> int:
        """What a team comes to."""
        return sum(self._value[character.id] for character in team)

    def amount(self, number: int) -> str:
        """A value with its unit: ``6``, ``6 kg``, ``4 legs``."""
        return counted(number, self._unit) if not self._measure else f"{number:,} {self._unit}"

    # For the adult.

    def why_these_are_all(self, found: Sequence[Teams]) -> str:
        """How one knows these are all, or why there is none."""
        if not found:
            return why_none(self._sides, self._fields, self.amount)
        ways = "There is one way" if len(found) == 1 else f"There are {len(found)} ways"
        if any(self._sides.start) and not self._open_sides():
            left, right = (self._sides.total(team) for team in self._sides.start)
            return (
                f"{ways}. Whoever joins must come to {self.amount(abs(left - right))}; go through the others, the largest "
                "first, and no other choice of them does."
            )
        totals = sorted({self._sides.total(left) for left, _ in found})
        if len(totals) > _LISTED_TOTALS:
            there = f"{len(totals)} totals, from {self.amount(totals[0])} to {self.amount(totals[-1])}"
        else:
            there = listed([self.amount(total) for total in totals])
        return (
            f"{ways}. List every team by its total, from the smallest. Two teams that may play, with nobody in both, "
            f"have the same total only at {there}."
        )

    def _open_sides(self) -> bool:
        """Whether characters may still join both sides."""
        settled = self._sides.start[0] | self._sides.start[1]
        places = [p for i, p in enumerate(self._sides.question.places) if not settled >> i & 1]
        return any({LEFT, RIGHT} <= place for place in places)

    def likely_error(self, found: Sequence[Teams]) -> LikelyError | None:
        """Matching the number of characters rather than what they are worth."""
        for size in (2, 1, 3):
            for left in combinations(self._context.characters, size):
                for right in combinations([p for p in self._context.characters if p not in left], size):
                    if self.total(left) != self.total(right):
                        return LikelyError(
                            "Counts the characters on each side instead of adding what they are worth.",
                            f"{_plus(left)} against {_plus(right)}, {size} on each side: {self._unequal(left, right)}.",
                        )
        return None

    def _unequal(self, left: Team, right: Team) -> str:
        line = f"{self._sum(left)} ≠ {self._sum(right)}"
        if len(left) == 1:
            return line
        return f"{line}, because {self.amount(self.total(left))} is not {self.amount(self.total(right))}"

    def demands(self, found: Sequence[Teams]) -> Demands:
        """All cards are read; the totals of the answers, and of an uneven start, are worked out."""
        masses = self._sides.question.masses
        worked_out: set[int] = set()
        signs = {"="}
        for team in {team for teams in (*found, self._sides.start) for team in teams if team.bit_count() > 1}:
            worked_out |= {mass for index, mass in enumerate(masses) if team >> index & 1}
            worked_out.add(self._sides.total(team))
            signs.add("+")
        return Demands(
            numbers=tuple(Fraction(mass) for mass in masses),
            calculated=tuple(Fraction(number) for number in sorted(worked_out)),
            symbols=frozenset(signs | ({"≠"} if self._fields.start else set())),
            units=frozenset({self._unit} if self._measure else ()),
            words=("balance", "equal", "same", "total"),
        )

    # Drawings.

    def figure(self) -> Figure:
        """The two sides as they stand before anybody plays."""
        left, right = self._sides.characters_of(self._sides.start)
        return self._drawn(left, right)

    def answer_figure(self, left: Team, right: Team) -> Figure:
        """The two sides once they are level."""
        return self._drawn(left, right)

    def _drawn(self, left: Team, right: Team) -> Figure:
        weights = self.total(left), self.total(right)
        tilt = "level" if weights[0] == weights[1] else "left" if weights[0] > weights[1] else "right"
        if self._fields.given and not right:
            tilt = "level"  # the question is who goes opposite; the drawing does not answer it
        sides = [[[p.name, self.amount(self._value[p.id])] for p in team] for team in (left, right)]
        on = [listed([f"{name}, {amount}" for name, amount in side]) or "nobody yet" for side in sides]
        hangs = "The two sides are level" if tilt == "level" else f"The {tilt} side is lower"
        alt = f"A balance. On the left: {on[0]}. On the right: {on[1]}. {hangs}."
        return Figure("balance", {"left": sides[0], "right": sides[1], "tilt": tilt}, alt)

    @property
    def _fact(self) -> str:
        return self._fields.fact.replace("_", " ").replace("-", " ")

    def _sum(self, team: Team) -> str:
        unit = f" {self._unit}" if self._measure else ""
        return " + ".join(f"{self._value[character.id]:,}{unit}" for character in team)


def _plus(team: Team) -> str:
    return " + ".join(character.name for character in team)


def _names(team: Team) -> str:
    return capital(listed([character.name for character in team]))


def _is(team: Team) -> str:
    return "is" if len(team) == 1 else "are"
