"""A balance as a question for the search: who may stand where, checked against the cast."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from ...check.suggestion import did_you_mean
from ...model.activity import CastMember, Context
from ...model.document import Loc
from ..kind import Unsolvable, whole_fact
from .search import ANYWHERE, LEFT, OUT, RIGHT, Question, Teams, every_balance

if TYPE_CHECKING:
    from . import BalanceFields


@dataclass(frozen=True, slots=True)
class Sides:
    """The cast of a balance, what each is worth, and the question to search."""

    characters: tuple[CastMember, ...]
    question: Question
    start: Teams
    """Who stands on each side beforehand, as bits; nobody when nothing is settled."""

    @classmethod
    def of(cls, fields: BalanceFields, context: Context) -> Sides:
        """The question an author asks. Raises ``Unsolvable`` where it cannot be asked of this cast."""
        _check_cast(fields, context)
        values = whole_fact(context, fields.fact, ("cast",))
        masses = tuple(values[character.id] for character in context.characters)
        places, start = _places(fields, context, masses)
        a_side = fields.teams if isinstance(fields.teams, int) else None
        mirrored = not any(start)
        return cls(context.characters, Question(masses, places, a_side, mirrored), start)

    def every_balance(self) -> list[Teams]:
        """Every way, in no stated order."""
        return every_balance(self.question)

    def total(self, team: int) -> int:
        """What a team comes to."""
        return sum(mass for index, mass in enumerate(self.question.masses) if team >> index & 1)

    def characters_of(self, teams: Teams) -> tuple[tuple[CastMember, ...], tuple[CastMember, ...]]:
        """The characters of both teams, as the cast lists them."""
        left, right = (tuple(p for i, p in enumerate(self.characters) if team >> i & 1) for team in teams)
        return left, right

    def place_in_order(self, teams: Teams) -> tuple[int, int, list[int], list[int]]:
        """What the answers are sorted by: total, number of characters, and the cast's own order."""
        left, right = ([i for i in range(len(self.characters)) if team >> i & 1] for team in teams)
        return self.total(teams[0]), len(left) + len(right), left, right


def _check_cast(fields: BalanceFields, context: Context) -> None:
    count = len(context.characters)
    if count < 2:
        raise Unsolvable(("cast",), "Two teams need at least two characters.", "add characters to the cast.")
    if count > context.caps.characters:
        raise Unsolvable(
            ("cast",),
            f"{count} characters are too many for one activity.",
            f"choose at most {context.caps.characters}.",
        )
    if isinstance(fields.teams, int) and 2 * fields.teams > count:
        raise Unsolvable(
            ("teams",),
            f"{fields.teams} a side takes {2 * fields.teams} characters; there are {count}.",
            "make the teams smaller, or add characters.",
        )
    if fields.given and fields.start:
        raise Unsolvable(("given",), "Both a start and something given are stated.", "keep one of the two.")
    if fields.given and (fields.given.side is None) == (fields.given.player is None):
        raise Unsolvable(
            ("given",), "What is given is either one side or one player.", "write `side: […]` or `player: …`."
        )


def _places(fields: BalanceFields, context: Context, masses: Sequence[int]) -> tuple[tuple[frozenset[str], ...], Teams]:
    """Where each may stand, and who stands there already."""
    everybody = fields.teams == "all"
    free = ANYWHERE - {OUT} if everybody else ANYWHERE
    left, right = 0, 0
    if fields.given and fields.given.side is not None:
        left = _bits(fields.given.side, context, ("given", "side"))
        free -= {LEFT}
    elif fields.given and fields.given.player is not None:
        left = _bits([fields.given.player], context, ("given", "player"))
    elif fields.start:
        left = _bits(fields.start.left, context, ("start", "left"))
        right = _bits(fields.start.right, context, ("start", "right"))
        free = _joining(fields, masses, left, right, free)
    if isinstance(fields.teams, int) and max(left.bit_count(), right.bit_count()) > fields.teams:
        raise Unsolvable(
            ("teams",),
            f"A side has more than {fields.teams} on it from the start.",
            "make the teams larger, or name fewer.",
        )
    if left & right:
        raise Unsolvable(("start",), "Somebody stands on both sides at once.", "name each character on one side.")
    places = tuple(
        frozenset({LEFT}) if left >> i & 1 else frozenset({RIGHT}) if right >> i & 1 else free
        for i in range(len(masses))
    )
    return places, (left, right)


def _joining(
    fields: BalanceFields, masses: Sequence[int], left: int, right: int, free: frozenset[str]
) -> frozenset[str]:
    tilt = sum(mass * ((left >> i & 1) - (right >> i & 1)) for i, mass in enumerate(masses))
    if tilt == 0:
        raise Unsolvable(
            ("start",), "The two sides of the start are level already.", "start with sides that are not level."
        )
    if fields.joining == "either":
        return free
    return free - {LEFT if tilt > 0 else RIGHT}


def _bits(ids: Iterable[str], context: Context, loc: Loc) -> int:
    known = [character.id for character in context.characters]
    bits = 0
    for id_ in ids:
        if id_ not in known:
            raise Unsolvable(
                loc,
                f'"{id_}" is not in the cast of this activity.{did_you_mean(id_, known)}',
                f"use one of {', '.join(known)}." if known else "add the character to the cast.",
                "activity-fact-missing",
            )
        bits |= 1 << known.index(id_)
    return bits
