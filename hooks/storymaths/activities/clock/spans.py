"""Lengths of time: how long from one time to another, when something ends or began, what comes round again."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from itertools import accumulate, pairwise
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, listed
from .time import DAY, HOUR, digits, long
from .words import fact_words, jump_figure, read_finely, solution, style_of, teller, times_of

if TYPE_CHECKING:
    from . import ClockFields

Teller = Callable[[int], str]
Span = tuple[str, str, int, int]
"""Id and name of whose it is, start, and end; an end past midnight is more than a day's minutes."""
_SPANS_DRAWN = 6


def duration(fields: ClockFields, context: Context) -> Solution:
    """How long each span is, in order; or which is longest or shortest. A step for each jump along the day."""
    spans = _spans(fields, context)
    tell = teller([time for _, _, start, end in spans for time in (start, end)], context, style_of(fields, context))
    lengths = [end - start for _, _, start, end in spans]
    wanted = {"longest": max, "shortest": min}[fields.pick](lengths) if fields.pick in ("longest", "shortest") else None
    answers = []
    for (id_, name, start, end), length in zip(spans, lengths, strict=True):
        if wanted in (None, length):
            who = f"{name}: " if id_ else f"From {tell(start)} to {tell(end)}: "
            data = {"from": digits(start), "to": digits(end), "minutes": length} | ({"player": id_} if id_ else {})
            answers.append(Answer(capital(f"{who}{long(length)}."), counted_on(start, end, tell), data))
    meanings = [fact_words(fact, context) for fact in (fields.fact, fields.to_fact) if fact]
    between = f"from “{meanings[0]}” to “{meanings[1]}”" if meanings else "from the first time to the second"
    ask = f"How long is it {between}?"
    if wanted is not None:
        ask = f"For which is it {fields.pick} {between}, and how long is that?"
    shown = tuple(f"{tell(start)} to {tell(end)}" for _, _, start, end in spans)
    task = Task(ask, context.characters if meanings else (), shown if meanings else (), () if meanings else shown)
    steps = max(len(stops_between(start, end)) - 1 for _, _, start, end in spans)
    note = "Each span was counted on to the hour, then by hours, then to its end."
    figures = tuple(line_of_time(stops_between(start, end), tell) for _, _, start, end in spans[:_SPANS_DRAWN])
    return solution(task, answers, steps, note, _slip_of_hundreds(spans), figures)


def _spans(fields: ClockFields, context: Context) -> list[Span]:
    named = [("", "", start, end) for start, end in fields.spans]
    if fields.fact and fields.to_fact:
        pairs = zip(context.characters, times_of(fields.fact, context), times_of(fields.to_fact, context), strict=True)
        named = [(character.id, character.name, start, end) for character, start, end in pairs]
    if bool(fields.fact) != bool(fields.to_fact):
        message = "A span of the cast needs two facts: where it starts and where it ends."
        raise Unsolvable(("fact",), message, 'give both "fact" and "to_fact", or "spans".')
    for _, name, start, end in named:
        if start == end:
            message = f"The two times{f' of {name}' if name else ''} are the same: no time passes, or a whole day."
            raise Unsolvable(("fact",) if name else ("spans",), message, "write two different times.")
    loc = ("fact",) if fields.fact else ("spans",)
    read_finely((time for _, _, start, end in named for time in (start, end)), context, loc)
    return [(id_, name, start, end if end > start else end + DAY) for id_, name, start, end in named]


