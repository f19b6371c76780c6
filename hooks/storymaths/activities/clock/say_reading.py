"""Clocks and their hands, in words and drawings."""

from __future__ import annotations

from ...model.activity import Context, Figure, LikelyError, Line
from ...model.figures.measures import ClockFace, Hands
from ..saying import capital, counted, owner
from .teller import tells_in_digits
from .time import HOUR, Style, digits, hour_on_face, in_words, on_face, part_of_day


def name_clock(name: str, owned: bool) -> str:
    """``Gull’s clock``, ``Clock A``."""
    return f"{capital(owner(name))} clock" if owned else f"Clock {name}"


def leave_gap(heading: str, time: int, style: Style) -> Line:
    """``Clock A: ___``; with the part of the day where a 24-hour clock is to be written."""
    return Line((f"{heading}{f', {part_of_day(time)}' if style == '24' else ''}: ", ""))


def list_time(heading: str, told: str) -> Line:
    """``Clock A: half past 7``."""
    return Line((f"{heading}: {told}",))


def say_reading(heading: str, time: int, style: Style, context: Context) -> str:
    """``Clock A shows half past 7, 7:30``."""
    written = f", {digits(time, style) if style == '24' else on_face(time)}" if tells_in_digits(context) else ""
    return f"{heading} shows {in_words(time)}{written}"


def tell_to_set(time: int, style: Style, context: Context) -> str:
    """A time as it is given to be set."""
    if not tells_in_digits(context):
        return in_words(time)
    return digits(time, "24") if style == "24" else on_face(time)


def say_setting(told: str, time: int) -> str:
    """``Half past 7: the hour hand is …``."""
    where = _tell_hands(time).removesuffix(".")
    return f"{capital(told)}: {where[0].lower()}{where[1:]}"


def explain_face(time: int, in_fives: bool) -> str:
    """Where the hands point, and how the minutes are counted in fives."""
    fives, ones = divmod(time % HOUR, 5)
    if not in_fives or not fives:
        return _tell_hands(time)
    return f"{_tell_hands(time)} {fives} × 5{f' + {ones}' if ones else ''} = {time % HOUR}."


def draw_face(time: int | None, heading: str, roman: bool) -> Figure:
    """A clock face; without a time, without hands."""
    pointing = None if time is None else Hands(hour_on_face(time) % 12, time % HOUR)
    alt = f"{heading}: a clock face without hands." if time is None else f"{heading}: a clock. {_tell_hands(time)}"
    return Figure(ClockFace(heading, "roman" if roman else "arabic", pointing), alt)


def numbers_of_hands(time: int) -> set[int]:
    """The numbers by which it is told where the hands point."""
    hour, (fives, ones) = hour_on_face(time), divmod(time % HOUR, 5)
    by_hour = {hour} if time % HOUR < 30 else {hour % 12 + 1} if time % HOUR > 30 else {hour, hour % 12 + 1}
    return by_hour | {fives or 12} | ({ones} if ones else set())


def _tell_hands(time: int) -> str:
    hour, minute = hour_on_face(time), time % HOUR
    after = hour % 12 + 1
    if minute in (0, 30):
        where = f"halfway between {hour} and {after}" if minute else f"at {hour}"
    else:
        where = f"a little past {hour}" if minute < 30 else f"nearly at {after}"
    fives, ones = divmod(minute, 5)
    mark = f"{counted(ones, 'small marks')} past {fives or 12}" if ones else f"at {fives or 12}"
    return f"The hour hand is {where} and the minute hand is {mark}."


def expect_swapped_hands(time: int, wrong: int) -> LikelyError:
    """Taking one hand for the other."""
    return LikelyError("Takes the minute hand for the hour hand.", f"{in_words(wrong)} instead of {in_words(time)}")


def expect_still_hand(time: int) -> LikelyError:
    """Forgetting that the hour hand moves."""
    hour = hour_on_face(time)
    does = f"Leaves the hour hand at {hour} while the minute hand goes round."
    return LikelyError(does, f"an hour hand straight at {hour} for {in_words(time)}")


def leave_other(time: int, style: Style) -> Line:
    """``7:35 pm: ___``."""
    return Line((f"{digits(time, style)}: ", ""))


def say_other(time: int, style: Style, to: Style) -> str:
    """``7:35 pm is 19:35``."""
    return f"{capital(digits(time, style))} is {digits(time, to)}"


def explain_other(time: int, style: Style) -> str:
    """What becomes of the hour."""
    hour = time // HOUR
    if hour >= 13:
        return f"{hour - 12} + 12 = {hour}." if style == "12" else f"{hour} − 12 = {hour - 12}."
    if hour == 0:
        return "The first hour of the day is 12 on one clock and 00 on the other."
    return f"{capital(digits(time, style))} is before 1 in the afternoon, so the hour stays as it is."


def expect_ten(time: int) -> LikelyError:
    """Taking ten off the hour."""
    return LikelyError("Takes 10 from the hour instead of 12.", f"{time // HOUR - 10}:{time % HOUR:02} pm")
