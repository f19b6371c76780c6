"""Times of day and lengths of time: read as people write them, said as each year says them."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import BeforeValidator, Field

HOUR, DAY = 60, 24 * 60
Style = Literal["12", "24"]
_DIGITS = re.compile(r"(\d{1,2}):(\d\d)\s*(am|pm)?")
_WORDS = re.compile(r"(?:(half|quarter|\d{1,2})(?: minutes?)? (past|to) )?(\d{1,2})(?: o'clock)?\s*(am|pm)?")
_NAMED = {"noon": 12 * HOUR, "midday": 12 * HOUR, "midnight": 0}
_LENGTH = re.compile(r"(?:(\d{1,4}) ?h(?:ours?)?)? ?(?:(?:and )?(\d{1,4}) ?min(?:ute)?s?)?")
_FIVES_SAID = {15: "quarter", 30: "half"}
PARTS_OF_DAY = ("in the morning", "in the middle of the day", "in the afternoon", "in the evening", "at night")
"""In the order of the day, from daybreak on."""


def _time(value: Any) -> Any:
    problem = ValueError('should be a time such as "7:35", "19:35", "7:35 pm" or "half past 7"')
    if isinstance(value, int) and not isinstance(value, bool) and HOUR <= value < DAY:
        return value  # what YAML makes of 7:35 without quotation marks: minutes since midnight
    if not isinstance(value, str) or len(value) > 40:
        raise problem
    text = value.strip().lower().replace("’", "'").replace("a.m.", "am").replace("p.m.", "pm")
    if text in _NAMED:
        return _NAMED[text]
    digits, words = _DIGITS.fullmatch(text), _WORDS.fullmatch(text)
    if digits:
        hour, minute, half = int(digits[1]), int(digits[2]), digits[3]
    elif words and (words[2] or "o'clock" in text or words[4]):
        hour, half = int(words[3]), words[4]
        away = {"half": 30, "quarter": 15}.get(words[1] or "0") or int(words[1] or 0)
        minute = away if words[2] != "to" else -away
        if not 1 <= hour <= 12 or away >= HOUR or (words[1] == "half" and words[2] == "to"):
            raise problem
    else:
        raise problem
    if hour > 23 or minute >= HOUR or (half and not 1 <= hour <= 12):
        raise problem
    if half:
        hour = hour % 12 + (12 if half == "pm" else 0)
    return (hour * HOUR + minute) % DAY


Time = Annotated[int, BeforeValidator(_time), Field(ge=0, lt=DAY)]
"""A time of day in minutes since midnight. ``7:35`` is in the morning; write ``19:35`` or ``7:35 pm`` for the evening."""


def _length(value: Any) -> Any:
    if isinstance(value, int) and not isinstance(value, bool):
        return value
    match = _LENGTH.fullmatch(value.strip()) if isinstance(value, str) and value.strip() else None
    if match is None:
        raise ValueError('should be a length of time such as "45 minutes" or "1 hour 20 minutes"')
    return int(match[1] or 0) * HOUR + int(match[2] or 0)


Length = Annotated[int, BeforeValidator(_length), Field(ge=1, le=DAY)]
"""A length of time in minutes, up to a day. A bare number is minutes."""


@dataclass(frozen=True, slots=True)
class TimeOfDay:
    """A time of day in an answer, in minutes since midnight; past a day's minutes it is the next day's."""

    minutes: int

    def as_plain(self) -> str:
        """``HH:MM`` of 24 hours."""
        return digits(self.minutes)


def digits(time: int, style: Style = "24") -> str:
    """``07:35`` and ``19:35``, or ``7:35 am`` and ``7:35 pm``; noon and midnight are neither."""
    hour, minute = divmod(time % DAY, HOUR)
    if style == "24":
        return f"{hour:02}:{minute:02}"
    if not minute and hour % 12 == 0:
        return "12 noon" if hour else "12 midnight"
    return f"{on_face(time)} {'am' if hour < 12 else 'pm'}"


def on_face(time: int) -> str:
    """``7:35``, which a clock with hands shows twice a day."""
    return f"{hour_on_face(time)}:{time % HOUR:02}"


def in_words(time: int) -> str:
    """``half past 7``, ``quarter to 8``, ``25 past 7``, ``3 minutes to 8``, ``8 o'clock``."""
    hour, minute = divmod(time % DAY, HOUR)
    if not minute:
        return f"{hour % 12 or 12} o'clock"
    past = minute <= 30
    away = minute if past else HOUR - minute
    said = _FIVES_SAID.get(away) or (str(away) if away % 5 == 0 else f"{away} minute{'' if away == 1 else 's'}")
    return f"{said} {'past' if past else 'to'} {(hour if past else hour + 1) % 12 or 12}"


def long(minutes: int) -> str:
    """``1 hour 35 minutes``, ``45 minutes``."""
    hours, rest = divmod(minutes, HOUR)
    parts = [f"{hours} hour{'' if hours == 1 else 's'}" if hours else ""]
    parts.append(f"{rest} minute{'' if rest == 1 else 's'}" if rest or not hours else "")
    return " ".join(filter(None, parts))


def hour_on_face(time: int) -> int:
    """The hour the hour hand stands at or has left, 1 to 12."""
    return time % DAY // HOUR % 12 or 12


def part_of_day(time: int) -> str:
    """``in the morning``, ``in the afternoon``, ``in the evening``, ``at night``."""
    hour, minute = divmod(time % DAY, HOUR)
    if not minute and hour == 12:
        return "in the middle of the day"
    if not 5 <= hour < 21:
        return "at night"
    return f"in the {'morning' if hour < 12 else 'afternoon' if hour < 18 else 'evening'}"
