"""How a year tells times and lengths of time, and what that demands of a child."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from math import gcd

from pydantic import TypeAdapter, ValidationError

from ...model.activity import Context
from ...model.demands import Amount, Demands, Number, amounts
from ...model.document import Loc
from ...model.fields import year_name
from ..kind import Unsolvable
from ..saying import number_word
from .tasks import ClockFields
from .time import DAY, HOUR, Style, Time, digits, in_words, on_face, part_of_day

_TIME: TypeAdapter[int] = TypeAdapter(Time)
_IN_WORDS = {0: "o'clock", 15: "quarter past", 30: "half past", 45: "quarter to"}
_GRAINS = {60: "whole hours", 30: "o'clock and half past"}


@dataclass(frozen=True, slots=True)
class Teller:
    """Times in words or in digits; with the half of the day where it could be in doubt."""

    in_digits: bool
    style: Style
    in_doubt: bool

    def tell(self, time: int) -> str:
        """``7:30``, ``7:30 pm``, ``19:30``, ``half past 7``, ``half past 7 in the evening``."""
        if self.in_digits:
            return digits(time, self.style) if self.in_doubt else on_face(time)
        return f"{in_words(time)} {part_of_day(time)}" if self.in_doubt else in_words(time)

    def tell_in_turn(self, times: Iterable[int]) -> list[str]:
        """Times one after another, in words with the part of the day only where it is another than before."""
        told: list[str] = []
        before = ""
        for time in times:
            part = part_of_day(time)
            told.append(in_words(time) if not self.in_digits and part == before else self.tell(time))
            before = part
        return told

    def demands(self, times: Iterable[int]) -> Demands:
        """What reading the times demands."""
        return demands_of_digits(times) if self.in_digits else demands_of_words(times)


def teller_for(times: Iterable[int], context: Context, style: Style, in_doubt: bool = False) -> Teller:
    """How the year tells these times: in words until it writes them in digits."""
    halves = len({time % DAY < DAY // 2 for time in times})
    return Teller(tells_in_digits(context), style, in_doubt or style == "24" or halves > 1)


def tells_in_digits(context: Context) -> bool:
    """Whether the year writes times in digits."""
    return context.year.practice.clock.tells == "digits"


def style_of(task: ClockFields, context: Context) -> Style:
    """12-hour or 24-hour, as asked. Raises ``Unsolvable`` before the year reads such a clock."""
    check_clock(task.style, context)
    return task.style


def check_clock(style: Style, context: Context) -> None:
    """Raises ``Unsolvable`` for a clock that the year does not read."""
    if int(style) not in context.year.practice.clock.clocks:
        message = f"{year_name(context.year.year)} does not yet meet the {style}-hour clock."
        raise Unsolvable(("clock",), message, "leave it out, or move it to an older year.", "activity-beyond-year")


def check_numerals(roman: bool, context: Context) -> None:
    """Raises ``Unsolvable`` for Roman numerals before the year reads them on a clock."""
    if roman and not context.year.practice.clock.roman:
        message = f"{year_name(context.year.year)} does not yet read Roman numerals on a clock."
        raise Unsolvable(("roman",), message, "leave it out, or move it to an older year.", "activity-beyond-year")


def check_grain(minutes: Iterable[int], context: Context, loc: Loc) -> None:
    """Raises ``Unsolvable`` for a time or a length that the year does not yet read off a clock."""
    grain = context.year.clock_minutes
    for time in minutes:
        if time % grain:
            whole = _GRAINS.get(grain, f"{number_word(grain)} minutes")
            told = digits(time) if time >= HOUR else f"{time} minutes"
            message = f"{told} is too fine for {year_name(context.year.year)}, which reads a clock to {whole}."
            raise Unsolvable(loc, message, "choose another time, or an older year.", "activity-beyond-year")


def times_of(fact: str, context: Context) -> list[int]:
    """The time each of the cast has as a fact, in the cast's order. Raises ``Unsolvable``."""
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


def demands_of_digits(times: Iterable[int]) -> Demands:
    """What reading times in digits demands: the clock, and no numbers."""
    return Demands(clock=gcd(HOUR, *times))


def demands_of_words(times: Iterable[int]) -> Demands:
    """What reading times in words demands: the clock, its words, and the numbers in them."""
    seen = list(times)
    minutes = {time % HOUR for time in seen}
    numbers = {(time if time % HOUR <= 30 else time + HOUR) // HOUR % 12 or 12 for time in seen}
    numbers |= {min(minute, HOUR - minute) for minute in minutes - _IN_WORDS.keys()}
    words = tuple(name for minute, name in _IN_WORDS.items() if minute in minutes)
    return Demands(amounts=amounts(numbers), words=words, clock=gcd(HOUR, *seen))


def demands_of_lengths(lengths: Iterable[int]) -> Demands:
    """What reading lengths of time demands: so many hours and minutes."""
    told: dict[Amount, str] = {}
    for length in lengths:
        hours, minutes = divmod(length, HOUR)
        told |= {_amount(hours, "hours"): "hour"} if hours else {}
        told |= {_amount(minutes, "minutes"): "minute"} if minutes else {}
    return Demands(amounts=tuple(told), words=tuple(dict.fromkeys(told.values())))


def _amount(number: Number, unit: str) -> Amount:
    [amount] = amounts([number], unit)
    return amount
