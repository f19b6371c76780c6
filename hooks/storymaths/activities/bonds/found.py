"""The bonds of an activity: what is to be split, by whom, and every way of doing it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, islice
from typing import TYPE_CHECKING, NoReturn

from ...model.activity import CastMember, Context
from ..kind import Unsolvable, whole_fact
from .splitting import Split, orders_of

if TYPE_CHECKING:
    from . import BondsFields


@dataclass(frozen=True, slots=True)
class Way:
    """One way: the parts, and who holds or brings each where it is somebody's."""

    parts: tuple[int, ...]
    who: tuple[CastMember, ...] = ()


@dataclass(frozen=True, slots=True)
class Bonds:
    """What was found. ``whole`` is given unless the known parts make it."""

    whole: int
    ways: tuple[Way, ...]
    known: tuple[int, ...]
    missing: int
    """How many parts are to be found."""
    split: Split | None
    """What the missing parts may be; None where characters bring their own numbers, or none is missing."""
    pickers: tuple[CastMember, ...] = ()
    """Those whose numbers are the parts."""
    holders: tuple[CastMember, ...] = ()
    """Those who hold a part each, the known parts first."""


def bonds_in(fields: BondsFields, context: Context) -> Bonds:
    """All the ways. Raises ``Unsolvable``."""
    if len(context.characters) > context.caps.characters:
        message = f"{len(context.characters)} characters are more than one activity can hold."
        raise Unsolvable(("cast",), message, f"choose at most {context.caps.characters}.")
    if fields.fact is not None:
        return _from_the_cast(fields, context)
    if isinstance(fields.whole, str):
        message = f'The whole is "{fields.whole}", and no fact gives its number.'
        raise Unsolvable(("whole",), message, "write a number, or add fact.", "activity-fact-missing")
    if fields.whole is None:
        return _whole_of(fields, context)
    return _split(fields, context, fields.whole)


def _from_the_cast(fields: BondsFields, context: Context) -> Bonds:
    values = whole_fact(context, fields.fact or "")
    for name in ("known", "largest", "smallest", "different", "order"):
        if name in fields.model_fields_set:
            message = f'"{name}" has no part in it when characters bring their own numbers.'
            raise Unsolvable((name,), message, "leave it out, or leave out fact.", "activity-broken")
    whole = fields.whole
    if whole is None:
        raise Unsolvable(
            ("whole",), "The whole is not given.", "add whole, a number or a character.", "activity-broken"
        )
    if isinstance(whole, str) and whole not in values:
        message = f'"{whole}" is not in the cast.'
        raise Unsolvable(("whole",), message, f"use one of {', '.join(values)}.", "activity-fact-missing")
    pickers = tuple(character for character in context.characters if character.id != whole)
    total = values[whole] if isinstance(whole, str) else whole
    if len(pickers) < fields.parts:
        message = f"There are {len(pickers)} characters to choose {fields.parts} from."
        raise Unsolvable(("cast",), message, "add characters, or take fewer parts.")
    ways = (
        Way(tuple(values[character.id] for character in who), who)
        for who in combinations(pickers, fields.parts)
        if sum(values[character.id] for character in who) == total
    )
    return Bonds(total, _within_cap(ways, context), (), fields.parts, None, pickers)


def _whole_of(fields: BondsFields, context: Context) -> Bonds:
    if len(fields.known) < 2:
        message = "Neither the whole nor its parts are known."
        raise Unsolvable(("whole",), message, "add whole, or known with at least two parts.", "activity-broken")
    if len(fields.known) > 5:
        _too_many_known(fields, 5)
    if context.characters and len(context.characters) != len(fields.known):
        message = f"{len(fields.known)} parts are known for {len(context.characters)} of the cast to hold."
        raise Unsolvable(("known",), message, "give each of the cast one part, or leave out the cast.")
    whole = sum(fields.known)
    if whole > context.caps.number:
        message = f"The parts make more than {context.caps.number:,}."
        raise Unsolvable(("known",), message, "use smaller parts.")
    return Bonds(whole, (Way(fields.known, context.characters),), fields.known, 0, None, (), context.characters)


def _split(fields: BondsFields, context: Context, whole: int) -> Bonds:
    holders = context.characters
    if len(holders) == 1 or len(holders) > 5:
        message = f"{len(holders)} of the cast cannot share a whole here."
        raise Unsolvable(("cast",), message, "name from two to five characters, or none.")
    parts = len(holders) or fields.parts
    missing = parts - len(fields.known)
    if missing < 1:
        _too_many_known(fields, parts - 1)
    if sum(fields.known) > whole:
        message = f"The parts known make {sum(fields.known):,}, more than the whole of {whole:,}."
        raise Unsolvable(("known",), message, "make the whole larger, or a part smaller.")
    largest = whole if fields.largest is None else fields.largest
    split = Split(missing, fields.smallest, min(largest, whole), fields.step, fields.different)
    if fields.different and len(set(fields.known)) < len(fields.known):
        raise Unsolvable(("known",), "Two of the known parts are the same.", "leave out different, or change one.")
    found = split.ways(whole - sum(fields.known), fields.known)
    if holders or fields.order == "counts":
        found = (order for way in found for order in orders_of(way))
    ways = _within_cap((Way(fields.known + way, holders) for way in found), context)
    in_order = tuple(sorted(ways, key=lambda way: way.parts))
    return Bonds(whole, in_order, fields.known, missing, split, holders=holders)


def _within_cap(ways: Iterator[Way], context: Context) -> tuple[Way, ...]:
    found = tuple(islice(ways, context.caps.answers + 1))
    if len(found) > context.caps.answers:
        raise Unsolvable(
            ("whole",),
            f"There are more than {context.caps.answers} ways.",
            "make the whole smaller, or allow fewer parts with smallest, largest or step.",
            "activity-too-many-answers",
        )
    return found


def _too_many_known(fields: BondsFields, most: int) -> NoReturn:
    message = f"{len(fields.known)} parts are known, and there can be at most {most} here."
    raise Unsolvable(("known",), message, "leave a part out, or ask for more parts.")
