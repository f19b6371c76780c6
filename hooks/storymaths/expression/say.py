"""Numbers and fractions as a person writes and says them."""

from __future__ import annotations

from fractions import Fraction

COUNTS = (
    "no one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen "
    "eighteen nineteen twenty"
).split()
PARTS = dict(
    enumerate(
        "half third quarter fifth sixth seventh eighth ninth tenth eleventh twelfth thirteenth fourteenth fifteenth "
        "sixteenth seventeenth eighteenth nineteenth twentieth".split(),
        start=2,
    )
) | {24: "twenty-fourth", 25: "twenty-fifth", 30: "thirtieth", 36: "thirty-sixth", 40: "fortieth", 48: "forty-eighth"}
PARTS |= {50: "fiftieth", 60: "sixtieth", 100: "hundredth", 1000: "thousandth"}
_WRITTEN_IN_WORDS = 12
"""Larger numbers, and finer parts that are no decimals, are written in figures."""


def ending_places(number: Fraction) -> int | None:
    """How many decimal places write it exactly; None when no number of them does."""
    below, twos, fives = number.denominator, 0, 0
    while below % 2 == 0:
        below, twos = below // 2, twos + 1
    while below % 5 == 0:
        below, fives = below // 5, fives + 1
    return max(twos, fives) if below == 1 else None


def written(number: Fraction | int, places: int = 0) -> str:
    """``1,200``, ``−3``, ``2.5`` where so many decimal places are allowed and enough, else ``1 1/2``."""
    value = Fraction(number)
    sign, size = ("−" if value < 0 else ""), abs(value)
    if size.denominator == 1:
        return f"{sign}{size.numerator:,}"
    needed = ending_places(size)
    if needed is not None and needed <= places:
        whole, rest = divmod(size.numerator * 10**needed // size.denominator, 10**needed)
        return f"{sign}{whole:,}.{rest:0{needed}}"
    return sign + mixed(size)


def mixed(number: Fraction) -> str:
    """Wholes and a fraction in lowest terms: ``1 3/8``, ``3/4``, ``2``. Not below nought."""
    whole, rest = divmod(number.numerator, number.denominator)
    if not rest:
        return f"{whole:,}"
    return f"{whole:,} {rest}/{number.denominator}" if whole else f"{rest}/{number.denominator}"


def spoken(fraction: Fraction) -> str:
    """A proper fraction in words where it is written so: ``half``, ``three quarters``; else ``7/16``."""
    over, under = fraction.numerator, fraction.denominator
    names = _written_parts(under)
    if names is None or not 0 < over < min(under, _WRITTEN_IN_WORDS + 1):
        return mixed(fraction)
    if under == 2:
        return names[0]
    return f"{'an' if names[0][0] in 'aeiou' else 'a'} {names[0]}" if over == 1 else f"{COUNTS[over]} {names[1]}"


def part_names(under: int) -> tuple[str, str] | None:
    """The name of one equal part, so many to the whole, and of several: ``quarter``, ``quarters``; None for 17/23."""
    one = PARTS.get(under)
    return None if one is None else (one, "halves" if under == 2 else f"{one}s")


def _written_parts(under: int) -> tuple[str, str] | None:
    return part_names(under) if under <= _WRITTEN_IN_WORDS or under in (100, 1000) else None


def part_name(under: int, over: int = 2) -> str:
    """The name of equal parts as it is written: ``quarters``, or ``quarter`` when there is one."""
    one, many = _written_parts(under) or (f"1/{under}", f"parts of {under}")
    return one if over == 1 else many


def number_word(count: int, up_to: int = _WRITTEN_IN_WORDS) -> str:
    """``two`` for 2, up to twelve or, in speech, twenty; then figures."""
    return COUNTS[count] if 0 <= count <= up_to else f"{count:,}"


def plain(number: Fraction) -> int | str:
    """A number as plain data: a whole number, else ``over/under`` in lowest terms."""
    return number.numerator if number.denominator == 1 else f"{number.numerator}/{number.denominator}"


def alike(number: Fraction, *beside: Fraction) -> str:
    """Written as a decimal when a number beside it is not whole, else as wholes and a fraction."""
    return written(number, 3 if any(other.denominator > 1 for other in beside) else 0)
