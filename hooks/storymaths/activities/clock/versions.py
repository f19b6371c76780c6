"""Clock activities for another year: the same times, or times as finely as it reads them, in the same order."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from ...model.activity import CastMember, Context
from ...model.year import YearLimits
from ..changed_fields import each, with_changed
from ..kind import Unsolvable
from .tasks import ClockTask, Holds, MeasureSpans
from .teller import times_of
from .time import DAY, HOUR, digits

Version = tuple[ClockTask, Context, str]
_ROUND_STEPS = (5, 10, 15, 20, 30, 60)


def versions_of(task: ClockTask, context: Context, year: YearLimits) -> Iterator[Version]:
    """For a younger year the same times first, then rounder ones; for an older, finer ones first."""
    there, harder = replace(context, year=year), year.year > context.year.year
    practice, grain = year.practice.clock, year.clock_minutes
    known = task.on_clocks_of(practice)
    if not harder:
        yield known, there, "The same times."
    try:
        levels = sorted(set(_every_time(task, context)))
    except Unsolvable:
        return
    for stride in practice.strides if harder else (0,):
        for step in (grain, *_ROUND_STEPS):
            if (step % grain == 0 or harder) and (new := _move(levels, step, stride, grain)):
                why = f"Times {'to the minute' if grain == 1 else f'to {grain} minutes'}, in the same order."
                yield *_changed(known, there, new, grain, stride), why
    if harder:
        yield known, there, "The same times."


def _every_time(task: ClockTask, context: Context) -> list[int]:
    seen: list[int] = []

    def note(time: int) -> int:
        seen.append(time)
        return time

    with_changed(task, {Holds.TIMES: each(note)})
    return seen + [time for fact in _facts(task) for time in times_of(fact, context)]


def _facts(task: ClockTask) -> list[str]:
    """The facts of the cast that are times."""
    to_fact = task.to_fact if isinstance(task, MeasureSpans) else None
    return [fact for fact in (task.fact, to_fact) if fact]


def _move(levels: Sequence[int], step: int, stride: int, grain: int) -> dict[int, int]:
    """Each time rounded to a step and moved on; later times stay later. Empty when the day is too short for it."""
    new: dict[int, int] = {}
    last = -grain
    for place, time in enumerate(levels, 1):
        moved = time // step * step + (stride * place % HOUR) // grain * grain
        last = max(last + grain, moved)
        new[time] = last
    return new if last < DAY else {}


def _changed(
    task: ClockTask, context: Context, new: Mapping[int, int], grain: int, stride: int
) -> tuple[ClockTask, Context]:
    def length(minutes: int) -> int:
        return max(grain, (minutes + stride) // grain * grain)

    changed = with_changed(task, {Holds.TIMES: each(new.__getitem__), Holds.LENGTHS: each(length)})
    moved = tuple(_with_times(one, _facts(task), new, context) for one in context.characters)
    return changed, replace(context, characters=moved)


def _with_times(character: CastMember, facts: Sequence[str], new: Mapping[int, int], context: Context) -> CastMember:
    alone = replace(context, characters=(character,))
    times = {fact: digits(new[times_of(fact, alone)[0]]) for fact in facts}
    return replace(character, facts={**character.facts, **times})
