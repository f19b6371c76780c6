"""What a timetable offers: which trips serve two stops within the times given."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Table, Task
from ..kind import Unsolvable
from ..saying import capital, counted
from .spans import counted_on, line_of_time, stops_between
from .time import digits, long
from .words import read_finely, solution, style_of, teller

if TYPE_CHECKING:
    from . import ClockFields

_TRIPS_DRAWN = 6


@dataclass(frozen=True, slots=True)
class _Trip:
    """A trip between the two stops asked about."""

    number: int
    leaves: int
    arrives: int


_BEST: Mapping[str, Callable[[_Trip], int]] = {
    "first": lambda trip: trip.leaves,
    "last": lambda trip: -trip.leaves,
    "shortest": lambda trip: trip.arrives - trip.leaves,
    "longest": lambda trip: trip.leaves - trip.arrives,
}
"""The one picked has the least of this."""


def timetable(fields: ClockFields, context: Context) -> Solution:
    """Every trip that serves both stops within the times given, in the order they leave; or those picked."""
    board, alight = _stops(fields)
    _check_trips(fields, context)
    after, by = fields.after, fields.by
    every = [time for trip in fields.trips for time in trip if time is not None]
    tell = teller([*every, *(time for time in (after, by) if time is not None)], context, style_of(fields, context))
    both = [
        _Trip(number, trip[board] or 0, trip[alight] or 0)
        for number, trip in enumerate(fields.trips, 1)
        if trip[board] is not None and trip[alight] is not None
    ]
    fits = [t for t in both if (after is None or t.leaves >= after) and (by is None or t.arrives <= by)]
    fits.sort(key=lambda trip: (trip.leaves, trip.number))
    if fields.pick:
        best = _BEST[fields.pick]
        fits = [trip for trip in fits if best(trip) == min(map(best, fits))]
    answers = [
        Answer(
            f"Trip {trip.number}, leaving at {tell(trip.leaves)} and there at {tell(trip.arrives)}.",
            counted_on(trip.leaves, trip.arrives, tell),
            {"trip": trip.number, "leaves": digits(trip.leaves), "arrives": digits(trip.arrives),
             "minutes": trip.arrives - trip.leaves},
        )
        for trip in fits
    ]  # fmt: skip
    columns = ("Stop", *(f"Trip {number}" for number in range(1, len(fields.trips) + 1)))
    cells = [["does not stop" if time is None else tell(time) for time in trip] for trip in fields.trips]
    rows = tuple((stop, *(trip[i] for trip in cells)) for i, stop in enumerate(fields.stops))
    task = Task(_asked(fields, board, alight, tell), table=Table("Timetable", columns, rows))
    late = next((trip for trip in both if by is not None and trip.leaves <= by < trip.arrives), None)
    likely_error = None
    if late:
        likely_error = LikelyError(
            "Looks at when a trip leaves and not at when it gets there.", f"trip {late.number}, {_late(late, by)} late"
        )
    note = "Every trip was looked at where one gets on and where one gets off."
    figures = tuple(line_of_time(stops_between(t.leaves, t.arrives), tell) for t in fits[:_TRIPS_DRAWN])
    steps = 2 + (by is not None) + (after is not None) + bool(fields.pick)
    return solution(task, answers, steps, note, likely_error, figures)


def _late(trip: _Trip, by: int | None) -> str:
    return long(trip.arrives - (by or 0))


def _stops(fields: ClockFields) -> tuple[int, int]:
    """Where one gets on and off, as places in the list of stops."""
    places = []
    for field, name in (("board", fields.board or fields.stops[0]), ("alight", fields.alight or fields.stops[-1])):
        if name not in fields.stops:
            message = f"There is no stop “{name}” in the timetable."
            raise Unsolvable((field,), message, f"use one of {', '.join(fields.stops)}.")
        places.append(fields.stops.index(name))
    if places[0] >= places[1]:
        message = f"{fields.stops[places[1]]} does not come after {fields.stops[places[0]]}."
        raise Unsolvable(("alight",), message, "get off further on.")
    return places[0], places[1]


def _check_trips(fields: ClockFields, context: Context) -> None:
    if len(set(fields.stops)) < len(fields.stops):
        raise Unsolvable(("stops",), "A stop is named twice.", "name each stop once.")
    for index, trip in enumerate(fields.trips):
        times = [time for time in trip if time is not None]
        if len(trip) != len(fields.stops):
            message = f"Trip {index + 1} has {counted(len(trip), 'times')} for {counted(len(fields.stops), 'stops')}."
            raise Unsolvable(("trips", index), message, "give a time for each stop, or null where it does not stop.")
        if any(later <= earlier for earlier, later in pairwise(times)):
            message = f"Trip {index + 1} reaches a stop before the one on the way to it."
            raise Unsolvable(("trips", index), message, "put the times in order, all on one day.")
        read_finely(times, context, ("trips", index))
    read_finely([time for time in (fields.after, fields.by) if time is not None], context, ("by",))


def _asked(fields: ClockFields, board: int, alight: int, tell: Callable[[int], str]) -> str:
    way = f"from {fields.stops[board]} to {fields.stops[alight]}"
    limits: Sequence[str] = [
        f"leave at {tell(fields.after)} or later" if fields.after is not None else "",
        f"be there by {tell(fields.by)}" if fields.by is not None else "",
    ]
    told = " and ".join(filter(None, limits))
    best = {None: "trips go", "first": "trip is the first", "last": "trip is the last", "shortest": "trip is the quickest",
            "longest": "trip is the slowest"}[fields.pick]  # fmt: skip
    return capital(f"{f'You want to {told}. ' if told else ''}{'which' if not told else 'Which'} {best} {way}?")
