"""Lengths of time: how long from one time to another, when something ends or began, what comes round again."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import reduce
from itertools import accumulate, pairwise
from operator import or_

from ...model.activity import Answer, Context, LikelyError, Line, Shown, Solution, Task
from ...model.demands import Demands
from ..given import need_cast, need_one
from ..kind import Unsolvable
from ..saying import capital
from . import say_spans as say
from .count_on import demands_of_jumps, draw_jumps, explain_jumps, stops_between
from .tasks import ComesRound, End, FindEnd, FindRepeats, FindStart, MeasureSpans, Span, Start
from .teller import Teller, check_grain, demands_of_lengths, style_of, teller_for, times_of
from .time import DAY, HOUR, TimeOfDay

_SPANS_DRAWN, _MOST_STEPS = 6, 12


def measure_spans(task: MeasureSpans, context: Context) -> Solution[Span]:
    """How long each span is, in order; or which is longest or shortest. A step for each jump along the day."""
    spans = _spans(task, context)
    teller = teller_for([time for one in spans for time in (one.start, one.end)], context, style_of(task, context))
    lengths = [one.minutes for one in spans]
    wanted = {"longest": max, "shortest": min}[task.pick](lengths) if task.pick else None
    found = [one for one in spans if wanted in (None, one.minutes)]
    names = {one.id: one.name for one in context.characters}
    shown = [say.tell_span(one, teller) for one in spans]
    return Solution(
        Task(
            say.ask_how_long(task, context),
            context.characters if task.fact else (),
            tuple(map(Shown, shown)) if task.fact else (),
            () if task.fact else tuple(Line((one,)) for one in shown),
            asks_after=tuple(names[one.character] for one in found if one.character and not task.pick),
        ),
        tuple(
            Answer(
                say.say_span(one, names, teller, task.pick is not None), explain_jumps(one.start, one.end, teller), one
            )
            for one in found
        ),
        _demands_of_spans(spans, found, teller),
        max(len(stops_between(one.start, one.end)) - 1 for one in spans),
        "Each span was counted on to the hour, then by hours, then to its end.",
        _expect_hundreds(spans) if teller.in_digits else None,
        tuple(draw_jumps(one.start, one.end, teller) for one in spans[:_SPANS_DRAWN]),
    )


def _spans(task: MeasureSpans, context: Context) -> list[Span]:
    need_one(task, spans=task.spans, to_fact=task.to_fact)
    if bool(task.fact) != bool(task.to_fact):
        message = "A span of the cast needs two facts: where it starts and where it ends."
        raise Unsolvable(("fact",), message, 'give both "fact" and "to_fact", or "spans".')
    named = [("", "", *span) for span in task.spans]
    if task.fact and task.to_fact:
        need_cast(context)
        pairs = zip(context.characters, times_of(task.fact, context), times_of(task.to_fact, context), strict=True)
        named = [(one.id, one.name, start, end) for one, start, end in pairs]
    for _, name, start, end in named:
        if start == end:
            message = f"The two times{f' of {name}' if name else ''} are the same: no time passes, or a whole day."
            raise Unsolvable(("fact",) if name else ("spans",), message, "write two different times.")
    loc = ("fact",) if task.fact else ("spans",)
    check_grain((time for _, _, *times in named for time in times), context, loc)
    return [Span(start, end if end > start else end + DAY, id_ or None) for id_, _, start, end in named]


def _demands_of_spans(spans: Sequence[Span], found: Sequence[Span], teller: Teller) -> Demands:
    read = teller.demands(time for one in spans for time in (one.start, one.end))
    return reduce(or_, (demands_of_jumps(one.start, one.end, teller) for one in found), read)


def _expect_hundreds(spans: Sequence[Span]) -> LikelyError | None:
    """Taking times as if an hour had 100 minutes: 10:20 − 8:45 as 1020 − 845."""
    for one in spans:
        if one.end < DAY and one.end % HOUR < one.start % HOUR:
            hours, minutes = one.end // HOUR - one.start // HOUR, one.end % HOUR - one.start % HOUR
            return say.expect_hundreds(hours * 100 + minutes, one.minutes)
    return None


@dataclass(frozen=True, slots=True)
class _Course:
    """Times one after another, and how they are told."""

    times: list[int]
    teller: Teller

    @property
    def explained(self) -> str:
        """How each follows from the one before."""
        return " ".join(explain_jumps(start, end, self.teller) for start, end in pairwise(self.times))

    @property
    def steps(self) -> int:
        """A step for each length and for each stop on the way."""
        return len(self.times) - 1 + len(stops_between(self.times[0], self.times[-1])) - 2

    def demands(self, lasts: Sequence[int]) -> Demands:
        """What is read and counted on."""
        jumps = (demands_of_jumps(start, end, self.teller) for start, end in pairwise(self.times))
        return reduce(or_, jumps, demands_of_lengths(lasts))


def find_end(task: FindEnd, context: Context) -> Solution[End]:
    """When it ends, given its start and what it lasts."""
    course = _course(task, task.starts, task.starts, ("starts",), context)
    ends, total = course.times[-1], sum(task.lasts)
    minutes = task.starts % HOUR + total % HOUR
    return Solution(
        Task(say.ask_for_end(course.teller.tell(task.starts), task.lasts)),
        (Answer(say.say_end(ends, course.teller), course.explained, End(TimeOfDay(ends), total)),),
        course.demands(task.lasts),
        course.steps,
        say.ONE_TIME,
        say.expect_past_sixty(task.starts, total) if minutes >= HOUR else None,
        (draw_jumps(course.times[0], ends, course.teller),),
    )


def find_start(task: FindStart, context: Context) -> Solution[Start]:
    """When it began, given its end and what it lasted."""
    total = sum(task.lasts)
    course = _course(task, task.ends, task.ends - total, ("ends",), context)
    began = course.times[0]
    return Solution(
        Task(say.ask_for_start(course.teller.tell(task.ends), task.lasts)),
        (Answer(say.say_start(began, course.teller), course.explained, Start(TimeOfDay(began), total)),),
        course.demands(task.lasts),
        course.steps,
        say.ONE_TIME,
        None,
        (draw_jumps(began, task.ends, course.teller),),
    )


def _course(task: FindEnd | FindStart, known: int, first: int, loc: tuple[str, ...], context: Context) -> _Course:
    if sum(task.lasts) >= DAY:
        raise Unsolvable(("lasts",), "It lasts a day or more.", "choose shorter lengths of time.")
    check_grain([known], context, loc)
    check_grain(task.lasts, context, ("lasts",))
    times = list(accumulate(task.lasts, initial=first))
    return _Course(times, teller_for(times, context, style_of(task, context)))


def find_repeats(task: FindRepeats, context: Context) -> Solution[ComesRound]:
    """Every time something comes round, from its start until a last time; a step for each."""
    check_grain([task.starts, task.until], context, ("starts",))
    check_grain([task.every], context, ("every",))
    if task.until < task.starts:
        raise Unsolvable(("until",), "The last time comes before the first.", "write a later time.")
    times = list(range(task.starts, task.until + 1, task.every))
    if len(times) > context.caps.answers:
        message = f"It comes round {len(times)} times."
        raise Unsolvable(("every",), message, "make it rarer, or stop sooner.", "activity-too-many-answers")
    course = _Course(times, teller_for([task.starts, task.until], context, style_of(task, context)))
    teller = course.teller
    first = "It comes for the first time."
    why = [first, *(explain_jumps(before, time, teller) for before, time in pairwise(times))]
    return Solution(
        Task(say.ask_for_repeats(task, teller)),
        tuple(
            Answer(capital(teller.tell(time)), one, ComesRound(TimeOfDay(time)))
            for time, one in zip(times, why, strict=True)
        ),
        course.demands([task.every]) | teller.demands([*times, task.until]) | Demands(words=("first", "last")),
        min(_MOST_STEPS, max(1, len(times) - 1)),
        say.why_no_more(times[-1], task, teller),
    )
