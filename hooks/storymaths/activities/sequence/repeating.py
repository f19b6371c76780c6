"""Repeating patterns: the shortest unit that fits, what comes where, and the one thing out of place."""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import GAP

Pattern = Sequence[str]
Unit = tuple[str, ...]


def units_of(pattern: Pattern) -> list[Unit]:
    """Every unit that fits what is shown, shortest first; it is seen whole and at least twice, gaps apart."""
    return [unit for length in range(1, len(pattern) // 2 + 1) if (unit := _unit(pattern, length)) is not None]


def _unit(pattern: Pattern, length: int) -> Unit | None:
    unit: list[str] = []
    for start in range(length):
        seen = {item for item in pattern[start::length] if item != GAP}
        if len(seen) != 1:
            return None
        unit.append(seen.pop())
    return tuple(unit)


def repeated(unit: Sequence[str], length: int) -> list[str]:
    """The unit over and over, so many things long."""
    return [unit[place % len(unit)] for place in range(length)]


def at_place(unit: Sequence[str], place: int) -> str:
    """What comes at a place counted from 1."""
    return unit[(place - 1) % len(unit)]


def mistakes_in(pattern: Pattern) -> list[tuple[int, str, Unit]]:
    """Each place where changing one thing gives the pattern a unit, with what should be there and the unit.

    Only for the shortest length of unit with which one change is enough; empty if the pattern is right already.
    """
    if units_of(pattern):
        return []
    things = sorted(set(pattern) - {GAP}, key=list(pattern).index)
    for length in range(1, len(pattern) // 2 + 1):
        found = []
        for place, here in enumerate(pattern):
            for thing in things if here != GAP else ():
                changed = [*pattern[:place], thing, *pattern[place + 1 :]]
                unit = _unit(changed, length) if thing != here else None
                if unit is not None:
                    found.append((place + 1, thing, unit))
        if found:
            return found
    return []
