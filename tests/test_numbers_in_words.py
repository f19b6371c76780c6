"""Numbers in words: said by rules of English from memory, and read again; and what is no number is not read as one."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from storymaths.expression.number_words import Words, read_words

BELOW_TWENTY = (
    "nought one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen seventeen "
    "eighteen nineteen"
).split()
TENS = "_ _ twenty thirty forty fifty sixty seventy eighty ninety".split()


def in_words(number: int) -> str:
    for scale, word in ((1_000_000, "million"), (1_000, "thousand"), (100, "hundred")):
        if number >= scale:
            count, rest = divmod(number, scale)
            said = f"{in_words(count)} {word}"
            return f"{said} {'and ' if rest < 100 else ''}{in_words(rest)}" if rest else said
    if number < 20:
        return BELOW_TWENTY[number]
    return TENS[number // 10] + (f"-{BELOW_TWENTY[number % 10]}" if number % 10 else "")


@given(st.integers(0, 9_999_999))
def test_a_whole_number_is_read_as_it_is_said(number: int) -> None:
    words = in_words(number).split()
    assert read_words(words) == Words(number, len(words))
    assert read_words([*words, "bricks"]) == Words(number, len(words))


@pytest.mark.parametrize(
    ("words", "value", "length"),
    [
        ("half", Fraction(1, 2), 1),
        ("a quarter", Fraction(1, 4), 2),
        ("two thirds", Fraction(2, 3), 2),
        ("two-thirds", Fraction(2, 3), 1),
        ("three and a half", Fraction(7, 2), 4),
        ("two and three quarters", Fraction(11, 4), 4),
        ("twelve and a third of nine", 12, 1),
        ("a hundred and five", 105, 4),
        ("twenty three", 23, 2),
        ("six and four", 6, 1),
        ("zero", 0, 1),
    ],
)
def test_fractions_and_other_ways_of_saying(words: str, value: Fraction | int, length: int) -> None:
    assert read_words(words.split()) == Words(value, length)


@pytest.mark.parametrize("words", ["no", "a", "hundred", "twenty-third", "one-way", "third", "an hour", "seconds", ""])
def test_what_is_no_number_is_not_read(words: str) -> None:
    assert read_words(words.split()) is None
