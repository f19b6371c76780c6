"""What the letters of a phrase must be where no number sentence says it: rounded, next in an order, on a clock."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from fractions import Fraction
from itertools import pairwise
from math import isqrt
from statistics import median, mode, multimode

from ..expression.number import Rational
from ..model.known_facts import KnownShapes
from .amounts import says
from .clock import are_alike
from .phrase_values import Value
from .phrase_worth import UNLIKE, Judged

Told = Mapping[str, Value]
UNKNOWN = Judged(None)


def _judge(told: Rational, right: Rational, so: str = "") -> Judged:
    return Judged(told == right, so or f"it is {says(right)}")


def _rounded(told: Told) -> Judged:
    """``A`` rounded to the nearest ``R`` is ``B``."""
    number, place, answer = Fraction(told["a"].number), Fraction(told["r"].number), told["b"].number
    right = (number / place + Fraction(1, 2)).__floor__() * place
    return _judge(answer, right, f"{says(number)} rounds to {says(right)}")


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
    from .phrase_slots import DAYS, MONTHS

    names = DAYS if around == 7 else MONTHS
    return Judged(told[other].number == right, f"it is {names[int(right) - 1].capitalize()}")


def _month_number(told: Told) -> Judged:
    from .phrase_slots import MONTHS

    right = told["m"].number
    return Judged(told["o"].number == right, f"{MONTHS[int(right) - 1].capitalize()} is month {right}")


def _digit_place(told: Told) -> Judged:
    """The number ``A`` has the digit ``B`` in the place ``R``."""
    number, place = Fraction(told["a"].number), Fraction(told["r"].number)
    right = (abs(number) / place).__floor__() % 10
    return _judge(told["b"].number, right, f"its digit there is {right}")


def _two_digits(told: Told) -> Judged:
    first = _digit_place(told)
    return _digit_place({"a": told["a"], "b": told["c"], "r": told["q"]}) if first.holds else first


def _digit_worth(told: Told) -> Judged:
    """In ``A`` the digit ``B`` is worth ``C``."""
    number, digit, worth = Fraction(told["a"].number), told["b"].number, told["c"].number
    if number.denominator != 1 or not 0 < digit < 10:
        return UNKNOWN
    worths = [int(each) * 10**place for place, each in enumerate(reversed(str(number))) if int(each) == digit]
    if not worths:
        return Judged(False, f"there is no {digit} in {says(number)}")
    return Judged(worth in worths, f"it is worth {says(max(worths))}")


def _holds_places(told: Told) -> Judged:
    """The number ``A`` has ``B`` of the place ``R``: as its digit, or in all."""
    number, place = Fraction(told["a"].number), Fraction(told["r"].number)
    have = (number / place).__floor__()
    return Judged(told["b"].number in (have, have % 10), f"it has {have % 10}")


def _goes_into(told: Told) -> Judged:
    """``A`` goes into ``B`` ``C`` times, with ``D`` left where that is told."""
    size = told.get("a") or told.get("s")
    into, by = told["b"].number, size.number if size else 0
    if not by or told["c"].worked:
        return UNLIKE
    times, left = divmod(into, by)
    if "d" in told:
        return Judged((told["c"].number, told["d"].number) == (times, left), f"it is {says(times)} with {says(left)} left")
    return Judged(told["c"].number == times or told["c"].number * by == into, f"it is {says(Fraction(into) / by)}")


def _remainder(told: Told) -> Judged:
    """``A`` in groups of ``B`` leaves ``D``."""
    by = told["b"].number
    if not by or told["a"].number.denominator != 1 or by.denominator != 1:
        return UNKNOWN
    return _judge(told["d"].number, told["a"].number % by)


def _square(told: Told) -> Judged:
    number = told["a"].number
    if number.denominator != 1 or number < 0:
        return UNKNOWN
    return Judged(isqrt(int(number)) ** 2 == number, f"no whole number times itself is {says(number)}")


def _average(told: Told) -> Judged:
    each = told["k"].each
    return _judge(told["a"].number, Fraction(sum(each)) / len(each))


def _range(told: Told) -> Judged:
    each = told["k"].each
    return _judge(told["a"].number, max(each) - min(each))


def _mode(told: Told) -> Judged:
    each = told["k"].each
    return _judge(told["a"].number, mode(each)) if len(multimode(each)) == 1 else UNKNOWN


def _median(told: Told) -> Judged:
    return _judge(told["a"].number, median(map(Fraction, told["k"].each)))


def _difference(told: Told) -> Judged:
    if len({value.kind for value in told.values()} - {"part"}) > 1:
        return UNKNOWN
    right = abs(told["a"].number - told["b"].number)
    return Judged(abs(told["c"].number) == right, f"it is {says(right)}")


def _larger(told: Told) -> Judged:
    return _judge(told["c"].number, max(told["a"].number, told["b"].number))


def _smaller(told: Told) -> Judged:
    return _judge(told["c"].number, min(told["a"].number, told["b"].number))


def _same_time(told: Told) -> Judged:
    return _clock_apart({"t": told["t"], "u": told["u"]}, 1)


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
    wrong = [(one, other) for one, other in pairwise(each) if abs(other - one) != size]
    if not wrong or len(wrong) == len(each) - 1:  # steps of another size altogether are no slip
        return Judged(None if wrong else True)
    return Judged(False, f"the step from {says(wrong[0][0])} to {says(wrong[0][1])} is not {says(size)}")


def _even_steps(told: Told) -> Judged:
    each = told["h"].each
    steps = [abs(other - one) for one, other in pairwise(each)]
    size, times = Counter(steps).most_common(1)[0]
    return _step(each, size) if times * 2 > len(steps) or times == len(steps) - 1 else UNKNOWN


def _going_up(told: Told) -> Judged:
    each = told["h"].each
    return Judged(all(a < b for a, b in pairwise(each)), "they are not in that order")


def _going_down(told: Told) -> Judged:
    each = told["h"].each
    return Judged(all(a > b for a, b in pairwise(each)), "they are not in that order")


def _least_of_all(told: Told) -> Judged:
    return Judged(told["a"].number == min(told["h"].each), "another is less")


def _most_of_all(told: Told) -> Judged:
    return Judged(told["a"].number == max(told["h"].each), "another is more")


def _minute_hand(told: Told) -> Judged:
    minutes = int(told["t"].number) % 60
    return _judge(told["a"].number, minutes // 5 or 12) if minutes % 5 == 0 else UNKNOWN


def _hour_hand(told: Told) -> Judged:
    hours, minutes = divmod(int(told["t"].number), 60)
    return UNKNOWN if minutes else _judge(told["a"].number, hours % 12 or 12)


def _next_odd(told: Told) -> Judged:
    return _judge(told["b"].number, told["a"].number + (2 if told["a"].number % 2 else 1))


def _next_even(told: Told) -> Judged:
    return _judge(told["b"].number, told["a"].number + (1 if told["a"].number % 2 else 2))


def _odd_between(told: Told) -> Judged:
    return _between(told, 1)


def _even_between(told: Told) -> Judged:
    return _between(told, 0)


def _between(told: Told, left: int) -> Judged:
    right = told["a"].number < told["c"].number < told["b"].number and told["c"].number % 2 == left
    return Judged(right, f"{says(told['c'].number)} is not one of those between")


def _digits(told: Told) -> Judged:
    number = told["a"].number
    return _judge(told["b"].number, len(str(number))) if number.denominator == 1 and number >= 0 else UNKNOWN


def _divides(told: Told) -> Judged:
    by, number = told["a"].number, told["b"].number
    return Judged(number % by == 0, f"{says(number)} is no multiple of {says(by)}") if by else UNKNOWN


def _roman(told: Told) -> Judged:
    return _judge(told["a"].number, told["i"].number)


def _odd_sum(told: Told) -> Judged:
    return _judge((told["a"].number + told["b"].number) % 2, 1, f"it is {says(told['a'].number + told['b'].number)}")


def _even_sum(told: Told) -> Judged:
    return _judge((told["a"].number + told["b"].number) % 2, 0, f"it is {says(told['a'].number + told['b'].number)}")


def _next_multiple(told: Told) -> Judged:
    of = told["a"].number
    return _judge(told["c"].number, (told["b"].number // of + 1) * of) if of else UNKNOWN


def _multiple(told: Told) -> Judged:
    return _divides({"a": told["b"], "b": told["a"]})


def _never(_: Told) -> Judged:
    return Judged(False, "that is never so")


def _area(told: Told) -> Judged:
    one, other, area = told["a"], told["b"], told["c"]
    units = (Fraction(1, 1000), Fraction(1, 100), Fraction(1)) if one.kind == other.kind == "length" else (Fraction(1),)
    right = [Fraction(one.number) * other.number / unit**2 for unit in units]
    return Judged(area.number in right, f"it is {says(min(right, key=lambda each: abs(each - area.number)))}")


def _angles_of_triangle(told: Told) -> Judged:
    return _judge(told["a"].number, 180)


def _school_days(told: Told) -> Judged:
    days = told["a"].number / (86400 if told["a"].kind == "time" else 1)
    return _judge(days, (told["v"].number - told["w"].number) % 7 + 1)


def _odd(told: Told) -> Judged:
    return _parity(told, 1)


def _even(told: Told) -> Judged:
    return _parity(told, 0)


def _parity(told: Told, left: int) -> Judged:
    number = told["a"].number
    if number.denominator != 1 or told["a"].kind not in ("", "size"):
        return UNKNOWN
    return Judged(number % 2 == left, f"{says(number)} is {'odd' if number % 2 else 'even'}")


CHECKS: Mapping[str, Callable[[Told], Judged]] = {
    "rounded": _rounded, "clock": _clock, "clock before": _clock_before, "next day": _next_day, "day before": _day_before,
    "next month": _next_month, "month before": _month_before, "month number": _month_number, "digit place": _digit_place,
    "digit worth": _digit_worth, "two digits": _two_digits, "holds places": _holds_places, "goes into": _goes_into, "remainder": _remainder, "square": _square,
    "odd": _odd, "next odd": _next_odd, "next even": _next_even, "odd between": _odd_between, "even between": _even_between,
    "digits": _digits, "odd sum": _odd_sum, "even sum": _even_sum, "next multiple": _next_multiple, "multiple": _multiple,
    "divides": _divides, "roman": _roman,
    "never": _never, "area": _area, "angles of": _angles_of_triangle, "school days": _school_days,
    "all even": _all_even, "all odd": _all_odd, "steps": _steps, "even steps": _even_steps, "going up": _going_up,
    "going down": _going_down, "least of all": _least_of_all, "most of all": _most_of_all, "minute hand": _minute_hand, "hour hand": _hour_hand,
    "average": _average, "range": _range, "mode": _mode, "median": _median, "larger": _larger, "smaller": _smaller, "difference": _difference, "clock same": _same_time,
    "even": _even,
}  # fmt: skip


def judge_shape(told: Told, shapes: KnownShapes) -> Judged:
    """Whether the shape ``G`` has ``B`` of the part ``Z``; nobody can say where its name does not settle it."""
    name, part, said = told["g"].noun, shapes.by_part[told["z"].noun], told["b"].number
    right = shapes.by_name[name].get(part)
    return UNKNOWN if right is None else Judged(said == right, f"it has {right}")
