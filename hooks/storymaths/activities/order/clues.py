"""Clues about an order, read from words, and what each asks of those already placed."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from ...model.activity import CastMember
from ...model.document import Loc
from ...parse.suggestion import did_you_mean
from ..kind import Unsolvable

Says = Literal["chain", "between", "next", "not-next", "first", "last"]
_FORMS: tuple[tuple[Says, re.Pattern[str]], ...] = (
    ("between", re.compile(r"(?P<a>.+?) (?:is )?between (?P<b>.+?) and (?P<c>.+)")),
    ("not-next", re.compile(r"(?P<a>.+?) (?:is )?not next to (?P<b>.+)")),
    ("next", re.compile(r"(?P<a>.+?) (?:is )?next to (?P<b>.+)")),
    ("first", re.compile(r"(?P<a>.+?) (?:is |has )?(?:the )?(?P<end>first|least)")),
    ("last", re.compile(r"(?P<a>.+?) (?:is |has )?(?:the )?(?P<end>last|most)")),
)
_OTHER_END: dict[Says, Says] = {"first": "last", "last": "first"}
_RELATION = re.compile(r"\s*([<>])\s*")
HOW = "write it as `gull > crab`, `seal between gull and crab`, `gull next to crab`, `gull first` or `gull last`."


@dataclass(frozen=True, slots=True)
class Clue:
    """A clue, with characters as their positions in the cast. A chain runs from least to most, as orders do here."""

    says: Says
    who: tuple[int, ...]
    text: str
    loc: Loc
    sign: str = ""
    """The sign a chain is written with; empty for clues in words."""

    @property
    def minds_the_last(self) -> bool:
        """Whether it matters who was placed just before."""
        return self.says in ("next", "not-next")

    def allows(self, newcomer: int, placed: int, last: int | None, count: int) -> bool:
        """Whether ``newcomer`` may come next, after those in ``placed`` (bits), the last of whom is ``last``."""
        if newcomer not in self.who and self.says != "next":
            return True
        there = [placed >> index & 1 for index in self.who]
        if self.says == "chain":
            return all(there[: self.who.index(newcomer)])
        if self.says == "between":
            return there[1] + there[2] == 1 if newcomer == self.who[0] else True
        if self.says == "first":
            return placed == 0
        if self.says == "last":
            return placed.bit_count() == count - 1
        return self._allows_beside(newcomer, there, last)

    def _allows_beside(self, newcomer: int, there: Sequence[int], last: int | None) -> bool:
        if sum(there) != 1:
            return True  # neither is placed yet, or both are
        alone = self.who[there.index(1)]
        comes_beside = newcomer in self.who and last == alone
        if self.says == "not-next":
            return not comes_beside
        # Once one is placed the other must follow at once.
        return comes_beside


def read_clue(text: str, characters: Sequence[CastMember], rising: bool, loc: Loc) -> Clue:
    """The clue in a text; ``first`` is the end pupils start with, the least if ``rising``.

    Raises ``Unsolvable`` where it cannot be understood.
    """
    plain = " ".join(text.replace("−", "-").split()).rstrip(".")
    parts = _RELATION.split(plain)
    if len(parts) > 1:
        signs = set(parts[1::2])
        if len(signs) > 1:
            raise Unsolvable(loc, f'"{plain}" turns round in the middle.', "write it with > only, or with < only.")
        who = tuple(_who(name, characters, loc, plain) for name in parts[::2])
        return _clue("chain", who[::-1] if signs == {">"} else who, plain, loc, parts[1])
    for says, form in _FORMS:
        match = form.fullmatch(plain)
        if match:
            named = match.groupdict()
            turned = named.pop("end", "") in ("first", "last") and not rising
            who = tuple(_who(name, characters, loc, plain) for name in named.values())
            return _clue(_OTHER_END[says] if turned else says, who, plain, loc)
    raise Unsolvable(loc, f'The clue "{plain[:60]}" is not understood.', HOW)


def _clue(says: Says, who: tuple[int, ...], text: str, loc: Loc, sign: str = "") -> Clue:
    if len(set(who)) < len(who):
        raise Unsolvable(loc, f'"{text}" names somebody twice.', "name different characters.")
    return Clue(says, who, text, loc, sign)


def _who(name: str, characters: Sequence[CastMember], loc: Loc, clue: str) -> int:
    wanted = name.strip().lower().removeprefix("the ")
    for index, character in enumerate(characters):
        if wanted in (character.id, character.name.lower()):
            return index
    known = [character.name for character in characters]
    if not wanted:
        raise Unsolvable(loc, f'A name is missing in "{clue}".', HOW)
    raise Unsolvable(
        loc,
        f'"{name.strip()[:40]}" is not in the cast of this activity.{did_you_mean(wanted, known)}',
        f"use one of {', '.join(known)}.",
        "activity-fact-missing",
    )
