"""The clock: reading and setting it, lengths of time, the order of a day, timetables, 12 and 24 hours."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Annotated, ClassVar, Literal

from pydantic import Field

from ...model.activity import Context, Solution
from ...model.fields import Text
from ...model.year import YearLimits
from ..finding import Finding, found
from ..kind import ActivityFields, Kind
from .order import order_of_day
from .reading import convert, read_clock, set_clock
from .spans import duration, moved, repeats
from .time import Length, Style, Time
from .timetable import timetable
from .versions import versions_of

Find = Literal["read", "set", "convert", "duration", "end", "start", "repeats", "order", "timetable"]
SomeTimes = Annotated[tuple[Time, ...], Field(max_length=12)]
Trip = Annotated[tuple[Time | None, ...], Field(min_length=2, max_length=12)]


class ClockFields(ActivityFields):
    """What a clock activity may say; ``find`` tells which of the rest it needs."""

    find: Find = "read"
    """``read`` clocks or ``set`` them; tell by the other clock (``convert``); how long (``duration``); when it will
    ``end`` or did ``start``; when it comes round (``repeats``); the ``order`` of a day; trips of a ``timetable``."""
    times: SomeTimes = ()
    """Times to read, set or convert; or else ``fact`` names each character's."""
    to_fact: Text | None = None
    """The fact with which each character's span ends; ``fact`` is where it starts."""
    spans: Annotated[tuple[tuple[Time, Time], ...], Field(max_length=12)] = ()
    """Starts and ends: ``[["8:45", "10:20"]]``. An end that is earlier in the day is the next day's."""
    starts: Time | None = None
    ends: Time | None = None
    lasts: Annotated[tuple[Length, ...], Field(max_length=6)] = ()
    """How long each thing lasts, one after another: ``[1 hour 20 minutes, 10]``."""
    every: Length | None = None
    """How long from one time to the next."""
    until: Time | None = None
    """The last time it may come round."""
    events: Annotated[Mapping[Text, Time], Field(max_length=12)] | None = None
    """What happens, and when."""
    stops: Annotated[tuple[Text, ...], Field(max_length=12)] = ()
    trips: Annotated[tuple[Trip, ...], Field(max_length=12)] = ()
    """For each trip its time at each stop; null where it does not stop."""
    board: Text | None = None
    """Where one gets on; the first stop if left out."""
    alight: Text | None = None
    """Where one gets off; the last stop if left out."""
    after: Time | None = None
    """Leave no earlier than this."""
    by: Time | None = None
    """Be there no later than this."""
    pick: Literal["first", "last", "longest", "shortest"] | None = None
    """Only that one."""
    clock: Style | None = None
    """``"12"`` or ``"24"`` hours; 12 if left out."""
    roman: bool = False
    """Clock faces with Roman numerals."""


FINDINGS = {
    "read": Finding(read_clock, ("times^fact",), ("clock", "roman")),
    "set": Finding(set_clock, ("times^fact",), ("clock", "roman")),
    "convert": Finding(convert, ("times^fact",), ("clock",)),
    "duration": Finding(duration, ("spans^to_fact",), ("fact", "pick", "clock")),
    "end": Finding(moved, ("starts", "lasts"), ("clock",)),
    "start": Finding(moved, ("ends", "lasts"), ("clock",)),
    "repeats": Finding(repeats, ("starts", "every", "until"), ("clock",)),
    "order": Finding(order_of_day, ("events^fact",), ("clock",)),
    "timetable": Finding(timetable, ("stops", "trips"), ("board", "alight", "after", "by", "pick", "clock")),
}


class Clock(Kind[ClockFields]):
    """Times to the minute.

    Steps: two for a clock face (the hour, the minutes); one for each jump along the day; one for each comparison of
    times; two to read a timetable and one for each thing asked of a trip.
    """

    name = "clock"
    says = "Time: clocks read and set, how long, when it ends, the order of a day, trips of a timetable."
    answer_shape = (
        "times as HH:MM of 24 hours: read {clock, time, words, character?}; set {clock, time, hour_hand, minute_hand, "
        "player?}; convert {time, told, character?}; duration {from, to, minutes, character?}; end {ends, minutes}; "
        "start {began, minutes}; repeats {time}; order {order, together}; timetable {trip, leaves, arrives, minutes}"
    )
    example = """
kind: clock
title: Who was out the longest?
find: duration
fact: sets_off
to_fact: home
cast:
  gull: {sets_off: "8:45", home: "9:20"}
  crab: {sets_off: "9:00", home: "9:40"}
  seal: {sets_off: "9:30", home: "10:15"}
  puffin: {sets_off: "10:05", home: "10:35"}
"""
    practises: ClassVar[Mapping[str, str]] = {
        "1NF-2": "counts the minutes of a clock in fives",
        "2AS-1": "adds minutes up to the hour and past it",
        "2AS-2": "finds how much later one time is than another",
        "2MD-1": "counts fives round the clock as a multiplication",
    }
    fields = ClockFields

    def solve(self, fields: ClockFields, context: Context) -> Solution:
        """As ``find`` asks."""
        return found(fields, fields.find, FINDINGS, context)

    def versions(
        self, fields: ClockFields, context: Context, year: YearLimits
    ) -> Iterator[tuple[ClockFields, Context, str]]:
        """The same times, or times as fine as that year reads them, in the same order."""
        return versions_of(fields, context, year)


KIND = Clock()
