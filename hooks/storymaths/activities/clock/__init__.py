"""The clock: reading and setting it, lengths of time, the order of a day, timetables, 12 and 24 hours."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import ClassVar, get_args

from ...model.activity import Context, Solution
from ...model.year import YearLimits
from ..kind import Kind
from .solve import solve
from .tasks import ClockAnswer, ClockTask
from .versions import versions_of


class Clock(Kind[ClockTask, ClockAnswer]):
    """Times to the minute.

    Steps: two for a clock face (the hour, the minutes); one for each jump along the day; one for each comparison of
    times; two to read a timetable and one for each thing asked of a trip.
    """

    name = "clock"
    says = "Time: clocks read and set, how long, when it ends, the order of a day, trips of a timetable."
    answer_shape = (
        "times as HH:MM of 24 hours: read {clock, time, words, character?}; set {clock, time, hour_hand, minute_hand, "
        "character?}; convert {time, told, character?}; duration {from, to, minutes, character?}; end {ends, minutes}; "
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
    tasks = get_args(ClockTask)
    told_by = "find"

    def solve(self, fields: ClockTask, context: Context) -> Solution[ClockAnswer]:
        """As ``find`` asks."""
        return solve(fields, context)

    def versions(
        self, fields: ClockTask, context: Context, year: YearLimits
    ) -> Iterator[tuple[ClockTask, Context, str]]:
        """The same times, or times as fine as that year reads them, in the same order."""
        return versions_of(fields, context, year)


KIND = Clock()
