"""What the letters of a phrase must be on a clock, in a calendar, or as a run of numbers: the next day, counted in steps, in order."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from fractions import Fraction
from itertools import pairwise
from statistics import median, mode, multimode

from ..expression.number import Rational
from .amounts import difference, says
from .clock import are_alike
from .phrase_slots import DAYS, MONTHS
from .phrase_values import Value
from .phrase_worth import UNKNOWN, Judged, judge_number

Told = Mapping[str, Value]


def _clock(told: Told) -> Judged:
    """The time ``T``, and ``A`` later, is ``U``."""
    return _clock_apart(told, 1)


def _clock_before(told: Told) -> Judged:
    """The time ``T``, and ``A`` earlier, is ``U``."""
    return _clock_apart(told, -1)


def _clock_apart(told: Told, way: int) -> Judged:
    start, end = told["t"], told["u"]
    minutes = Fraction(0)
    if "a" in told:
        if told["a"].kind != "time":
            return UNKNOWN
        minutes = Fraction(told["a"].number) / 60
    if minutes.denominator != 1:
        return UNKNOWN
    right = int(start.number) + way * int(minutes)
    known = start.kind == "clock"
    if are_alike((right, known), (int(end.number), end.kind == "clock")):
        return Judged(True)
    hours, rest = divmod(right % 1440, 60)
    return Judged(False, f"it is {hours if known else hours % 12 or 12}:{rest:02}")


def _same_time(told: Told) -> Judged:
    return _clock_apart({"t": told["t"], "u": told["u"]}, 1)


def _next_day(told: Told) -> Judged:
    """``W``, and ``A`` days on, is ``V``: one day where none is told."""
    return _cyclic(told, "w", "v", 7, 1)


def _day_before(told: Told) -> Judged:
    return _cyclic(told, "w", "v", 7, -1)


def _next_month(told: Told) -> Judged:
    return _cyclic(told, "m", "n", 12, 1)


def _month_before(told: Told) -> Judged:
    return _cyclic(told, "m", "n", 12, -1)


def _cyclic(told: Told, one: str, other: str, around: int, way: int) -> Judged:
    days = told["a"].number if "a" in told else 1
    if "a" in told and told["a"].kind == "time":
        days = Fraction(days) / 86400
    right = (told[one].number - 1 + way * days) % around + 1
    names = DAYS if around == 7 else MONTHS
    return Judged(told[other].number == right, f"it is {names[int(right) - 1].capitalize()}")


def _month_number(told: Told) -> Judged:
    right = told["m"].number
    return Judged(told["o"].number == right, f"{MONTHS[int(right) - 1].capitalize()} is month {right}")


def _school_days(told: Told) -> Judged:
    days = Fraction(told["a"].number) / (86400 if told["a"].kind == "time" else 1)
    return judge_number(days, (told["v"].number - told["w"].number) % 7 + 1)


def _minute_hand(told: Told) -> Judged:
    minutes = int(told["t"].number) % 60
    return judge_number(told["a"].number, minutes // 5 or 12) if minutes % 5 == 0 else UNKNOWN


def _hour_hand(told: Told) -> Judged:
    hours, minutes = divmod(int(told["t"].number), 60)
    return UNKNOWN if minutes else judge_number(told["a"].number, hours % 12 or 12)


def _all_even(told: Told) -> Judged:
    return _all_of(told, 0)


def _all_odd(told: Told) -> Judged:
    return _all_of(told, 1)


def _all_of(told: Told, left: int) -> Judged:
    stray = next((number for number in told["h"].each if number.denominator == 1 and number % 2 != left), None)
    return Judged(stray is None, f"{says(stray or 0)} is {'even' if left else 'odd'}")


def _steps(told: Told) -> Judged:
    """``H`` goes up or down by ``S``, by ``B``, or in multiples of ``A``."""
    size = told.get("s") or told.get("b") or told["a"]
    if size.number <= 0:
        return UNKNOWN
    return _step(told["h"].each, size.number)


def _step(each: tuple[Rational, ...], size: Rational) -> Judged:
    wrong = [(one, other) for one, other in pairwise(each) if difference(other, one) != size]
    if not wrong or len(wrong) == len(each) - 1:  # steps of another size altogether are no slip
        return Judged(None if wrong else True)
    return Judged(False, f"the step from {says(wrong[0][0])} to {says(wrong[0][1])} is not {says(size)}")


def _even_steps(told: Told) -> Judged:
    each = told["h"].each
    steps = [difference(other, one) for one, other in pairwise(each)]
    size, times = Counter(steps).most_common(1)[0]
    return _step(each, size) if times * 2 > len(steps) or times == len(steps) - 1 else UNKNOWN


def _step_on(told: Told) -> Judged:
    """Counting on in ``S``, ``B`` comes after ``A``, and then ``C`` where that is told."""
    return _stepped(told, told["s"].number)


def _step_back(told: Told) -> Judged:
    """Counting back in ``S``, ``B`` comes after ``A``, and then ``C`` where that is told."""
    return _stepped(told, -told["s"].number)


def _stepped(told: Told, step: Rational) -> Judged:
    right = told["a"].number + step
    second = "c" not in told or told["c"].number == right + step
    return Judged(told["b"].number == right and second, f"it is {says(right)}, then {says(right + step)}")


def _going_up(told: Told) -> Judged:
    each = told["h"].each
    return Judged(all(a < b for a, b in pairwise(each)), _ordered(sorted(each)))


def _going_down(told: Told) -> Judged:
    each = told["h"].each
    return Judged(all(a > b for a, b in pairwise(each)), _ordered(sorted(each, reverse=True)))


def _in_order(told: Told) -> Judged:
    """``H`` goes up, or down, throughout; a run with more than one slip may be in another order altogether."""
    each = told["h"].each
    slips = min(sum(a >= b for a, b in pairwise(each)), sum(a <= b for a, b in pairwise(each)))
    return UNKNOWN if slips > 1 else Judged(not slips, _ordered(sorted(each, reverse=each[0] > each[-1])))


def _ordered(each: list[Rational]) -> str:
    return f"in order they are {', '.join(map(says, each))}"


def _least_of_all(told: Told) -> Judged:
    return judge_number(told["a"].number, min(told["h"].each))


def _most_of_all(told: Told) -> Judged:
    return judge_number(told["a"].number, max(told["h"].each))


def _average(told: Told) -> Judged:
    each = told["k"].each
    return judge_number(told["a"].number, Fraction(sum(each)) / len(each))


def _range(told: Told) -> Judged:
    each = told["k"].each
    return judge_number(told["a"].number, max(each) - min(each))


def _mode(told: Told) -> Judged:
    each = told["k"].each
    return judge_number(told["a"].number, mode(each)) if len(multimode(each)) == 1 else UNKNOWN


def _median(told: Told) -> Judged:
    return judge_number(told["a"].number, median(map(Fraction, told["k"].each)))


def _larger(told: Told) -> Judged:
    return judge_number(told["c"].number, max(told["a"].number, told["b"].number))


def _smaller(told: Told) -> Judged:
    return judge_number(told["c"].number, min(told["a"].number, told["b"].number))


ORDERS: Mapping[str, Callable[[Told], Judged]] = {
    "clock": _clock,
    "clock before": _clock_before,
    "next day": _next_day,
    "day before": _day_before,
    "next month": _next_month,
    "month before": _month_before,
    "month number": _month_number,
    "school days": _school_days,
    "all even": _all_even,
    "all odd": _all_odd,
    "steps": _steps,
    "step on": _step_on,
    "step back": _step_back,
    "even steps": _even_steps,
    "going up": _going_up,
    "going down": _going_down,
    "in order": _in_order,
    "least of all": _least_of_all,
    "most of all": _most_of_all,
    "minute hand": _minute_hand,
    "hour hand": _hour_hand,
    "average": _average,
    "range": _range,
    "mode": _mode,
    "median": _median,
    "larger": _larger,
    "smaller": _smaller,
    "clock same": _same_time,
}
"""The checks by the names that the phrases give them."""
