"""A balance as it stands: what each character is worth, who is on it already, and who else may stand where."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from ...expression.noun import Noun, noun_of
from ...model.activity import CastMember, Context
from ...model.document import Loc
from ...model.quantity import UNITS
from ...parse.suggestion import did_you_mean
from ..kind import Unsolvable, whole_fact
from ..saying import counted, listed
from .search import ANYWHERE, LEFT, OUT, RIGHT, Question, Teams, every_balance
from .tasks import BalanceTask, LevelTeams, OppositeTask, PlayerTask, StartTask, Team, TeamsTask


@dataclass(frozen=True, slots=True)
class Beam:
    """The cast of a balance, and the question to search."""

    characters: tuple[CastMember, ...]
    question: Question
    settled: Teams
    """Who stands on each side beforehand, as bits; nobody when nothing is settled."""
    unit: Noun
    """What the values are counted in, such as kg or legs; empty for bare numbers."""

    @property
    def measure(self) -> str:
        """The unit, where it is one of measure."""
        return self.unit if self.unit in UNITS else ""

    @property
    def settled_teams(self) -> tuple[Team, Team]:
        """Who stands on each side beforehand."""
        return self._team(self.settled[0]), self._team(self.settled[1])

    @property
    def may_join_both(self) -> bool:
        """Whether characters may still join both sides."""
        bits = self.settled[0] | self.settled[1]
        return any({LEFT, RIGHT} <= place for i, place in enumerate(self.question.places) if not bits >> i & 1)

    def level_teams(self) -> list[LevelTeams]:
        """Every way: the smallest total first, then the fewest characters, then as the cast is listed."""
        ways = [LevelTeams(self._team(left), self._team(right), self._total(left)) for left, right in self.search()]
        place = {character.id: at for at, character in enumerate(self.characters)}

        def in_order(way: LevelTeams) -> tuple[int, int, list[int], list[int]]:
            left, right = ([place[character.id] for character in team] for team in (way.left, way.right))
            return way.total, len(left) + len(right), left, right

        return sorted(ways, key=in_order)

    def search(self) -> list[Teams]:
        """Every way as bits, in no stated order."""
        return every_balance(self.question)

    def worth(self, character: CastMember) -> int:
        """What a character is worth."""
        return self.question.masses[self.characters.index(character)]

    def total(self, team: Team) -> int:
        """What a team comes to."""
        return sum(map(self.worth, team))

    def amount(self, number: int) -> str:
        """A value with its unit: ``6``, ``6 kg``, ``4 legs``."""
        return f"{number:,} {self.unit}" if self.measure else counted(number, self.unit)

    def amount_of_any(self, numbers: Sequence[int]) -> str:
        """Several with their unit once: ``7, 9 or 10 bricks``."""
        return listed([*(f"{number:,}" for number in numbers[:-1]), self.amount(numbers[-1])], "or")

    def _team(self, bits: int) -> Team:
        return tuple(character for i, character in enumerate(self.characters) if bits >> i & 1)

    def _total(self, bits: int) -> int:
        return sum(mass for i, mass in enumerate(self.question.masses) if bits >> i & 1)


def set_up(task: BalanceTask, context: Context) -> Beam:
    """The balance an author asks for. Raises ``Unsolvable`` where it cannot be asked of this cast."""
    _check_teams(task, len(context.characters))
    values = whole_fact(context, task.fact, ("cast",))
    masses = tuple(values[character.id] for character in context.characters)
    settled = left, right = _settle(task, context)
    free = _free_places(task, sum(mass * ((left >> i & 1) - (right >> i & 1)) for i, mass in enumerate(masses)))
    a_side = task.teams if isinstance(task.teams, int) else None
    if a_side is not None and max(left.bit_count(), right.bit_count()) > a_side:
        message = f"A side has more than {a_side} on it from the start."
        raise Unsolvable(("teams",), message, "make the teams larger, or name fewer.")
    if left & right:
        raise Unsolvable(("start",), "Somebody stands on both sides at once.", "name each character on one side.")
    places = tuple(
        frozenset({LEFT}) if left >> i & 1 else frozenset({RIGHT}) if right >> i & 1 else free
        for i in range(len(masses))
    )
    about = context.facts.get(task.fact)
    unit = noun_of(about) if task.unit is None else task.noun(task.unit)
    return Beam(context.characters, Question(masses, places, a_side, not any(settled)), settled, unit)


def _check_teams(task: BalanceTask, count: int) -> None:
    if count < 2:
        raise Unsolvable(("cast",), "Two teams need at least two characters.", "add characters to the cast.")
    if isinstance(task.teams, int) and 2 * task.teams > count:
        message = f"{task.teams} a side takes {2 * task.teams} characters; there are {count}."
        raise Unsolvable(("teams",), message, "make the teams smaller, or add characters.")


def _settle(task: BalanceTask, context: Context) -> Teams:
    """Who stands there already."""
    match task:
        case OppositeTask():
            return _bits(task.given.side, context, ("given", "side")), 0
        case PlayerTask():
            return _bits([task.given.player], context, ("given", "player")), 0
        case StartTask():
            left = _bits(task.start.left, context, ("start", "left"))
            return left, _bits(task.start.right, context, ("start", "right"))
        case TeamsTask():
            return 0, 0


def _free_places(task: BalanceTask, tilt: int) -> frozenset[str]:
    """Where those who are not settled may stand; ``tilt`` is by how much the left side is heavier."""
    free = ANYWHERE - {OUT} if task.teams == "all" else ANYWHERE
    match task:
        case OppositeTask():
            return free - {LEFT}
        case StartTask() if tilt == 0:
            message = "The two sides of the start are level already."
            raise Unsolvable(("start",), message, "start with sides that are not level.")
        case StartTask(joining="lighter"):
            return free - {LEFT if tilt > 0 else RIGHT}
        case _:
            return free


def _bits(ids: Iterable[str], context: Context, loc: Loc) -> int:
    known = [character.id for character in context.characters]
    bits = 0
    for id_ in ids:
        if id_ not in known:
            message = f'"{id_}" is not in the cast of this activity.{did_you_mean(id_, known)}'
            fix = f"use one of {', '.join(known)}." if known else "add the character to the cast."
            raise Unsolvable(loc, message, fix, "activity-fact-missing")
        bits |= 1 << known.index(id_)
    return bits
