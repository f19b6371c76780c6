"""What the letters of a phrase must be where no number sentence says it: rounded, a digit in its place, odd, a multiple."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from math import isqrt

from ..model.known_facts import KnownShapes
from .amounts import difference, says
from .phrase_orders import ORDERS
from .phrase_values import Value
from .phrase_worth import UNKNOWN, UNLIKE, Judged, in_words, judge_number

Told = Mapping[str, Value]


def _rounded(told: Told) -> Judged:
    """``A`` rounded to the nearest ``R`` is ``B``."""
    number, place, answer = Fraction(told["a"].number), Fraction(told["r"].number), told["b"].number
    right = (number / place + Fraction(1, 2)).__floor__() * place
    return judge_number(answer, right, f"{says(number)} rounds to {says(right)}")


def _rounded_somehow(told: Told) -> Judged:
    """``A`` rounded to a step that nobody names is ``B``."""
    number, answer = Fraction(told["a"].number), told["b"].number
    steps = [10**power for power in range(1, 7) if answer % 10**power == 0]
    if number.denominator != 1 or told["a"].kind != told["b"].kind:
        return UNLIKE
    near = {(number / step + Fraction(1, 2)).__floor__() * step for step in steps}
    return Judged(answer in near, f"{says(answer)} is not the nearest of its kind to {says(number)}")


def _halfway(told: Told) -> Judged:
    """``A`` is halfway between ``B`` and ``C``."""
    if len({value.kind for value in told.values()}) > 1:
        return UNLIKE
    right = Fraction(told["b"].number + told["c"].number) / 2
    return judge_number(told["a"].number, right, f"{in_words(right, told['a'].kind)} is halfway")


def _nearer(told: Told) -> Judged:
    """``A`` is nearer to ``B`` than to ``C``."""
    near, far = (difference(told["a"].number, told[to].number) for to in "bc")
    so = f"it is {says(near)} from {says(told['b'].number)} and {says(far)} from {says(told['c'].number)}"
    return Judged(near < far, so)


def _most_of_digits(told: Told) -> Judged:
    """The biggest whole number of ``A`` digits is ``B``."""
    digits = told["a"].number
    return judge_number(told["b"].number, 10 ** int(digits) - 1) if digits in range(1, 10) else UNKNOWN


def _least_of_digits(told: Told) -> Judged:
    """The smallest whole number of ``A`` digits is ``B``."""
    digits = told["a"].number
    return judge_number(told["b"].number, 10 ** (int(digits) - 1)) if digits in range(2, 10) else UNKNOWN


def _written(told: Told) -> Judged:
    """``A`` is written ``B``: not a digit of it, and as nothing else, such as tens and ones."""
    one, other = told["a"], told["b"]
    if one.kind != other.kind or other.worked or other.noun or other.number < 10:
        return UNKNOWN
    return judge_number(other.number, one.number)


def _jump(told: Told) -> Judged:
    """A jump of ``A`` from ``B``, one way or the other, ends on ``C``."""
    start, size = told["b"].number, told["a"].number
    return Judged(told["c"].number in (start + size, start - size), f"it is {says(start + size)}")


def _ratio_shares(told: Told) -> Judged:
    """``A`` shared in the ratio ``B`` to ``C`` is ``D`` and ``E``."""
    parts = told["b"].number + told["c"].number
    if not parts or told["d"].kind != told["e"].kind or told["a"].kind != told["d"].kind:
        return UNKNOWN
    first, second = (Fraction(told["a"].number) * told[part].number / parts for part in "bc")
    kind = told["a"].kind
    so = f"it is {in_words(first, kind)} and {in_words(second, kind)}"
    return Judged({first, second} == {told["d"].number, told["e"].number}, so)


def _digit_place(told: Told) -> Judged:
    """The number ``A`` has the digit ``B`` in the place ``R``."""
    number, place = Fraction(told["a"].number), Fraction(told["r"].number)
    right = (abs(number) / place).__floor__() % 10
    return judge_number(told["b"].number, right, f"its digit there is {right}")


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
        return Judged(
            (told["c"].number, told["d"].number) == (times, left), f"it is {says(times)} with {says(left)} left"
        )
    return Judged(told["c"].number == times or told["c"].number * by == into, f"it is {says(Fraction(into) / by)}")


def _remainder(told: Told) -> Judged:
    """``A`` in groups of ``B`` leaves ``D``."""
    by = (told.get("s") or told["b"]).number
    if not by or told["a"].number.denominator != 1 or by.denominator != 1:
        return UNKNOWN
    return judge_number(told["d"].number, told["a"].number % by)


def _square(told: Told) -> Judged:
    number = told["a"].number
    if number.denominator != 1 or number < 0:
        return UNKNOWN
    return Judged(isqrt(int(number)) ** 2 == number, f"no whole number times itself is {says(number)}")


def _difference(told: Told) -> Judged:
    if len({value.kind for value in told.values()} - {"part"}) > 1:
        return UNKNOWN
    right = difference(told["a"].number, told["b"].number)
    return judge_number(difference(told["c"].number, 0), right)


def _next_odd(told: Told) -> Judged:
    return judge_number(told["b"].number, told["a"].number + (2 if told["a"].number % 2 else 1))


def _next_even(told: Told) -> Judged:
    return judge_number(told["b"].number, told["a"].number + (1 if told["a"].number % 2 else 2))


def _odd_between(told: Told) -> Judged:
    return _between(told, 1)


def _even_between(told: Told) -> Judged:
    return _between(told, 0)


def _between(told: Told, left: int) -> Judged:
    right = told["a"].number < told["c"].number < told["b"].number and told["c"].number % 2 == left
    return Judged(right, f"{says(told['c'].number)} is not one of those between")


def _digits(told: Told) -> Judged:
    number = told["a"].number
    return judge_number(told["b"].number, len(str(number))) if number.denominator == 1 and number >= 0 else UNKNOWN


def _divides(told: Told) -> Judged:
    by, number = (told.get("s") or told["a"]).number, told["b"].number
    return Judged(number % by == 0, f"{says(number)} is no multiple of {says(by)}") if by else UNKNOWN


def _roman(told: Told) -> Judged:
    return judge_number(told["a"].number, told["i"].number)


def _odd_sum(told: Told) -> Judged:
    return judge_number(
        (told["a"].number + told["b"].number) % 2, 1, f"it is {says(told['a'].number + told['b'].number)}"
    )


def _even_sum(told: Told) -> Judged:
    return judge_number(
        (told["a"].number + told["b"].number) % 2, 0, f"it is {says(told['a'].number + told['b'].number)}"
    )


def _next_multiple(told: Told) -> Judged:
    of = told["a"].number
    return judge_number(told["c"].number, (told["b"].number // of + 1) * of) if of else UNKNOWN


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
    return judge_number(told["a"].number, 180)


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
    **ORDERS,
    "rounded": _rounded,
    "rounded somehow": _rounded_somehow,
    "halfway": _halfway,
    "nearer": _nearer,
    "most of digits": _most_of_digits,
    "least of digits": _least_of_digits,
    "written": _written,
    "jump": _jump,
    "ratio shares": _ratio_shares,
    "digit place": _digit_place,
    "digit worth": _digit_worth,
    "two digits": _two_digits,
    "holds places": _holds_places,
    "goes into": _goes_into,
    "remainder": _remainder,
    "square": _square,
    "odd": _odd,
    "next odd": _next_odd,
    "next even": _next_even,
    "odd between": _odd_between,
    "even between": _even_between,
    "digits": _digits,
    "odd sum": _odd_sum,
    "even sum": _even_sum,
    "next multiple": _next_multiple,
    "multiple": _multiple,
    "divides": _divides,
    "roman": _roman,
    "never": _never,
    "area": _area,
    "angles of": _angles_of_triangle,
    "difference": _difference,
    "even": _even,
}
"""The checks by the names that the phrases give them."""


def judge_shape(told: Told, shapes: KnownShapes) -> Judged:
    """Whether the shape ``G`` has ``B`` of the part ``Z``; nobody can say where its name does not settle it."""
    name, part, said = told["g"].noun, shapes.by_part[told["z"].noun], told["b"].number
    right = shapes.by_name[name].get(part)
    return UNLIKE if right is None else Judged(said == right, f"it has {right}")
