"""Counting on along a day: to the next hour, by hours, then to the end."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from ...model.activity import Figure
from ...model.demands import Demands, amounts, operation
from ...model.figures.measures import ClockJumps
from .teller import Teller, demands_of_lengths
from .time import HOUR, long


def stops_between(start: int, end: int) -> list[int]:
    """The start, the next hour, the last hour before the end, the end; without those that are the same."""
    first, last = -(-start // HOUR) * HOUR, end // HOUR * HOUR
    return sorted({start, first, last, end}) if first <= last else [start, end]


def explain_jumps(start: int, end: int, teller: Teller) -> str:
    """The jumps from start to end in words, and the sum of those that are not whole hours."""
    stops = stops_between(start, end)
    jumps = _jumps(stops)
    first, *later = teller.tell_in_turn(stops)
    told = ", then ".join(f"{long(jump)} to {stop}" for jump, stop in zip(jumps, later, strict=True))
    worked = f"From {first} it is {told}."
    parts = _parts(jumps)
    if len(parts) < 2:
        return worked if len(jumps) < 2 else f"{worked} Together that is {long(end - start)}."
    total = sum(parts)
    carried = f" {total} = {HOUR} + {total - HOUR}." if total > HOUR else ""
    return f"{worked} {' + '.join(map(str, parts))} = {total}.{carried} Together that is {long(end - start)}."


def demands_of_jumps(start: int, end: int, teller: Teller) -> Demands:
    """What counting on from start to end demands."""
    stops = stops_between(start, end)
    jumps = _jumps(stops)
    read = teller.demands(stops) | demands_of_lengths([*jumps, end - start])
    parts = _parts(jumps)
    if len(parts) < 2:
        return read
    sums = [operation("+", *parts, sum(parts))]
    if sum(parts) > HOUR:
        sums.append(operation("+", HOUR, sum(parts) - HOUR, sum(parts)))
    numbers = {number for one in sums for number in one.numbers}
    return read | Demands(amounts=amounts(numbers), operations=tuple(sums), signs=frozenset("+="))


def draw_jumps(start: int, end: int, teller: Teller) -> Figure:
    """The stops along a line, with how long it is from each to the next."""
    stops = stops_between(start, end)
    points, lengths = tuple(map(teller.tell, stops)), tuple(map(long, _jumps(stops)))
    steps = ", ".join(f"{length} to {point}" for length, point in zip(lengths, points[1:], strict=True))
    return Figure(ClockJumps(points, lengths), f"A line of time from {points[0]}: {steps}.")


def _jumps(stops: Sequence[int]) -> list[int]:
    return [after - before for before, after in pairwise(stops)]


def _parts(jumps: Sequence[int]) -> list[int]:
    """The jumps that are no whole hours."""
    return [jump for jump in jumps if jump % HOUR]
