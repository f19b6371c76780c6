"""Numbers, fractions and lists as a person writes and says them."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

_COUNTS = "no one two three four five six seven eight nine ten eleven twelve".split()
_PARTS = {
    2: ("half", "halves"), 3: ("third", "thirds"), 4: ("quarter", "quarters"), 5: ("fifth", "fifths"),
    6: ("sixth", "sixths"), 7: ("seventh", "sevenths"), 8: ("eighth", "eighths"), 9: ("ninth", "ninths"),
    10: ("tenth", "tenths"), 11: ("eleventh", "elevenths"), 12: ("twelfth", "twelfths"),
    100: ("hundredth", "hundredths"), 1000: ("thousandth", "thousandths"),
}  # fmt: skip


def listed(parts: Sequence[str], last: str = "and") -> str:
    """``a``, ``a and b``, ``a, b and c``."""
    return f" {last} ".join(filter(None, (", ".join(parts[:-1]), *parts[-1:])))


def capital(sentence: str) -> str:
    """The sentence with its first letter large, the rest as it is."""
    return sentence[:1].upper() + sentence[1:]


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
    """A proper fraction in words where English has them: ``half``, ``three quarters``; else ``7/16``."""
    over, under = fraction.numerator, fraction.denominator
    if under not in _PARTS or not 0 < over < min(under, len(_COUNTS)):
        return mixed(fraction)
    one, many = _PARTS[under]
    if under == 2:
        return one
    return f"{'an' if one[0] in 'aeiou' else 'a'} {one}" if over == 1 else f"{_COUNTS[over]} {many}"


def part_name(under: int, over: int = 2) -> str:
    """The name of equal parts, so many to the whole: ``quarters``, or ``quarter`` when there is one."""
    one, many = _PARTS.get(under, (f"1/{under}", f"parts of {under}"))
    return one if over == 1 else many


def number_word(count: int) -> str:
    """``two`` for 2, up to twelve; then figures."""
    return _COUNTS[count] if 0 <= count < len(_COUNTS) else f"{count:,}"


def counted(count: Fraction | int, things: str, one: str | None = None) -> str:
    """``3 shells``, ``1 shell``; just the number when the things have no name."""
    name = (one or (things[:-1] if things.endswith("s") else things)) if count == 1 else things
    return f"{written(count)} {name}".strip()


def owner(name: str) -> str:
    """Whose: ``Gull’s``, ``Cass’s``."""
    return f"{name}’s"


def plain(number: Fraction) -> int | str:
    """A number as plain data: a whole number, else ``over/under`` in lowest terms."""
    return number.numerator if number.denominator == 1 else f"{number.numerator}/{number.denominator}"


def alike(number: Fraction, *beside: Fraction) -> str:
    """Written as a decimal when a number beside it is not whole, else as wholes and a fraction."""
    return written(number, 3 if any(other.denominator > 1 for other in beside) else 0)