def stops_between(start: int, end: int) -> list[int]:
    """The start, the next hour, the last hour before the end, the end; without those that are the same."""
    first, last = -(-start // HOUR) * HOUR, end // HOUR * HOUR
    return sorted({start, first, last, end}) if first <= last else [start, end]


def counted_on(start: int, end: int, tell: Teller) -> str:
    """The jumps from start to end in words, and the sum of those that are not whole hours."""
    stops = stops_between(start, end)
    jumps = [after - before for before, after in pairwise(stops)]
    told = ", then ".join(f"{long(jump)} to {tell(stop)}" for jump, stop in zip(jumps, stops[1:], strict=True))
    worked = f"From {tell(start)} it is {told}."
    parts = [jump for jump in jumps if jump % HOUR]
    if len(parts) < 2:
        return worked if len(jumps) < 2 else f"{worked} Together that is {long(end - start)}."
    total = sum(parts)
    carried = f" {total} = {HOUR} + {total - HOUR}." if total > HOUR else ""
    return f"{worked} {' + '.join(map(str, parts))} = {total}.{carried} Together that is {long(end - start)}."


def line_of_time(stops: Sequence[int], tell: Teller) -> Figure:
    """The stops along a line, with the jumps between them."""
    return jump_figure([tell(stop) for stop in stops], [after - before for before, after in pairwise(stops)])


def _slip_of_hundreds(spans: Sequence[Span]) -> LikelyError | None:
    """Taking times as if an hour had 100 minutes: 10:20 − 8:45 as 1020 − 845."""
    for _, _, start, end in spans:
        if end < DAY and end % HOUR < start % HOUR:
            wrong = (end // HOUR * 100 + end % HOUR) - (start // HOUR * 100 + start % HOUR)
            return LikelyError(
                "Takes the times away as if an hour had 100 minutes.",
                f"{wrong} minutes in place of {long(end - start)}",
            )
    return None


def moved(fields: ClockFields, context: Context) -> Solution:
    """When it ends, given its start and what it lasts; or when it began, given its end."""
    forward = fields.find == "end"
    known, field = (fields.starts, "starts") if forward else (fields.ends, "ends")
    total = sum(fields.lasts)
    if known is None or total >= DAY:
        raise Unsolvable(("lasts",), "It lasts a day or more.", "choose shorter lengths of time.")
    read_finely([known], context, (field,))
    read_finely(fields.lasts, context, ("lasts",))
    first = known if forward else known - total
    times = list(accumulate(fields.lasts, initial=first))
    tell = teller(times, context, style_of(fields, context))
    found, verb = (times[-1], "ends") if forward else (first, "began")
    day = "" if 0 <= found < DAY else " the next day" if found >= DAY else " the day before"
    way = " ".join(counted_on(start, end, tell) for start, end in pairwise(times))
    answer = Answer(f"It {verb} at {tell(found)}{day}.", way, {verb: digits(found), "minutes": total})
    stops = stops_between(times[0], times[-1])
    note = "A time and a length lead to one other time, so there is one answer."
    task = Task(_asked_when(forward, tell(known), fields.lasts))
    steps = len(fields.lasts) + len(stops) - 2
    likely_error = _slip_past_sixty(known, total) if forward else None
    return solution(task, [answer], steps, note, likely_error, (line_of_time(stops, tell),))


def _asked_when(forward: bool, known: str, lasts: Sequence[int]) -> str:
    lengths = listed([long(length) for length in lasts]) + (", one after another" if len(lasts) > 1 else "")
    if forward:
        return f"It starts at {known} and lasts {lengths}. When does it end?"
    return f"It ended at {known} and had lasted {lengths}. When did it begin?"


def _slip_past_sixty(start: int, total: int) -> LikelyError | None:
    minute = start % HOUR + total % HOUR
    if minute < HOUR:
        return None
    hour = (start // HOUR + total // HOUR) % 12 or 12
    return LikelyError("Adds the minutes past 60 without a new hour.", f"{minute} minutes past {hour}")


def repeats(fields: ClockFields, context: Context) -> Solution:
    """Every time something comes round, from its start until a last time; a step for each."""
    start, until, every = fields.starts, fields.until, fields.every
    if start is None or until is None or every is None:
        raise Unsolvable(("find",), "It does not say when it comes round.", "give a start, how often, and a last time.")
    read_finely([start, until], context, ("starts",))
    read_finely([every], context, ("every",))
    if until < start:
        raise Unsolvable(("until",), "The last time comes before the first.", "write a later time.")
    times = list(range(start, until + 1, every))
    if len(times) > context.caps.answers:
        message = f"It comes round {len(times)} times."
        raise Unsolvable(("every",), message, "make it rarer, or stop sooner.", "activity-too-many-answers")
    tell = teller([start, until], context, style_of(fields, context))
    answers = [Answer(f"{capital(tell(start))}.", f"It starts at {tell(start)}.", {"time": digits(start)})]
    answers += [
        Answer(f"{capital(tell(time))}.", counted_on(before, time, tell), {"time": digits(time)})
        for before, time in pairwise(times)
    ]
    task = Task(
        f"It comes round every {long(every)}, first at {tell(start)} and last by {tell(until)}. At which times?"
    )
    note = f"After {tell(times[-1])} the next would be {long(every)} later, and that is after {tell(until)}."
    return solution(task, answers, min(12, max(1, len(times) - 1)), note)
