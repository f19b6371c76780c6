"""Reading and setting a clock, and telling a time by the other clock."""

from __future__ import annotations

from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..kind import Unsolvable
from ..saying import capital, owner
from .time import DAY, HOUR, Style, digits, in_words, on_face, part_of_day
from .words import face, hands, read_finely, solution, style_of, times_of

if TYPE_CHECKING:
    from . import ClockFields

_NAMES = "ABCDEFGHIJKLMNOPQRSTUVWX"


def read_clock(fields: ClockFields, context: Context) -> Solution:
    """The time on each face, in order: the hour first, then the minutes."""
    named = _times(fields, context)
    style = style_of(fields, context)
    answers = []
    for id_, name, time in named:
        told = in_words(time)
        if context.year.year >= 3:
            told += f", {digits(time, style) if style == '24' else on_face(time)}"
        data = {"clock": name, "time": digits(time), "words": in_words(time)} | ({"player": id_} if id_ else {})
        answers.append(Answer(f"{_whose(id_, name)} shows {told}.", f"{hands(time)}{_counted(time, context)}", data))
    task = Task(
        "What time does each clock show?",
        context.characters if fields.fact else (),
        lines=tuple(
            f"{_whose(id_, name)}{f', {part_of_day(time)}' if style == '24' else ''}: ___" for id_, name, time in named
        ),
        figures=tuple(face(time, _whose(id_, name), fields.roman) for id_, name, time in named),
    )
    return solution(task, answers, 2, "A clock shows one time.", _slip_of_swapped_hands([time for _, _, time in named]))


def set_clock(fields: ClockFields, context: Context) -> Solution:
    """Where the hands go for each time, in order."""
    named = _times(fields, context)
    style = style_of(fields, context)
    answers, lines = [], []
    for id_, name, time in named:
        told = in_words(time) if context.year.year < 3 else digits(time, "24") if style == "24" else on_face(time)
        lines.append(f"{_whose(id_, name)}: {told}")
        data = {"clock": name, "time": digits(time), "hour_hand": _between(time), "minute_hand": time % HOUR}
        says = f"{capital(told)}: {hands(time)[0].lower()}{hands(time)[1:]}"
        answers.append(Answer(says, f"{hands(time)}{_counted(time, context)}", data | ({"player": id_} if id_ else {})))
    task = Task(
        "Draw the hands on each clock.",
        context.characters if fields.fact else (),
        lines=tuple(lines),
        figures=tuple(face(None, _whose(id_, name), fields.roman) for id_, name, _ in named),
    )
    late = next((time for _, _, time in named if time % HOUR >= 30), None)
    likely_error = None
    if late is not None:
        hour = late % DAY // HOUR % 12 or 12
        likely_error = LikelyError(
            f"Leaves the hour hand at {hour} while the minute hand goes round.", "a clock that shows no time of day"
        )
    note = "The hour hand moves on as the minute hand goes round, so each time has one drawing."
    drawn = tuple(face(time, _whose(id_, name), fields.roman) for id_, name, time in named)
    return solution(task, answers, 2, note, likely_error, drawn)


def convert(fields: ClockFields, context: Context) -> Solution:
    """Each time as the other clock tells it: 24-hour if ``clock`` is 24, else 12-hour."""
    to = style_of(fields, context)
    from_: Style = "12" if to == "24" else "24"
    if context.year.year < 3:
        style_of(fields.model_copy(update={"clock": "24"}), context)
    answers, lines = [], []
    for id_, _, time in _times(fields, context):
        hour = time // HOUR
        old, new = digits(time, from_), digits(time, to)
        worked = f"{capital(old)} is before 1 in the afternoon, so the hour stays as it is"
        if hour >= 13:
            worked = f"{hour - 12} + 12 = {hour}" if to == "24" else f"{hour} − 12 = {hour - 12}"
        elif hour == 0:
            worked = "The first hour of the day is 12 on one clock and 00 on the other"
        lines.append(f"{old} = ___")
        data = {"time": digits(time), "told": new} | ({"player": id_} if id_ else {})
        answers.append(Answer(f"{capital(old)} is {new}", f"{worked}.", data))
    ask = f"Write each time as a {to}-hour clock shows it."
    task = Task(
        ask, context.characters if fields.fact else (), lines=tuple(line.replace(" = ___", ": ___") for line in lines)
    )
    late = [time for _, _, time in _times(fields, context) if time >= 13 * HOUR]
    likely_error = None
    if late and to == "12":
        likely_error = LikelyError(
            "Takes 10 from the hour in place of 12.", f"{late[0] // HOUR - 10}:{late[0] % HOUR:02} pm"
        )
    return solution(task, answers, 1, "Each minute of a day has one name on each clock.", likely_error)


def _times(fields: ClockFields, context: Context) -> list[tuple[str, str, int]]:
    """Id, name and time of each clock."""
    if fields.fact:
        times = times_of(fields.fact, context)
        named = [
            (character.id, character.name, time) for character, time in zip(context.characters, times, strict=True)
        ]
    else:
        named = [("", _NAMES[i], time) for i, time in enumerate(fields.times)]
    read_finely((time for _, _, time in named), context, ("fact",) if fields.fact else ("times",))
    if not named:
        raise Unsolvable(("times",), "There is no time to tell.", "give a time.")
    return named


def _whose(id_: str, name: str) -> str:
    return f"{capital(owner(name))} clock" if id_ else f"Clock {name}"


def _counted(time: int, context: Context) -> str:
    """How the minutes are counted, once fives can be."""
    minute = time % HOUR
    if context.year.year < 2 or not minute:
        return ""
    fives, ones = divmod(minute, 5)
    if not ones:
        return f" {fives} × 5 = {minute}."
    return f" {fives} × 5 + {ones} = {minute}." if fives else ""


def _between(time: int) -> list[int]:
    """The hours the hour hand stands at or between."""
    hour = time % DAY // HOUR % 12 or 12
    return [hour] if time % HOUR == 0 else [hour, hour % 12 + 1]


def _slip_of_swapped_hands(times: list[int]) -> LikelyError | None:
    for time in times:
        hour, minute = time // HOUR % 12, time % HOUR
        if minute % 5 == 0 and minute // 5 != hour:
            wrong = (minute // 5) * HOUR + hour * 5
            return LikelyError(
                "Takes the minute hand for the hour hand.", f"{in_words(wrong)} in place of {in_words(time)}"
            )
    return None
