"""What a timetable offers: which trips serve two stops within the times given."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from functools import reduce
from itertools import pairwise
from operator import or_

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.demands import Demands, amounts
from ..kind import Unsolvable
from ..saying import counted
from . import say_timetable as say
from .count_on import demands_of_jumps, draw_jumps, explain_jumps
from .tasks import ReadTimetable, TripFound
from .teller import check_grain, style_of, teller_for
from .time import TimeOfDay

_TRIPS_DRAWN = 6
_BEST: Mapping[str, Callable[[TripFound], int]] = {
    "first": lambda trip: trip.leaves.minutes,
    "last": lambda trip: -trip.leaves.minutes,
    "shortest": lambda trip: trip.minutes,
    "longest": lambda trip: -trip.minutes,
}
"""The one picked has the least of this."""


def read_timetable(task: ReadTimetable, context: Context) -> Solution[TripFound]:
    """Every trip that serves both stops within the times given, in the order they leave; or those picked."""
    board, alight = _stops(task)
    _check_trips(task, context)
    times = [time for trip in task.trips for time in trip if time is not None]
    times += [time for time in (task.after, task.by) if time is not None]
    teller = teller_for(times, context, style_of(task, context))
    both = list(_serving(task, board, alight))
    found = _pick(task, both)
    read = teller.demands(times) | Demands(
        amounts=amounts(range(1, len(task.trips) + 1)), words=(task.pick,) if task.pick in ("first", "last") else ()
    )
    return Solution(
        Task(say.ask_for_trips(task, board, alight, teller), table=say.list_trips(task, teller)),
        tuple(
            Answer(
                say.say_trip(task, trip, teller), explain_jumps(trip.leaves.minutes, trip.arrives.minutes, teller), trip
            )
            for trip in found
        ),
        reduce(or_, (demands_of_jumps(one.leaves.minutes, one.arrives.minutes, teller) for one in found), read),
        2 + (task.by is not None) + (task.after is not None) + bool(task.pick),
        f"Every {task.called} was looked at where one gets on and where one gets off.",
        _expect_late(task, both),
        tuple(draw_jumps(one.leaves.minutes, one.arrives.minutes, teller) for one in found[:_TRIPS_DRAWN]),
    )


def _serving(task: ReadTimetable, board: int, alight: int) -> Sequence[TripFound]:
    """The trips that stop at both."""
    pairs = ((number, trip[board], trip[alight]) for number, trip in enumerate(task.trips, 1))
    return [
        TripFound(number, TimeOfDay(leaves), TimeOfDay(arrives), arrives - leaves)
        for number, leaves, arrives in pairs
        if leaves is not None and arrives is not None
    ]


def _pick(task: ReadTimetable, both: Sequence[TripFound]) -> list[TripFound]:
    """Those within the times given, and the best of them where one is picked."""
    after, by = task.after, task.by
    found = [
        one
        for one in both
        if (after is None or one.leaves.minutes >= after) and (by is None or one.arrives.minutes <= by)
    ]
    found.sort(key=lambda one: (one.leaves.minutes, one.trip))
    if task.pick is None:
        return found
    rank = _BEST[task.pick]
    return [one for one in found if rank(one) == min(map(rank, found))]


def _expect_late(task: ReadTimetable, both: Sequence[TripFound]) -> LikelyError | None:
    """Going by when a trip leaves, where one that leaves in time comes too late."""
    by = task.by
    if by is None:
        return None
    late = next((one for one in both if one.leaves.minutes <= by < one.arrives.minutes), None)
    return say.expect_late(task, late.trip, late.arrives.minutes - by) if late else None


def _stops(task: ReadTimetable) -> tuple[int, int]:
    """Where one gets on and off, as places in the list of stops."""
    places = []
    for field, name in (("board", task.board or task.stops[0]), ("alight", task.alight or task.stops[-1])):
        if name not in task.stops:
            message = f"There is no stop “{name}” in the timetable."
            raise Unsolvable((field,), message, f"use one of {', '.join(task.stops)}.")
        places.append(task.stops.index(name))
    if places[0] >= places[1]:
        message = f"{task.stops[places[1]]} does not come after {task.stops[places[0]]}."
        raise Unsolvable(("alight",), message, "get off further on.")
    return places[0], places[1]


def _check_trips(task: ReadTimetable, context: Context) -> None:
    if len(set(task.stops)) < len(task.stops):
        raise Unsolvable(("stops",), "A stop is named twice.", "name each stop once.")
    for index, trip in enumerate(task.trips):
        times = [time for time in trip if time is not None]
        if len(trip) != len(task.stops):
            message = f"Trip {index + 1} has {counted(len(trip), 'times')} for {counted(len(task.stops), 'stops')}."
            raise Unsolvable(("trips", index), message, "give a time for each stop, or null where it does not stop.")
        if any(later <= earlier for earlier, later in pairwise(times)):
            message = f"Trip {index + 1} reaches a stop before the one on the way to it."
            raise Unsolvable(("trips", index), message, "put the times in order, all on one day.")
        check_grain(times, context, ("trips", index))
    check_grain([time for time in (task.after, task.by) if time is not None], context, ("by",))
