"""What comes of sharing: each mode of the activity worked out as groups, each, and left over."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import isqrt
from typing import TYPE_CHECKING, Literal, NoReturn

from ...model.activity import CastMember, Context
from ..kind import Unsolvable, whole_fact

if TYPE_CHECKING:
    from . import ShareFields

Mode = Literal["each", "groups", "total", "ways", "piles", "parts"]


@dataclass(frozen=True, slots=True)
class Shared:
    """So many groups of so many, and what is left over; whose pile it was, where it was somebody's."""

    groups: int
    each: int
    left: int
    who: CastMember | None = None

    @property
    def total(self) -> int:
        """All of it."""
        return self.groups * self.each + self.left


@dataclass(frozen=True, slots=True)
class Shares:
    """What was asked and what was found."""

    mode: Mode
    found: tuple[Shared, ...]
    receivers: tuple[CastMember, ...] = ()
    """Those who get a share each."""
    piles: tuple[tuple[int, CastMember | None], ...] = ()
    """The piles asked about."""
    total: int = 0
    """How many there are, where every way is asked for."""
    parts: tuple[int, ...] = ()
    """How many parts each receiver gets, where shares are not equal; ``groups`` then counts the parts."""


def shares_in(fields: ShareFields, context: Context) -> Shares:
    """Every answer. Raises ``Unsolvable``."""
    _check_numbers(fields, context)
    if fields.parts:
        return _in_parts(fields, context)
    if fields.piles or (fields.fact is not None and fields.total is None):
        return _piles(fields, context)
    receivers = context.characters if fields.fact is None else ()
    among = len(receivers) or fields.among
    if receivers and fields.among not in (None, len(receivers)):
        message = f"It is shared among {fields.among}, and there are {len(receivers)} in the cast."
        raise Unsolvable(("among",), message, "leave out among, or change the cast.")
    if among or fields.each:
        _refuse(fields, "fewest", "most", "left_over")
    total = _total(fields, context)
    if total is not None and among and fields.each:
        message = "Total, groups and how many in each are all given, so nothing is asked."
        raise Unsolvable(("each",), message, "leave one of them out.", "activity-broken")
    if among and fields.each:
        return _altogether(among, fields.each, receivers, context)
    if total is None:
        message = "How many there are to share is not given."
        raise Unsolvable(("total",), message, "add total, or among and each.", "activity-broken")
    if among:
        each, left = divmod(total, among)
        return Shares("each", (Shared(among, each, left),), receivers)
    if fields.each:
        groups, left = divmod(total, fields.each)
        return Shares("groups", (Shared(groups, fields.each, left),))
    return Shares("ways", _ways(fields, context, total), total=total)


def _check_numbers(fields: ShareFields, context: Context) -> None:
    if len(context.characters) > context.caps.characters:
        message = f"{len(context.characters)} characters are more than one activity can hold."
        raise Unsolvable(("cast",), message, f"choose at most {context.caps.characters}.")
    for name, least in (("total", 1), ("among", 1), ("each", 1), ("left_over", 0), ("fewest", 1), ("most", 1)):
        _check(getattr(fields, name), (name,), least, context)
    for at, pile in enumerate(fields.piles):
        _check(pile, ("piles", at), 1, context)
    for id_, parts in fields.parts.items():
        _check(parts, ("parts", id_), 1, context)


def _check(value: object, loc: tuple[str | int, ...], least: int, context: Context) -> None:
    if isinstance(value, int) and not least <= value <= context.caps.number:
        says = {"among": f"Nothing can be shared among {value:,}.", "each": f"There are no groups of {value:,}."}
        message = says.get(str(loc[0]), f"{value:,} is not a number of things to share.") if value < least else ""
        message = message or f"{value:,} is beyond {context.caps.number:,}, the largest number primary schools meet."
        raise Unsolvable(
            loc, message.replace("-", "−"), f"write a whole number from {least} to {context.caps.number:,}."
        )


def _total(fields: ShareFields, context: Context) -> int | None:
    if not isinstance(fields.total, str):
        return fields.total
    if fields.fact is None:
        message = f'The total is "{fields.total}", and no fact gives its number.'
        raise Unsolvable(("total",), message, "write a number, or add fact.", "activity-fact-missing")
    values = whole_fact(context, fields.fact)
    if fields.total not in values:
        _not_in_cast(fields.total, values, ("total",))
    return values[fields.total]


