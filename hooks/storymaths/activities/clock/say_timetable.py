"""A timetable and its trips, in words."""

from __future__ import annotations

from ...model.activity import LikelyError, Table
from ..saying import capital
from .tasks import ReadTimetable, TripFound
from .teller import Teller
from .time import long

_ASKED = {
    None: "trips go",
    "first": "trip is the first",
    "last": "trip is the last",
    "shortest": "trip is the quickest",
    "longest": "trip is the slowest",
}


def ask_for_trips(task: ReadTimetable, board: int, alight: int, teller: Teller) -> str:
    """Which trips are asked for."""
    limits = [f"leave at {teller.tell(task.after)} or later"] if task.after is not None else []
    limits += [f"be there by {teller.tell(task.by)}"] if task.by is not None else []
    wish = f"You want to {' and '.join(limits)}. " if limits else ""
    return capital(f"{wish}Which {_ASKED[task.pick]} from {task.stops[board]} to {task.stops[alight]}?")


def list_trips(task: ReadTimetable, teller: Teller) -> Table:
    """The timetable, a row for each stop."""
    columns = ("Stop", *(f"Trip {number}" for number in range(1, len(task.trips) + 1)))
    cells = [["does not stop" if time is None else teller.tell(time) for time in trip] for trip in task.trips]
    return Table("Timetable", columns, tuple((stop, *(trip[i] for trip in cells)) for i, stop in enumerate(task.stops)))


def say_trip(one: TripFound, teller: Teller) -> str:
    """``Trip 2, leaving at 7:30 and there at 8:15``."""
    leaves, arrives = teller.tell(one.leaves.minutes), teller.tell(one.arrives.minutes)
    return f"Trip {one.trip}, leaving at {leaves} and there at {arrives}"


def expect_late(trip: int, minutes: int) -> LikelyError:
    """Not looking at when a trip arrives."""
    does = "Looks at when a trip leaves and not at when it gets there."
    return LikelyError(does, f"trip {trip}, {long(minutes)} late")
