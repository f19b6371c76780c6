"""Numbers written in words: ``twenty-three``, ``a hundred and five``, ``two thirds``, ``three and a half``."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from typing import NamedTuple

from .number import Rational, whole_if_can
from .say import COUNTS, PARTS

ONES: Mapping[str, int] = {**{word: count for count, word in enumerate(COUNTS) if count}, "zero": 0, "nought": 0}
"""Words for whole numbers up to twenty."""
TENS: Mapping[str, int] = {
    word: 10 * count
    for count, word in enumerate("ten twenty thirty forty fifty sixty seventy eighty ninety".split(), start=1)
}
SCALES: Mapping[str, int] = {"hundred": 100, "thousand": 1000, "million": 1_000_000}
PART_OF: Mapping[str, Fraction] = {
    word: Fraction(1, under) for under, part in PARTS.items() for word in (part, "halves" if under == 2 else f"{part}s")
}
"""Words for one or more equal parts of a whole: ``third``, ``thirds``."""
SO_MANY_OF: Mapping[str, Rational] = {
    **PART_OF,
    **{word: size for one, size in {**SCALES, "dozen": 12, "one": 1, "whole": 1}.items() for word in (one, f"{one}s")},
    **{f"{word}s": count for word, count in ONES.items() if count and not word.endswith("x")},
    **{f"{word.removesuffix('y')}ies": count for word, count in TENS.items() if word.endswith("y")},
    "ten": 10,
    "sixes": 6,
}
"""Words that stand after a number and are counted by it: 4 ``tens``, 3 ``fives``, 2 ``thirds``, 5 ``hundred``."""
_AN = ("a", "an")
BEGINNINGS = frozenset((*ONES, *TENS, *_AN, "half"))
"""What a number in words begins with, up to its first hyphen."""


class Words(NamedTuple):
    """A number in words: what it is worth, and how many words it takes."""

    value: Rational
    length: int


def read_words(words: Sequence[str]) -> Words | None:
    """The number that some words, in small letters, begin with; None where they begin with none."""
    atoms, ends = list[str](), list[int]()
    for index, word in enumerate(words):
        for atom in word.split("-"):
            atoms.append(atom)
            ends.append(0)
        ends[-1] = index + 1
    read = _number(atoms)
    while read and not ends[read.length - 1]:  # it may not stop inside a word
        read = _number(atoms[: read.length - 1])
    return Words(whole_if_can(read.value), ends[read.length - 1]) if read else None


def _number(atoms: Sequence[str]) -> Words | None:
    whole = _whole(atoms)
    if whole is None:
        return _one_part(atoms)
    size = PART_OF.get(atoms[whole.length]) if whole.length < len(atoms) else None
    if size is not None and whole.value < TENS["twenty"]:  # the twenty-third is a day
        return Words(whole.value * size, whole.length + 1)
    if atoms[whole.length : whole.length + 1] == ["and"]:
        part = _one_part(atoms[whole.length + 1 :]) or _parts(atoms[whole.length + 1 :])
        if part and atoms[whole.length + 1 + part.length :][:1] != ["of"]:  # half of twelve and a third of nine
            return Words(whole.value + part.value, whole.length + 1 + part.length)
    return whole


def _one_part(atoms: Sequence[str]) -> Words | None:
    """``half``, ``a quarter``, and ``a dozen``."""
    if atoms[:1] == ["half"]:
        return Words(Fraction(1, 2), 1)
    if atoms[:2] == ["a", "dozen"]:
        return Words(12, 2)
    if len(atoms) > 1 and atoms[0] in _AN and (size := PART_OF.get(atoms[1])):
        return Words(size, 2)
    return None


def _parts(atoms: Sequence[str]) -> Words | None:
    """``three quarters``."""
    count = ONES.get(atoms[0]) if len(atoms) > 1 else None
    size = PART_OF.get(atoms[1]) if count else None
    return Words(count * size, 2) if count and size else None


def _whole(atoms: Sequence[str]) -> Words | None:
    """A whole number: groups below a thousand, each with its scale."""
    total, at, last = 0, 0, 1_000_000_000
    while group := _below_a_thousand(atoms[at:]):
        value, after = group.value, at + group.length
        scale = SCALES.get(atoms[after], 1) if after < len(atoms) else 1
        scale = scale if 100 < scale < last else 1
        total, at, last = total + int(value) * scale, after + (scale > 1), scale
        skips = atoms[at : at + 1] == ["and"]
        further = _below_a_thousand(atoms[at + skips :]) if scale > 1 else None
        if further is None or (further.value >= 100 and skips):
            break
        at += skips
    return Words(total, at) if at else None


def _below_a_thousand(atoms: Sequence[str]) -> Words | None:
    below = _below_a_hundred(atoms)
    if below is None:
        scaled = len(atoms) > 1 and atoms[0] in _AN and atoms[1] in SCALES
        below = Words(1, 1) if scaled else None
    if below is None or atoms[below.length : below.length + 1] != ["hundred"] or not 0 < below.value < 100:
        return below
    at = below.length + 1
    skips = atoms[at : at + 1] == ["and"]
    rest = _below_a_hundred(atoms[at + skips :])
    hundreds = int(below.value) * 100
    return Words(hundreds + rest.value, at + skips + rest.length) if rest and rest.value else Words(hundreds, at)


def _below_a_hundred(atoms: Sequence[str]) -> Words | None:
    if not atoms:
        return None
    tens = TENS.get(atoms[0])
    ones = ONES.get(atoms[1]) if tens and tens > 10 and len(atoms) > 1 else None
    if tens and ones and ones < 10:
        return Words(tens + ones, 2)
    value = ONES.get(atoms[0]) if tens is None else tens
    return None if value is None else Words(value, 1)
