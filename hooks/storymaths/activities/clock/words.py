"""What clock activities share: how a year tells the time, how finely, and how a clock is drawn."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import partial
from typing import TYPE_CHECKING, Any

from pydantic import TypeAdapter, ValidationError

from ...model.activity import Answer, Context, Figure, LikelyError, Solution, Task
from ...model.document import Loc
from ...model.fields import year_name
from ..kind import Unsolvable
from ..met import demands_met
from ..saying import counted
from .time import DAY, GRAIN, HOUR, Style, Time, digits, in_words, long, on_face, part_of_day

if TYPE_CHECKING:
    from . import ClockFields

WORDS = (
    "o'clock", "half past", "quarter past", "quarter to", "hour", "hours", "minute", "minutes", "noon", "midnight",
    "before", "after", "earlier", "later", "first", "next", "last", "duration", "digital clock",
)  # fmt: skip
"""Words of time to look for in a task and its answers."""
_DIGITS_FROM = 3
_TIME: TypeAdapter[int] = TypeAdapter(Time)


def style_of(fields: ClockFields, context: Context) -> Style:
    """12-hour or 24-hour, as asked; 24-hour only once it is met."""
    style = fields.clock or "12"
    if style == "24" and context.year.year < _DIGITS_FROM:
        message = f"{year_name(context.year.year)} does not yet meet the 24-hour clock."
        raise Unsolvable(("clock",), message, "leave it out, or move it to Year 3.", "activity-beyond-year")
    return style


def teller(times: Iterable[int], context: Context, style: Style = "12") -> Callable[[int], str]:
    """How a year tells these times: in words until Year 3, with the half of the day where it could be in doubt."""
    in_doubt = style == "24" or len({time % DAY < DAY // 2 for time in times}) > 1
    if context.year.year >= _DIGITS_FROM:
        return partial(digits, style=style) if in_doubt else on_face
    return (lambda time: f"{in_words(time)} {part_of_day(time)}") if in_doubt else in_words


def read_finely(minutes: Iterable[int], context: Context, loc: Loc) -> None:
    """Raises ``Unsolvable`` for a time or a length that the year does not yet read off a clock."""
    grain = GRAIN[context.year.year]
    for time in minutes:
        if time % grain:
            whole = {60: "whole hours", 30: "o'clock and half past", 5: "five minutes"}[grain]
            said = digits(time) if time >= HOUR else f"{time} minutes"
            message = f"{said} is too fine for {year_name(context.year.year)}, which reads a clock to {whole}."
            raise Unsolvable(loc, message, "choose another time, or an older year.", "activity-beyond-year")


def times_of(fact: str, context: Context) -> list[int]:
    """The time each of the cast has as a fact, in the cast's order."""
    times = []
    for character in context.characters:
        value = character.facts.get(fact)
        if value is None:
            message = f'{character.name} has no fact "{fact}".'
            raise Unsolvable(("fact",), message, "give the character that fact.", "activity-fact-missing")
        try:
            times.append(_TIME.validate_python(value))
        except ValidationError:
            message = f"The {fact} of {character.name} is {str(value)[:40]!r}, which is not a time of day."
            raise Unsolvable(("fact",), message, 'write a time such as "7:35" or "half past 7".') from None
    return times


def fact_words(fact: str, context: Context) -> str:
    """What a fact means, in words."""
    about = context.facts.get(fact)
    return about.means if about else fact.replace("_", " ")


def face(time: int | None, name: str, roman: bool | None = None) -> Figure:
    """A clock face; without a time, without hands."""
    data: dict[str, Any] = {"name": name, "numerals": "roman" if roman else "arabic", "hands": time is not None}
    alt = f"{name}: a clock face without hands."
    if time is not None:
        data |= {"hour": time % DAY // HOUR % 12, "minute": time % HOUR}
        alt = f"{name}: a clock. {hands(time)}"
    return Figure("clock-face", data, alt)


def hands(time: int) -> str:
    """Where the hands point, in words."""
    hour, minute = time % DAY // HOUR % 12 or 12, time % HOUR
    after = hour % 12 + 1
    if minute in (0, 30):
        where = f"halfway between {hour} and {after}" if minute else f"at {hour}"
    else:
        where = f"a little past {hour}" if minute < 30 else f"nearly at {after}"
    fives, ones = divmod(minute, 5)
    mark = f"{counted(ones, 'small marks')} past {fives or 12}" if ones else f"at {fives or 12}"
    return f"The hour hand is {where} and the minute hand is {mark}."


def jump_figure(points: Sequence[str], jumps: Sequence[int]) -> Figure:
    """Times along a line, with how long it is from each to the next."""
    said = [long(jump) for jump in jumps]
    steps = ", ".join(f"{jump} to {point}" for jump, point in zip(said, points[1:], strict=True))
    return Figure("clock-jumps", {"points": list(points), "jumps": said}, f"A line of time from {points[0]}: {steps}.")


def solution(
    task: Task,
    answers: Sequence[Answer],
    steps: int,
    note: str,
    likely_error: LikelyError | None = None,
    figures: tuple[Figure, ...] = (),
) -> Solution:
    """A solution whose uses are read off its words."""
    return Solution(task, tuple(answers), demands_met(task, answers, WORDS), steps, note, likely_error, figures)
