"""How one knows that every bond is found, and the likely slip."""

from __future__ import annotations

from collections import Counter
from math import comb
from typing import TYPE_CHECKING

from ...model.activity import LikelyError
from ..saying import capital, written
from .found import Bonds
from .splitting import orders_of

if TYPE_CHECKING:
    from . import BondsFields


def note_of(fields: BondsFields, bonds: Bonds) -> str:
    """How one knows that these are all, or why there is none."""
    found = len(bonds.ways)
    if bonds.pickers:
        groups = comb(len(bonds.pickers), bonds.missing)
        start = "Try the first of them with everyone after, then the second with everyone after, and so on"
        return f"{start}: that is {written(groups)} to try, and {_count(found)}."
    if bonds.missing == 0:
        return "Parts put together make one whole, so there is one answer."
    if not found:
        return _why_none(bonds)
    if bonds.missing == 1:
        return "What is known is taken from the whole, so there is one answer."
    firsts = Counter(way.parts[len(bonds.known)] for way in bonds.ways)
    low, high = written(min(firsts)), written(max(firsts))
    by = f" in steps of {written(fields.step)}" if fields.step > 1 else " one at a time"
    if set(firsts.values()) == {1}:
        note = (
            f"The first part goes up{by} from {low} to {high}" if low != high else f"The first part can only be {low}"
        )
        swapped = not bonds.holders and fields.order == "same" and bonds.missing == 2 and low != high
        return f"{note}.{' After that the same parts come again, swapped.' if swapped else ' No step is left out.'}"
    told = [f"with {written(first)} first there {_are(count)}" for first, count in sorted(firsts.items())]
    total = " + ".join(str(count) for _, count in sorted(firsts.items()))
    if len(told) > 8:
        return f"The first part goes up{by} from {low} to {high}, and for each the second does; {_count(found)}."
    sign = f": {total} = {found}" if len(told) > 1 else ""
    return f"{capital(', '.join(told))}{sign}."


def _are(count: int) -> str:
    return "is 1 way" if count == 1 else f"are {count} ways"


def _count(found: int) -> str:
    return {0: "none fits", 1: "1 fits"}.get(found, f"{found} fit")


def _why_none(bonds: Bonds) -> str:
    rest = bonds.whole - sum(bonds.known)
    split = bonds.split
    assert split is not None, "only a whole that is split can have no ways"
    if rest % split.step:
        step = written(split.step)
        return (
            f"Parts that are counted in steps of {step} cannot make {written(rest)}, which is between two such steps."
        )
    if split.smallest_whole() > rest:
        return f"Even the smallest parts make {written(split.smallest_whole())}, which is more than {written(rest)}."
    if split.largest_whole() < rest:
        return (
            f"Even the largest parts make {written(max(0, split.largest_whole()))}, which is less than {written(rest)}."
        )
    return "The parts that would make it are the same as one that is known."


def slip_in(bonds: Bonds, fields: BondsFields) -> LikelyError | None:
    """The likely slip, counted out; None where none would show."""
    if not bonds.ways:
        return None
    if bonds.missing == 0 and len(bonds.known) == 2:
        return LikelyError("Takes one part from the other.", f"{written(abs(bonds.known[0] - bonds.known[1]))}.")
    if bonds.missing == 1:
        return LikelyError("Adds what is known to the whole.", f"{written(bonds.whole + sum(bonds.known))}.")
    ways = len(bonds.ways)
    if bonds.pickers:
        twice = [p.name for p in bonds.pickers if 2 * int(p.facts[fields.fact or ""]) == bonds.whole]
        if bonds.missing == 2 and twice:
            return LikelyError("Takes the same character twice.", f"{capital(twice[0])} and {twice[0]}.")
        return LikelyError("Stops at the first way.", f"1 instead of {ways}.") if ways > 1 else None
    if bonds.holders or fields.order == "counts":
        fewer = len({tuple(sorted(way.parts)) for way in bonds.ways})
        does = "Takes a way for the same when its parts are swapped."
        return LikelyError(does, f"{fewer} instead of {ways}.") if fewer < ways else None
    more = sum(len(orders_of(way.parts[len(bonds.known) :])) for way in bonds.ways)
    return (
        LikelyError("Counts a way again when its parts are swapped.", f"{more} instead of {ways}.")
        if more > ways
        else None
    )
