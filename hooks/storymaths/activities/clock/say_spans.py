"""Lengths of time, ends, starts and what comes round, in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from ...model.activity import Context, LikelyError
from ..saying import capital, listed
from .tasks import FindRepeats, MeasureSpans, Span
from .teller import Teller
from .time import DAY, HOUR, in_words, long, part_of_day

ONE_TIME = "One end of it and how long it lasts give the other end."


def ask_how_long(task: MeasureSpans, context: Context) -> str:
    """What is asked of every span, or of the longest or shortest."""
    meanings = [context.facts[fact].means if fact in context.facts else fact.replace("_", " ") for fact in _facts(task)]
    between = f"from “{meanings[0]}” to “{meanings[1]}”" if meanings else "from the first time to the second"
    if task.pick:
        return f"For which is it {task.pick} {between}, and how long is that?"
    return f"How long is it {between}?"


def _facts(task: MeasureSpans) -> list[str]:
    return [fact for fact in (task.fact, task.to_fact) if fact]


def tell_span(span: Span, teller: Teller) -> str:
    """``7:30 to 8:15``, ``20 to 10 until half past 10, in the morning``: *to* is a word of times as well."""
    if teller.in_digits:
        return f"{teller.tell(span.start)} to {teller.tell(span.end)}"
    parts = {part_of_day(time) for time in (span.start, span.end)}
    if len(parts) > 1 or not teller.in_doubt:
        return f"{teller.tell(span.start)} until {teller.tell(span.end)}"
    return f"{in_words(span.start)} until {in_words(span.end)}, {parts.pop()}"


def say_span(span: Span, names: Mapping[str, str], teller: Teller, picked: bool) -> str:
    """``Gull: 45 minutes``; where nobody has it just how long, with its times only where one of several is picked."""
    if span.character:
        return capital(f"{names[span.character]}: {long(span.minutes)}")
    return f"From {tell_span(span, teller)}: {long(span.minutes)}" if picked else long(span.minutes)


def expect_hundreds(wrong: int, minutes: int) -> LikelyError:
    """Taking times for numbers."""
    does = "Takes the times away as if they were ordinary numbers."
    return LikelyError(does, f"{wrong} minutes instead of {long(minutes)}")


def ask_for_end(starts: str, lasts: Sequence[int]) -> str:
    """What is asked where the start is known."""
    return f"It starts at {starts} and lasts {_list_lengths(lasts)}. When does it end?"


def ask_for_start(ends: str, lasts: Sequence[int]) -> str:
    """What is asked where the end is known."""
    return f"It ended at {ends} and had lasted {_list_lengths(lasts)}. When did it begin?"


def _list_lengths(lasts: Sequence[int]) -> str:
    return listed([long(length) for length in lasts]) + (", one after another" if len(lasts) > 1 else "")


def say_end(ends: int, teller: Teller) -> str:
    """``It ends at 8:15``."""
    return f"It ends at {teller.tell(ends)}{' the next day' if ends >= DAY else ''}"


def say_start(began: int, teller: Teller) -> str:
    """``It began at 7:30``."""
    return f"It began at {teller.tell(began)}{' the day before' if began < 0 else ''}"


def expect_past_sixty(start: int, total: int) -> LikelyError:
    """Adding minutes past the hour."""
    hour = (start // HOUR + total // HOUR) % 12 or 12
    minutes = start % HOUR + total % HOUR
    return LikelyError("Adds the minutes past 60 without a new hour.", f"{minutes} minutes past {hour}")


def ask_for_repeats(task: FindRepeats, teller: Teller) -> str:
    """How often it comes round, and between which times."""
    starts, until = teller.tell(task.starts), teller.tell(task.until)
    return f"It comes round every {long(task.every)}, first at {starts} and last by {until}. At which times?"


def why_no_more(last: int, task: FindRepeats, teller: Teller) -> str:
    """That the next would be too late."""
    every, until = long(task.every), teller.tell(task.until)
    return f"After {teller.tell(last)} the next would be {every} later, and that is after {until}."
