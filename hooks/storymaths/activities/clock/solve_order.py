"""The order of a day; where clocks are not read yet, by its parts: morning, afternoon, evening."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import groupby

from ...model.activity import Answer, Context, LikelyError, Shown, Solution, Task
from ...model.demands import Demands
from ...model.fields import year_name
from ..given import need_cast, need_one
from ..kind import Unsolvable
from . import say_order as say
from .tasks import DayOrder, OrderDay
from .teller import Teller, check_grain, demands_of_lengths, style_of, teller_for, times_of
from .time import DAY, HOUR, PARTS_OF_DAY, hour_on_face, part_of_day

_DAYBREAK = 5 * HOUR


@dataclass(frozen=True, slots=True)
class _Event:
    """What happens, and when; ``id`` is what answers call it."""

    id: str
    name: str
    time: int


Places = list[list[_Event]]
"""Events from the earliest to the latest; those at one time share a place."""


def order_day(task: OrderDay, context: Context) -> Solution[DayOrder]:
    """The events or the cast from the earliest to the latest; those at one time share a place."""
    events = _events(task, context)
    if len(events) < 2:
        raise Unsolvable(("events",), "There is nothing to put in order.", "give two times or more.")
    if context.year.practice.clock.tells == "parts of the day":
        return _order_by_parts(task, events, context)
    times = [event.time for event in events]
    check_grain(times, context, _loc(task))
    teller = teller_for(times, context, style_of(task, context), _misleads(events))
    places = _in_places(events, lambda event: event.time)
    names = [[event.name for event in place] for place in places]
    told = [teller.tell(place[0].time) for place in places]
    return Solution(
        _task(task, "Put these in the order of the day, the earliest first.", events, teller.tell, context),
        (Answer(say.say_order(names), _explain(places, told, names), _answer(places)),),
        teller.demands(times) | _demands_of_whole(places) | Demands(words=("first",)),
        len(events) - 1,
        "A day has one order. Things at the same time go side by side.",
        _expect_face(events, places, teller),
    )


def _order_by_parts(task: OrderDay, events: Sequence[_Event], context: Context) -> Solution[DayOrder]:
    """The events by the part of the day they are in. Raises ``Unsolvable`` where that tells nothing."""
    for event in events:
        if event.time < _DAYBREAK:
            raise Unsolvable(_loc(task), *say.refuse_night(event.name), "activity-beyond-year")
    places = _in_places(events, lambda event: PARTS_OF_DAY.index(part_of_day(event.time)))
    parts = [part_of_day(place[0].time) for place in places]
    if len(places) < 2:
        raise Unsolvable(
            _loc(task), *say.refuse_one_part(parts[0], year_name(context.year.year)), "activity-beyond-year"
        )
    names = [[event.name for event in place] for place in places]
    return Solution(
        _task(task, "Put these in the order of the day, from morning to night.", events, part_of_day, context),
        (Answer(say.say_order(names), f"{say.explain_order(parts, names)}.", _answer(places)),),
        Demands(),
        len(places) - 1,
        "First the morning, then the afternoon, the evening and the night. Things in one part of the day go side by side.",
    )


def _task(task: OrderDay, ask: str, events: Sequence[_Event], tell: Callable[[int], str], context: Context) -> Task:
    if task.fact:
        return Task(ask, context.characters, tuple(Shown(tell(event.time)) for event in events))
    return Task(ask, lines=tuple(say.list_event(event.name, tell(event.time)) for event in events), in_order=True)


def _events(task: OrderDay, context: Context) -> list[_Event]:
    need_one(task, events=task.events, fact=task.fact)
    if task.fact:
        need_cast(context)
        times = times_of(task.fact, context)
        return [_Event(one.id, one.name, time) for one, time in zip(context.characters, times, strict=True)]
    return [_Event(name, name, time) for name, time in (task.events or {}).items()]


def _loc(task: OrderDay) -> tuple[str, ...]:
    return ("fact",) if task.fact else ("events",)


def _misleads(events: Sequence[_Event]) -> bool:
    """Whether the hours, as a clock face has them, go another way than the day: 12:37 before 6:44."""
    by_day = sorted(events, key=lambda event: event.time)
    return by_day != sorted(by_day, key=lambda event: (hour_on_face(event.time), event.time % HOUR))


def _in_places(events: Sequence[_Event], when: Callable[[_Event], int]) -> Places:
    return [list(place) for _, place in groupby(sorted(events, key=when), key=when)]


def _answer(places: Places) -> DayOrder:
    together = tuple(tuple(event.id for event in place) for place in places if len(place) > 1)
    return DayOrder(tuple(event.id for place in places for event in place), together)


def _explain(places: Places, told: Sequence[str], names: Sequence[Sequence[str]]) -> str:
    worked = say.explain_order(told, names)
    if len(places) < 2:
        return f"{worked}."
    first, last = places[0][0], places[-1][0]
    return f"{worked}. {say.explain_whole(first.name, last.name, last.time - first.time)}."


def _demands_of_whole(places: Places) -> Demands:
    return demands_of_lengths([places[-1][0].time - places[0][0].time] if len(places) > 1 else [])


def _expect_face(events: Sequence[_Event], places: Places, teller: Teller) -> LikelyError | None:
    """Going by the face of the clock, where that gives another order."""
    by_face = sorted(events, key=lambda event: event.time % (DAY // 2))
    if by_face == [event for place in places for event in place]:
        return None
    return say.expect_face([event.name for event in by_face])
