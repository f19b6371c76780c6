"""The reasoning behind a share: how it is worked out in each year, why it is all, and the likely slip."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...model.activity import Context, LikelyError
from ..saying import listed, written
from ..tables_used import table_of
from .found import Shared, Shares

if TYPE_CHECKING:
    from . import ShareFields

_COUNTED_IN = frozenset({1, 2, 5, 10})
"""Steps Year 1 counts in."""
_COUNTED_OUT = 20
"""Up to so many things can be dealt out or added up, without a table."""


def tables_in(shares: Shares, context: Context) -> frozenset[int]:
    """The tables leaned on: none before Year 2, and none for what can be counted out."""
    if context.year.year < 2:
        return frozenset()
    leaned = [table_of(one.groups, one.each, context.year) for one in shares.found if one.total > _COUNTED_OUT]
    return frozenset().union(*leaned)


def reckoned_in(shares: Shares, year: int) -> set[int]:
    """Totals that are worked out though no sum is written: all in Reception; in Year 1 what cannot be counted in steps."""
    if year > 1:
        return set()
    counted = _COUNTED_IN if year else frozenset()
    return {one.total for one in shares.found if not {one.groups, one.each} & counted}


def worked(one: Shared, shares: Shares, year: int) -> str:
    """One line of reasoning: dealing in Reception, counting or adding in Year 1, then × and ÷."""
    total, groups, each, full = (written(n) for n in (one.total, one.groups, one.each, one.groups * one.each))
    if year == 0:
        return _dealt(one, shares)
    if not one.each:
        return f"{total} {'is' if one.total == 1 else 'are'} too few for {groups}"
    if year == 1:
        return _added(one)
    if shares.mode == "parts":
        gets = [f"{part} × {each} = {written(part * one.each)}" for part in shares.parts]
        start = f"{' + '.join(str(part) for part in shares.parts)} = {groups}; {full} ÷ {groups} = {each}"
        return "; ".join([*([f"{total} − {one.left:,} = {full}"] if one.left else []), start, *gets])
    if shares.mode in ("total", "ways") and not one.left:
        return f"{groups} × {each} = {full}"
    if one.left:
        return f"{groups} × {each} = {full}; {total} − {full} = {written(one.left)}"
    if shares.mode == "each" or (shares.mode == "piles" and one.groups != one.each):
        return f"{total} ÷ {groups} = {each}; {groups} × {each} = {full}"
    return f"{total} ÷ {each} = {groups}; {groups} × {each} = {full}"


def _dealt(one: Shared, shares: Shares) -> str:
    if shares.mode in ("each", "parts"):
        end = "too few are left for everyone" if one.left else "none is left"
        return f"Deal them out one at a time, round and round, until {end}"
    return f"Make groups of {one.each} until there are too few for another, and count the groups"


def _added(one: Shared) -> str:
    full = one.groups * one.each
    rest = f", and {one.left} more" if one.left else ""
    if 2 <= one.groups <= 6 and full <= _COUNTED_OUT:
        return f"{' + '.join([str(one.each)] * one.groups)} = {full}{rest}"
    if one.groups <= 12:
        return f"Count: {', '.join(str(one.each * n) for n in range(1, one.groups + 1))}{rest}"
    return f"Count in steps of {written(one.each)} to {written(full)}{rest}"


def note_of(fields: ShareFields, shares: Shares, context: Context) -> str:
    """How one knows that these are all, or why there is none."""
    if shares.mode == "total":
        return "Equal groups put together make one total, so there is one answer."
    if shares.mode == "ways":
        return _of_ways(fields, shares)
    if shares.mode == "piles":
        return _of_piles(fields, shares)
    one = shares.found[0]
    if not one.left:
        return "Nothing is left, so all of it is shared."
    by = one.each if shares.mode == "groups" else one.groups
    parts = " parts" if shares.mode == "parts" else ""
    return f"What is left, {written(one.left)}, is less than {written(by)}{parts}, so there is not enough for more."


def _of_ways(fields: ShareFields, shares: Shares) -> str:
    if not shares.found:
        few, many = written(fields.fewest), written(fields.most or fields.fewest)
        return f"Every number of groups from {few} to {many} was tried, and each leaves another number over."
    turned = [one for one in shares.found if Shared(one.each, one.groups, one.left) in shares.found]
    note = "Every number of groups was tried in turn; only these come out."
    if len(turned) > 1 and turned[0].groups != turned[0].each:
        a, b = written(turned[0].groups), written(turned[0].each)
        note += f" They come in pairs: {_group(turned[0].groups)} of {b} and {_group(turned[0].each)} of {a}."
    return note


def _group(count: int) -> str:
    return "1 group" if count == 1 else f"{written(count)} groups"


def _of_piles(fields: ShareFields, shares: Shares) -> str:
    by = fields.among or fields.each or 1
    found = [one.total for one in shares.found]
    rest = [pile for pile, _ in shares.piles if pile not in found]
    told = [f"{written(pile)} leaves {written(pile % by)}" for pile in dict.fromkeys(rest)]
    return f"Of the others, {listed(told)}." if told else "All of them can be."


def slip_in(shares: Shares) -> LikelyError | None:
    """The likely slip, worked out; None where none would show."""
    if not shares.found:
        return None
    one = shares.found[0]
    if shares.mode == "total":
        return LikelyError("Adds the two numbers.", f"{written(one.groups + one.each)}.") if one.total > 4 else None
    if shares.mode == "each" and one.left and one.each:
        return LikelyError(
            "Deals out what is left over as well.", f"{written(one.each + 1)} for some, {written(one.each)} for others."
        )
    if shares.mode == "groups" and one.left:
        return LikelyError("Counts what is left over as a group.", f"{written(one.groups + 1)} groups.")
    if shares.mode in ("each", "groups"):
        by = one.groups if shares.mode == "each" else one.each
        return LikelyError("Takes away once.", f"{written(one.total - by)}.") if one.total > by else None
    if shares.mode == "parts":
        people = len(shares.parts)
        return (
            LikelyError("Shares equally.", f"{written(one.total // people)} each.")
            if len(set(shares.parts)) > 1
            else None
        )
    if shares.mode == "ways":
        pairs = len({frozenset((way.groups, way.each)) for way in shares.found})
        if pairs < len(shares.found):
            return LikelyError(
                "Takes a way and its turned one for the same.", f"{pairs} instead of {len(shares.found)}."
            )
        return None
    return _by_a_digit(shares)


def _by_a_digit(shares: Shares) -> LikelyError | None:
    """Piles between two: an odd number with an even digit at its front is taken to be even."""
    if shares.found[0].groups != 2 or shares.found[0].left:
        return None
    for pile, _ in shares.piles:
        if pile % 2 and pile > 9 and int(str(pile)[0]) % 2 == 0:
            return LikelyError("Goes by the first digit.", f"{written(pile)} as well.")
    return None
