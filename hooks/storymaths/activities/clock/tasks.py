"""What can be asked about clocks and times, a schema for each task, and what its answers hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Annotated, ClassVar, Literal, Self

from pydantic import Field

from ...model.fields import Text
from ...model.plain import Plain
from ...model.practice.clock import ClockPractice
from ..given import Castless
from ..kind import ActivityFields
from .time import Length, Style, Time, TimeOfDay


class Holds(Enum):
    """What a field holds; written beside its type, so that a version knows what to change."""

    TIMES = "times"
    LENGTHS = "lengths"


OneTime = Annotated[Time, Holds.TIMES]
MaybeTime = Annotated[Time | None, Holds.TIMES]
OneLength = Annotated[Length, Holds.LENGTHS]
Lengths = Annotated[tuple[Length, ...], Field(min_length=1, max_length=6), Holds.LENGTHS]
Trip = Annotated[tuple[Time | None, ...], Field(min_length=2, max_length=12)]


class ClockFields(ActivityFields):
    """A task with times."""

    clock: Style | None = None
    """``"12"`` or ``"24"`` hours; 12 if left out."""

    @property
    def style(self) -> Style:
        """The clock that is told by."""
        return self.clock or "12"

    def on_clocks_of(self, practice: ClockPractice) -> Self:
        """The task on clocks that a year reads."""
        return self if int(self.style) in practice.clocks else self.model_copy(update={"clock": None})


class _OfTimes(ClockFields):
    times: Annotated[tuple[Time, ...], Field(max_length=12), Holds.TIMES] = ()
    """Times to read, set or tell; or else ``fact`` names each character's."""


class _OfFaces(_OfTimes):
    roman: bool = False
    """Clock faces with Roman numerals."""

    def on_clocks_of(self, practice: ClockPractice) -> Self:
        known = super().on_clocks_of(practice)
        return known if practice.roman or not self.roman else known.model_copy(update={"roman": False})


class ReadClocks(_OfFaces):
    """The time on each clock."""

    task_name: ClassVar[str] = "read"
    find: Literal["read"] = "read"


class SetClocks(_OfFaces):
    """Where the hands of each clock go."""

    task_name: ClassVar[str] = "set"
    find: Literal["set"] = "set"


class ConvertTimes(_OfTimes):
    """Each time as the other clock tells it."""

    task_name: ClassVar[str] = "convert"
    find: Literal["convert"] = "convert"


class MeasureSpans(ClockFields):
    """How long it is from one time to another."""

    task_name: ClassVar[str] = "duration"
    find: Literal["duration"] = "duration"
    spans: Annotated[tuple[tuple[Time, Time], ...], Field(max_length=12), Holds.TIMES] = ()
    """Starts and ends: ``[["8:45", "10:20"]]``. An end that is earlier in the day is the next day's."""
    to_fact: Text | None = None
    """The fact with which each character's span ends; ``fact`` is where it starts."""
    pick: Literal["longest", "shortest"] | None = None
    """Only that one."""


class FindEnd(ClockFields, Castless):
    """When something ends."""

    task_name: ClassVar[str] = "end"
    find: Literal["end"] = "end"
    starts: OneTime
    """When it starts, in quotes: "8:45"."""
    lasts: Lengths
    """How long each thing lasts, one after another: ``[1 hour 20 minutes, 10]``."""


class FindStart(ClockFields, Castless):
    """When something began."""

    task_name: ClassVar[str] = "start"
    find: Literal["start"] = "start"
    ends: OneTime
    """When it ends, in quotes: "10:20"."""
    lasts: Lengths
    """How long each thing lasted, one after another: ``[1 hour 20 minutes, 10]``."""


class FindRepeats(ClockFields, Castless):
    """When something comes round."""

    task_name: ClassVar[str] = "repeats"
    find: Literal["repeats"] = "repeats"
    starts: OneTime
    """The first time, in quotes."""
    every: OneLength
    """How long from one time to the next."""
    until: OneTime
    """The last time it may come round."""


class OrderDay(ClockFields):
    """The order of a day."""

    task_name: ClassVar[str] = "order"
    find: Literal["order"] = "order"
    events: Annotated[Annotated[Mapping[Text, Time], Field(max_length=12)] | None, Holds.TIMES] = None
    """What happens, and when; or else ``fact`` names each character's time."""


class ReadTimetable(ClockFields, Castless):
    """Which trips of a timetable one can take."""

    task_name: ClassVar[str] = "timetable"
    find: Literal["timetable"] = "timetable"
    stops: Annotated[tuple[Text, ...], Field(min_length=1, max_length=12)]
    """The names of the stops, in order."""
    trips: Annotated[tuple[Trip, ...], Field(min_length=1, max_length=12), Holds.TIMES]
    """For each trip its time at each stop; null where it does not stop."""
    board: Text | None = None
    """Where one gets on; the first stop if left out."""
    alight: Text | None = None
    """Where one gets off; the last stop if left out."""
    after: MaybeTime = None
    """Leave no earlier than this."""
    by: MaybeTime = None
    """Be there no later than this."""
    pick: Literal["first", "last", "longest", "shortest"] | None = None
    """Only that one."""
    called: Text = "trip"
    """What one of the trips is called, such as bus or train."""


TellTask = ReadClocks | SetClocks | ConvertTimes
MoveTask = FindEnd | FindStart
ClockTask = TellTask | MeasureSpans | MoveTask | FindRepeats | OrderDay | ReadTimetable


@dataclass(frozen=True, slots=True)
class ClockRead:
    """The time a clock shows."""

    clock: str
    time: TimeOfDay
    words: str
    character: str | None = None


@dataclass(frozen=True, slots=True)
class ClockSet:
    """Where the hands go: the hours the hour hand stands at or between, the minute of the minute hand."""

    clock: str
    time: TimeOfDay
    hour_hand: tuple[int, ...]
    minute_hand: int
    character: str | None = None


@dataclass(frozen=True, slots=True)
class TimeConverted:
    """A time as the other clock tells it."""

    time: TimeOfDay
    told: str
    character: str | None = None


@dataclass(frozen=True, slots=True)
class Span:
    """From a start to an end; one past midnight is more than a day's minutes."""

    start: int
    end: int
    character: str | None = None

    @property
    def minutes(self) -> int:
        """How long it is."""
        return self.end - self.start

    def as_plain(self) -> Plain:
        """With ``from`` and ``to``."""
        start, end = (TimeOfDay(time).as_plain() for time in (self.start, self.end))
        who: dict[str, Plain] = {"character": self.character} if self.character else {}
        return {"from": start, "to": end, "minutes": self.minutes, **who}


@dataclass(frozen=True, slots=True)
class End:
    """When it ends, and how long it lasts in all."""

    ends: TimeOfDay
    minutes: int


@dataclass(frozen=True, slots=True)
class Start:
    """When it began, and how long it lasted in all."""

    began: TimeOfDay
    minutes: int


@dataclass(frozen=True, slots=True)
class ComesRound:
    """One of the times."""

    time: TimeOfDay


@dataclass(frozen=True, slots=True)
class DayOrder:
    """Events or characters from the earliest to the latest; those at one time ``together``."""

    order: tuple[str, ...]
    together: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class TripFound:
    """A trip by its number, counted from 1."""

    trip: int
    leaves: TimeOfDay
    arrives: TimeOfDay
    minutes: int


ClockAnswer = ClockRead | ClockSet | TimeConverted | Span | End | Start | ComesRound | DayOrder | TripFound
