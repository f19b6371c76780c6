"""A timetable and its trips, in words."""

from __future__ import annotations

from ...expression.noun import plural
from ...model.activity import LikelyError, Table
from ..saying import capital
from .tasks import ReadTimetable, TripFound
from .teller import Teller
from .time import long

_ASKED = {
    "first": "is the first",
    "last": "is the last",
    "shortest": "is the quickest",
    "longest": "is the slowest",
}


def ask_for_trips(task: ReadTimetable, board: int, alight: int, teller: Teller) -> str:
    """Which trips are asked for."""
    limits = [f"leave at {teller.tell(task.after)} or later"] if task.after is not None else []
    limits += [f"be there by {teller.tell(task.by)}"] if task.by is not None else []
    wish = f"You want to {' and '.join(limits)}. " if limits else ""
    which = f"{plural(task.called)} go" if task.pick is None else f"{task.called} {_ASKED[task.pick]}"
    return capital(f"{wish}Which {which} from {task.stops[board]} to {task.stops[alight]}?")


def list_trips(task: ReadTimetable, teller: Teller) -> Table:
    """The timetable, a row for each stop."""
    columns = ("Stop", *(capital(f"{task.called} {number}") for number in range(1, len(task.trips) + 1)))
    cells = [["does not stop" if time is None else teller.tell(time) for time in trip] for trip in task.trips]
    return Table("Timetable", columns, tuple((stop, *(trip[i] for trip in cells)) for i, stop in enumerate(task.stops)))


def say_trip(task: ReadTimetable, one: TripFound, teller: Teller) -> str:
    """``Trip 2, leaving at 7:30 and there at 8:15``."""
    leaves, arrives = teller.tell(one.leaves.minutes), teller.tell(one.arrives.minutes)
    return capital(f"{task.called} {one.trip}, leaving at {leaves} and there at {arrives}")


def expect_late(task: ReadTimetable, trip: int, minutes: int) -> LikelyError:
    """Not looking at when a trip arrives."""
    does = f"Looks at when a {task.called} leaves and not at when it gets there."
    return LikelyError(does, f"{task.called} {trip}, {long(minutes)} late")
