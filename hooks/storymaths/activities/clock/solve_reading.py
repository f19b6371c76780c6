"""Reading and setting a clock, and telling a time by the other clock."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from ...model.activity import Answer, CastMember, Context, LikelyError, Solution, Task
from ...model.demands import Demands, amounts, operation
from ..given import need_cast, need_one
from . import say_reading as say
from .tasks import ClockRead, ClockSet, ConvertTimes, ReadClocks, SetClocks, TellTask, TimeConverted
from .teller import (
    check_clock,
    check_grain,
    check_numerals,
    demands_of_digits,
    demands_of_words,
    style_of,
    tells_in_digits,
    times_of,
)
from .time import HOUR, Style, TimeOfDay, digits, hour_on_face, in_words

_NAMES = "ABCDEFGHIJKLMNOPQRSTUVWX"


@dataclass(frozen=True, slots=True)
class _Clock:
    """A clock: its name or whose it is, and its time."""

    name: str
    time: int
    character: str | None = None

    @property
    def heading(self) -> str:
        """What stands over it."""
        return say.name_clock(self.name, self.character is not None)


def read_clocks(task: ReadClocks, context: Context) -> Solution[ClockRead]:
    """The time on each face, in order: the hour first, then the minutes."""
    clocks, style = _clocks(task, context), style_of(task, context)
    check_numerals(task.roman, context)
    times = [clock.time for clock in clocks]
    return Solution(
        Task(
            "What time does each clock show?",
            _cast(task, context),
            lines=tuple(say.leave_gap(clock.heading, clock.time, style) for clock in clocks),
            figures=tuple(say.draw_face(clock.time, clock.heading, task.roman) for clock in clocks),
        ),
        tuple(
            Answer(
                say.say_reading(clock.heading, clock.time, style, context),
                say.explain_face(clock.time, _counts_in_fives(context)),
                ClockRead(clock.name, TimeOfDay(clock.time), in_words(clock.time), clock.character),
            )
            for clock in clocks
        ),
        demands_of_words(times) | _demands_of_faces(times, context),
        2,
        "A clock shows one time.",
        _expect_swapped_hands(times),
    )


def set_clocks(task: SetClocks, context: Context) -> Solution[ClockSet]:
    """Where the hands go for each time, in order."""
    clocks, style = _clocks(task, context), style_of(task, context)
    check_numerals(task.roman, context)
    times = [clock.time for clock in clocks]
    told = [say.tell_to_set(time, style, context) for time in times]
    late = next((time for time in times if time % HOUR >= 30), None)
    demands = demands_of_digits(times) if tells_in_digits(context) else demands_of_words(times)
    return Solution(
        Task(
            "Draw the hands on each clock.",
            _cast(task, context),
            lines=tuple(say.list_time(clock.heading, one) for clock, one in zip(clocks, told, strict=True)),
            figures=tuple(say.draw_face(None, clock.heading, task.roman) for clock in clocks),
        ),
        tuple(
            Answer(
                say.say_setting(one, clock.time),
                say.explain_hand(clock.time, _counts_in_fives(context)),
                ClockSet(clock.name, TimeOfDay(clock.time), _between(clock.time), clock.time % HOUR, clock.character),
            )
            for clock, one in zip(clocks, told, strict=True)
        ),
        demands | _demands_of_faces(times, context),
        2,
        "The hour hand moves on as the minute hand goes round, so each time has one drawing.",
        None if late is None else say.expect_still_hand(late),
        tuple(say.draw_face(clock.time, clock.heading, task.roman) for clock in clocks),
    )


def convert_times(task: ConvertTimes, context: Context) -> Solution[TimeConverted]:
    """Each time as the other clock tells it: 24-hour if ``clock`` is 24, else 12-hour."""
    check_clock("24", context)
    clocks, to = _clocks(task, context), style_of(task, context)
    other: Style = "12" if to == "24" else "24"
    afternoon = [clock.time for clock in clocks if clock.time >= 13 * HOUR]
    hours = [clock.time // HOUR for clock in clocks if clock.time >= 13 * HOUR]
    sums = tuple(
        operation("+", hour - 12, 12, hour) if to == "24" else operation("−", hour, 12, hour - 12) for hour in hours
    )
    return Solution(
        Task(
            f"Write each time as a {to}-hour clock shows it.",
            _cast(task, context),
            lines=tuple(say.leave_other(clock.time, other) for clock in clocks),
        ),
        tuple(
            Answer(
                say.say_other(clock.time, other, to),
                say.explain_other(clock.time, other),
                TimeConverted(TimeOfDay(clock.time), digits(clock.time, to), clock.character),
            )
            for clock in clocks
        ),
        demands_of_digits(clock.time for clock in clocks)
        | Demands(
            amounts=amounts({number for hour in hours for number in (hour, hour - 12, 12)}),
            operations=tuple(dict.fromkeys(sums)),
            signs=frozenset({"+" if to == "24" else "−", "="} if sums else ()),
        ),
        1,
        "Each minute of a day has one name on each clock.",
        say.expect_ten(afternoon[0]) if afternoon and to == "12" else None,
    )


def _clocks(task: TellTask, context: Context) -> list[_Clock]:
    """The clocks in order. Raises ``Unsolvable``."""
    need_one(task, times=task.times, fact=task.fact)
    if task.fact:
        need_cast(context)
        times = times_of(task.fact, context)
        clocks = [_Clock(one.name, time, one.id) for one, time in zip(context.characters, times, strict=True)]
    else:
        clocks = [_Clock(_NAMES[n], time) for n, time in enumerate(task.times)]
    check_grain((clock.time for clock in clocks), context, ("fact",) if task.fact else ("times",))
    return clocks


def _cast(task: TellTask, context: Context) -> tuple[CastMember, ...]:
    return context.characters if task.fact else ()


def _between(time: int) -> tuple[int, ...]:
    """The hours the hour hand stands at or between."""
    hour = hour_on_face(time)
    return (hour,) if time % HOUR == 0 else (hour, hour % 12 + 1)


def _counts_in_fives(context: Context) -> bool:
    return context.year.knows("×") and 5 in context.year.tables


def _demands_of_faces(times: Sequence[int], context: Context) -> Demands:
    """What telling the hands of clocks and counting their minutes demands."""
    hours = {number for time in times for number in say.numbers_of_hands(time)}
    minutes = {time % HOUR for time in times} if _counts_in_fives(context) else set()
    fives = {minute - minute % 5: minute % 5 for minute in minutes if minute >= 5}
    counted = [operation("×", five // 5, 5, five) for five in fives]
    counted += [
        operation("+", minute - minute % 5, minute % 5, minute) for minute in minutes if minute > 5 and minute % 5
    ]
    signs = {sign for one in counted for sign in (one.sign, "=")}
    read = amounts(hours) + tuple(amount for one in counted for amount in amounts(one.numbers))
    tables = frozenset({5} if counted else ())
    return Demands(
        tuple(dict.fromkeys(read)), tuple(counted), frozenset(signs), words=("hour", "minute"), tables=tables
    )


def _expect_swapped_hands(times: Sequence[int]) -> LikelyError | None:
    for time in times:
        hour, minute = time // HOUR % 12, time % HOUR
        if minute % 5 == 0 and minute // 5 != hour:
            return say.expect_swapped_hands(time, minute // 5 * HOUR + hour * 5)
    return None
