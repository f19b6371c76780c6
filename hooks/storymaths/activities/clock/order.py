"""The order of a day; where clocks are not read yet, by its parts: morning, afternoon, evening."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ...model.fields import RECEPTION, year_name
from ..kind import Unsolvable
from ..saying import capital, listed
from .time import DAY, HOUR, long, part_of_day
from .words import read_finely, solution, style_of, teller, times_of

if TYPE_CHECKING:
    from . import ClockFields

Event = tuple[str, str, int]
"""Id, name and time."""
_DAYBREAK = 5 * HOUR
_PARTS = ("in the morning", "in the middle of the day", "in the afternoon", "in the evening", "at night")


def order_of_day(fields: ClockFields, context: Context) -> Solution:
    """The events or the cast from the earliest to the latest; those at one time share a place."""
    events = _events(fields, context)
    if len(events) < 2:
        raise Unsolvable(("events",), "There is nothing to put in order.", "give two times or more.")
    if context.year.year == RECEPTION:
        return _by_parts(fields, context, events)
    read_finely([time for _, _, time in events], context, ("fact",) if fields.fact else ("events",))
    tell = teller([time for _, _, time in events], context, style_of(fields, context))
    ordered = sorted(events, key=lambda event: event[2])
    places = [list(group) for _, group in groupby(ordered, key=lambda event: event[2])]
    says = ", then ".join(listed([name for _, name, _ in place]) for place in places)
    together = [[id_ for id_, _, _ in place] for place in places if len(place) > 1]
    worked = ", then ".join(f"{tell(place[0][2])} ({listed([name for _, name, _ in place])})" for place in places)
    if len(places) > 1:
        first, last = places[0][0], places[-1][0]
        worked += f". From {first[1]} to {last[1]}: {long(last[2] - first[2])}"
    task = Task(
        "Put these in the order of the day, the earliest first.",
        context.characters if fields.fact else (),
        tuple(tell(time) for _, _, time in events) if fields.fact else (),
        () if fields.fact else tuple(f"{name}: {tell(time)}" for _, name, time in events),
    )
    by_face = sorted(events, key=lambda event: event[2] % (DAY // 2))
    likely_error = None
    if [id_ for id_, _, _ in by_face] != [id_ for id_, _, _ in ordered]:
        likely_error = LikelyError(
            "Looks at the clock and not at morning or afternoon.", listed([name for _, name, _ in by_face])
        )
    data = {"order": [id_ for id_, _, _ in ordered], "together": together}
    note = "A day has one order; what is at the same time has the same place."
    return solution(
        task, [Answer(f"{capital(says)}.", f"{capital(worked)}.", data)], len(events) - 1, note, likely_error
    )


def _by_parts(fields: ClockFields, context: Context, events: Sequence[Event]) -> Solution:
    """The events by the part of the day they are in. Raises ``Unsolvable`` where that tells nothing."""
    loc = ("fact",) if fields.fact else ("events",)
    for _, name, time in events:
        if time < _DAYBREAK:
            message = f"{capital(name)} is before the day begins, so the parts of a day do not place it."
            raise Unsolvable(loc, message, "choose a time after five in the morning.", "activity-beyond-year")
    ordered = sorted(events, key=lambda event: _PARTS.index(part_of_day(event[2])))
    places = [(part, list(group)) for part, group in groupby(ordered, key=lambda event: part_of_day(event[2]))]
    if len(places) < 2:
        message = (
            f"All of these are {places[0][0]}, and {year_name(RECEPTION)} tells the parts of the day, not the time."
        )
        raise Unsolvable(loc, message, "spread them over the day.", "activity-beyond-year")
    tells = [part_of_day(time) for _, _, time in events]
    task = Task(
        "Put these in the order of the day, from morning to night.",
        context.characters if fields.fact else (),
        tuple(tells) if fields.fact else (),
        () if fields.fact else tuple(f"{name}: {told}" for (_, name, _), told in zip(events, tells, strict=True)),
    )
    names = [listed([name for _, name, _ in place]) for _, place in places]
    worked = ", then ".join(f"{part} ({these})" for (part, _), these in zip(places, names, strict=True))
    together = [[id_ for id_, _, _ in place] for _, place in places if len(place) > 1]
    data = {"order": [id_ for id_, _, _ in ordered], "together": together}
    answer = Answer(f"{capital(', then '.join(names))}.", f"{capital(worked)}.", data)
    note = "A day has one order: morning, afternoon, evening, night. What is in the same part of it has the same place."
    return solution(task, [answer], len(places) - 1, note)


def _events(fields: ClockFields, context: Context) -> list[Event]:
    """Id, name and time of each."""
    if fields.fact:
        times = times_of(fields.fact, context)
        return [(character.id, character.name, time) for character, time in zip(context.characters, times, strict=True)]
    return [(name, name, time) for name, time in (fields.events or {}).items()]
