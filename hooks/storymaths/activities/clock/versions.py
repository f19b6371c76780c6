"""Clock activities remade for another year: times as fine as it reads them, in the same order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING, Any

from ...model.activity import CastMember, Context
from ...model.year import YearLimits
from ..kind import Unsolvable
from .time import DAY, GRAIN, digits
from .words import times_of

if TYPE_CHECKING:
    from . import ClockFields

Version = tuple["ClockFields", Context, str]
_ONE = ("starts", "ends", "until", "after", "by")
_STRIDES: Mapping[int, Sequence[int]] = {
    0: (0,),
    1: (0,),
    2: (5, 10, 15),
    3: (7, 3, 13),
    4: (7, 11, 4),
    5: (17, 8, 13),
    6: (19, 23, 7),
}
"""By how many minutes each time moves on from the one before it, beyond the round ones, best first."""


def versions_of(fields: ClockFields, context: Context, year: YearLimits) -> Iterator[Version]:
    """For a younger year the same times first, then rounder ones; for an older, finer ones first."""
    there, harder = replace(context, year=year), year.year > context.year.year
    styled = fields if year.year >= 3 or fields.clock != "24" else fields.model_copy(update={"clock": None})
    if not harder:
        yield styled, there, "The same times."
    grain = GRAIN[year.year]
    try:
        levels = sorted(set(_every_time(fields, context)))
    except Unsolvable:
        return
    for stride in _STRIDES[year.year] if harder else (0,):
        for step in (grain, 5, 10, 15, 20, 30, 60):
            if step % grain == 0 or harder:
                new = _moved(levels, step, stride, grain)
                if new:
                    why = f"Times {'to the minute' if grain == 1 else f'to {grain} minutes'}, in the same order."
                    yield *_remade(styled, there, new, grain, stride), why
    if harder:
        yield styled, there, "The same times."


def _every_time(fields: ClockFields, context: Context) -> list[int]:
    found = [time for name in _ONE if (time := getattr(fields, name)) is not None]
    found += [*fields.times, *(time for span in fields.spans for time in span), *(fields.events or {}).values()]
    found += [time for trip in fields.trips for time in trip if time is not None]
    return found + [time for fact in (fields.fact, fields.to_fact) if fact for time in times_of(fact, context)]


def _moved(levels: Sequence[int], step: int, stride: int, grain: int) -> dict[int, int]:
    """Each time rounded to a step and moved on; later times stay later. Empty when the day is too short for it."""
    new: dict[int, int] = {}
    last = -grain
    for place, time in enumerate(levels, 1):
        moved = time // step * step + (stride * place % 60) // grain * grain
        last = max(last + grain, moved)
        new[time] = last
    return new if last < DAY else {}


def _remade(
    fields: ClockFields, context: Context, new: Mapping[int, int], grain: int, stride: int
) -> tuple[ClockFields, Context]:
    def length(minutes: int) -> int:
        return max(grain, (minutes + stride) // grain * grain)

    update: dict[str, Any] = {name: new[time] for name in _ONE if (time := getattr(fields, name)) is not None}
    update["times"] = tuple(new[time] for time in fields.times)
    update["spans"] = tuple((new[start], new[end]) for start, end in fields.spans)
    update["trips"] = tuple(tuple(None if time is None else new[time] for time in trip) for trip in fields.trips)
    update["lasts"] = tuple(map(length, fields.lasts))
    update["ask"] = None
    if fields.events:
        update["events"] = {name: new[time] for name, time in fields.events.items()}
    if fields.every:
        update["every"] = length(fields.every)
    facts = [fact for fact in (fields.fact, fields.to_fact) if fact]
    return fields.model_copy(update=update), replace(
        context, characters=tuple(_with(p, facts, new, context) for p in context.characters)
    )


def _with(character: CastMember, facts: Sequence[str], new: Mapping[int, int], context: Context) -> CastMember:
    alone = replace(context, characters=(character,))
    return replace(
        character, facts={**character.facts, **{fact: digits(new[times_of(fact, alone)[0]]) for fact in facts}}
    )
