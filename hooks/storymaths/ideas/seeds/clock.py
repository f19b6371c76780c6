"""Times the story tells: read, set, put in order, and how long it is between them."""

from __future__ import annotations

import re
from itertools import combinations, pairwise

from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidate, Candidates, activity
from ..idea import FromStory
from ..material import Material, TimeTold
from .seed import Seed

_CLOCK_TIME = re.compile(r"\d{1,2}:\d\d")
_SHOWN, _SPANS, _EVENTS, _LONGEST = 4, 3, 6, 6 * 60


def _plant(material: Material, limits: YearLimits) -> Candidates:
    fits = [time for time in material.times if time.minutes % limits.clock_minutes == 0]
    fits += [] if fits else [time for time in material.times if time.minutes % 60 == 0]
    mixed = sorted(fits, key=lambda time: time.minutes % 60 == 0)[: _SHOWN // 2]
    chosen = sorted([*mixed, *(time for time in fits if time not in mixed)][:_SHOWN], key=lambda time: time.minutes)
    if len(chosen) > 1:
        times: list[Plain] = [_written(time.minutes) for time in chosen]
        yield Candidate(activity("clock", "Clocks of the story", "", find="read", times=times), _uses(chosen))
        yield Candidate(activity("clock", "Set the clocks of the story", "", find="set", times=times), _uses(chosen))
    yield from _from_one_to_another(material)
    day = sorted(fits, key=lambda time: time.minutes)
    spans = [(one, other) for one, other in pairwise(day) if other.minutes - one.minutes <= _LONGEST][:_SPANS]
    if spans:
        ask = "How long is it from the first time to the second, each time?"
        told: list[Plain] = [[_written(one.minutes), _written(other.minutes)] for one, other in spans]
        lines = activity("clock", "How long between?", ask, find="duration", spans=told)
        yield Candidate(lines, _uses([time for span in spans for time in span]))
    events = list({_event(time): time for time in day if time.page}.values())
    if len(events) > 2:
        some = sorted(events, key=lambda time: (not time.event, time.page))[:_EVENTS]
        in_story: dict[str, Plain] = {
            _event(time): _written(time.minutes) for time in sorted(some, key=lambda t: t.page)
        }
        mixed_up = dict(sorted(in_story.items()))
        ask = "Find these in the story. Put them in the order of the day, the earliest first."
        lines = activity("clock", "The order of the day", ask, find="order", events=mixed_up)
        yield Candidate(lines, _uses(some))
    yield from _lasting(material, fits)


def _from_one_to_another(material: Material) -> Candidates:
    """How long it is for each of the cast from one time of theirs to a later one: sets off, and arrives."""
    clocks = [fact for fact in material.named if all(_CLOCK_TIME.fullmatch(value) for value in fact.values.values())]
    for one, other in combinations(clocks, 2):
        both: list[Plain] = [[start, other.values[id_]] for id_, start in one.values.items() if id_ in other.values]
        ask = f"Each has two times: {one.means}, and {other.means}. How long is it from the first to the second?"
        if both:
            lines = activity("clock", "How long does each take?", ask, find="duration", spans=both[:_SPANS])
            yield Candidate(lines, (FromStory(one.means), FromStory(other.means)))


def _lasting(material: Material, fits: list[TimeTold]) -> Candidates:
    for start in fits[:1]:
        for lasts in material.measured:
            if lasts.kind == "time" and lasts.unit != "second":
                unit = lasts.unit if lasts.number == 1 else f"{lasts.unit.removesuffix('s')}s"
                told = f"{lasts.number} {unit}"
                lines = activity("clock", f"After {told}", "", find="end", starts=_written(start.minutes), lasts=[told])
                yield Candidate(lines, (*_uses([start]), FromStory(told, lasts.pages)))


def _event(time: TimeTold) -> str:
    return time.event or f"page {time.page}"


def _written(minutes: int) -> str:
    return f"{minutes // 60}:{minutes % 60:02}"


def _uses(times: list[TimeTold]) -> tuple[FromStory, ...]:
    told = dict.fromkeys(times)
    return tuple(FromStory(_written(time.minutes), (time.page,) if time.page else ()) for time in told)


SEED = Seed("two clock times or more", _plant)