def _not_in_cast(id_: str, known: dict[str, int], loc: tuple[str | int, ...]) -> NoReturn:
    message = f'"{id_}" is not in the cast.'
    fix = f"use one of {', '.join(known)}." if known else "add it to the cast."
    raise Unsolvable(loc, message, fix, "activity-fact-missing")


def _refuse(fields: ShareFields, *names: str) -> None:
    for name in names:
        if name in fields.model_fields_set:
            message = f'"{name}" has no part in what is asked here.'
            raise Unsolvable((name,), message, "leave it out.", "activity-broken")


def _altogether(groups: int, each: int, receivers: tuple[CastMember, ...], context: Context) -> Shares:
    if groups * each > context.caps.number:
        message = f"{groups:,} groups of {each:,} make more than {context.caps.number:,}."
        raise Unsolvable(("each",), message, "use smaller numbers.")
    return Shares("total", (Shared(groups, each, 0),), receivers)


def _ways(fields: ShareFields, context: Context, total: int) -> tuple[Shared, ...]:
    left = fields.left_over or 0
    most = total if fields.most is None else fields.most
    if fields.fewest > most:
        message = f"There are to be at least {fields.fewest:,} groups and at most {most:,}."
        raise Unsolvable(("fewest",), message, "make fewest smaller, or most larger.")
    shared = total - left
    if shared < 1:
        message = f"{left:,} cannot be left over of {total:,} that are shared."
        raise Unsolvable(("left_over",), message, "leave fewer over.")
    ways = tuple(
        Shared(groups, shared // groups, left)
        for groups in divisors(shared)
        if groups > left and fields.fewest <= groups <= most
    )
    if len(ways) > context.caps.answers:
        message = f"There are {len(ways)} ways, more than {context.caps.answers}."
        raise Unsolvable(("total",), message, "share fewer things.", "activity-too-many-answers")
    return ways


def divisors(number: int) -> list[int]:
    """Every whole number that divides it, rising."""
    small = [n for n in range(1, isqrt(number) + 1) if number % n == 0]
    return small + [number // n for n in reversed(small) if n * n != number]


def _piles(fields: ShareFields, context: Context) -> Shares:
    _refuse(fields, "total", "fewest", "most")
    if fields.piles and fields.fact is not None:
        message = "There are piles, and a fact of the cast that gives piles too."
        raise Unsolvable(("piles",), message, "leave out one of them.", "activity-broken")
    if (fields.among is None) == (fields.each is None):
        message = "How the piles are to be shared is not clear."
        raise Unsolvable(("among",), message, "add among, or each, and not both.", "activity-broken")
    if fields.fact is not None:
        values = whole_fact(context, fields.fact)
        if not values:
            message = "There is nobody in the cast."
            raise Unsolvable(("cast",), message, "name some characters.", "activity-fact-missing")
        piles: tuple[tuple[int, CastMember | None], ...] = tuple((values[p.id], p) for p in context.characters)
    else:
        piles = tuple((pile, None) for pile in fields.piles)
    by = fields.among or fields.each or 1
    left = fields.left_over or 0
    if left >= by:
        message = f"{left:,} cannot be left over: with {by:,} at a time, another share could be made of them."
        raise Unsolvable(("left_over",), message, f"leave fewer than {by:,} over.")
    return Shares("piles", tuple(_shareable(piles, fields, by, left)), piles=piles)


def _shareable(
    piles: tuple[tuple[int, CastMember | None], ...], fields: ShareFields, by: int, left: int
) -> Iterator[Shared]:
    for pile, who in piles:
        times, over = divmod(pile, by)
        if over == left and times:
            yield Shared(by, times, left, who) if fields.among else Shared(times, by, left, who)


def _in_parts(fields: ShareFields, context: Context) -> Shares:
    _refuse(fields, "among", "each", "piles", "left_over", "fewest", "most")
    known = {character.id: character for character in context.characters}
    for id_ in fields.parts:
        if id_ not in known:
            _not_in_cast(id_, dict.fromkeys(known, 0), ("parts", id_))
    if len(fields.parts) < 2:
        raise Unsolvable(("parts",), "One alone has nobody to share with.", "name at least two characters.")
    total = _total(fields, context)
    if total is None:
        message = "How many there are to share is not given."
        raise Unsolvable(("total",), message, "add total.", "activity-broken")
    groups = sum(fields.parts.values())
    each, left = divmod(total, groups)
    receivers = tuple(known[id_] for id_ in fields.parts)
    return Shares("parts", (Shared(groups, each, left),), receivers, parts=tuple(fields.parts.values()))
