"""Number sentences: found where they are, passed over where they are not, and worked out exactly."""

from __future__ import annotations

import operator
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from storymaths.parse.number_sentence import exact, find_number_sentences, find_unread, is_true, value_of
from yaml_files import read_yaml

WRITTEN = read_yaml(Path(__file__).parent / "number_sentences.yaml")


def truths(text: str) -> list[tuple[str, bool | None]]:
    return [(sentence.text, is_true(sentence)) for sentence in find_number_sentences(text)]


@pytest.mark.parametrize(
    "text",
    [
        "4 + 5 = 9", "9 = 4 + 5", "6 + 1 = 4 + 3", "9 ≠ 4 + 4", "3 < 4", "4 > 3", "9 = 4 + 5 = 10 − 1",
        "3 × (2 + 4) = 18", "3 + 2 × 4 = 11", "20 ÷ 4 ÷ 5 = 1", "10 − 3 − 2 = 5", "5 − 7 = −2",
        "1/2 of 6 = 3", "½ of 12 = 6", "1½ + 1/2 = 2", "1 1/2 + 1/2 = 2", "3/4 = 6/8", "2.5 + 0.5 = 3", "0.1 + 0.2 = 0.3",
        "£2 + 50p = £2.50", "1 kg = 1,000 g", "1 m = 100 cm", "450 g = 250 g + 200 g", "2 hours = 120 minutes", "1,200 + 1 = 1,201",
        "10 ÷ 3 = 3 remainder 1", "21 ÷ 5 = 4 r 1", "21 ÷ 5 = 4 with 1 left over", "6 kg ÷ 2 kg = 3",
    ],
)  # fmt: skip
def test_true_sentences(text: str) -> None:
    assert [truth for _, truth in truths(text)] == [True]


@pytest.mark.parametrize(
    "text",
    [
        "4 + 5 = 8", "9 = 4 + 4", "6 + 1 = 4 + 4", "9 ≠ 4 + 5", "4 < 3", "9 = 4 + 5 = 10 − 2", "3 × (2 + 4) = 10", "3 + 2 × 4 = 20",
        "0.1 + 0.2 = 0.31", "1 kg = 100 g", "£2 + 50p = £2.05", "10 ÷ 3 = 3 remainder 2", "1/2 of 7 = 3",
    ],
)  # fmt: skip
def test_untrue_sentences(text: str) -> None:
    assert [truth for _, truth in truths(text)] == [False]


@pytest.mark.parametrize(
    "text",
    [
        "___ + 4 = 9", "4 + ___ = 9", "9 = 6 + ___", "3 + □ = 7", "2 + 3 = ?", "otter + 3 = 7 + 1", "6 + 1 = mole + 3",
        "the otter is 6 + 1", "pages 4 to 7", "2AS-3", "A = 4", "x < y",
    ],
)  # fmt: skip
def test_what_cannot_be_worked_out_is_passed_over(text: str) -> None:
    assert truths(text) == []


@pytest.mark.parametrize("text", ["3 kg = 3", "2 m + 3 kg = 5", "5 ÷ 0 ≠ 0", "1 month = 30 days"])
def test_what_has_no_answer_is_neither_true_nor_untrue(text: str) -> None:
    assert [truth for _, truth in truths(text)] == [None]


@pytest.mark.parametrize("text", WRITTEN["holds"])
def test_what_people_write_is_read_whole_and_holds(text: str) -> None:
    assert {truth for _, truth in truths(text)} == {True}


@pytest.mark.parametrize("text", WRITTEN["untrue"])
def test_what_people_write_is_read_whole_and_does_not_hold(text: str) -> None:
    assert False in [truth for _, truth in truths(text)]


@pytest.mark.parametrize("text", WRITTEN["alone"])
def test_what_cannot_be_read_whole_is_left_alone(text: str) -> None:
    assert {truth for _, truth in truths(text)} <= {None}


@pytest.mark.parametrize(
    ("text", "left", "why"),
    [
        ("So 9 = 5 + ___.", "9 = 5 + ___", "gap"),
        ("Quarter to 4 = 3:45 and 2 = 2", "4 = 3:45 and 2", "time"),
        ("Ram + 3 = 9", "Ram + 3 = 9", "numbers"),
        ("On the plan 1 cm = 10 m.", "1 cm = 10 m", "scale"),
        ("Is 3 + 4 = 8?", "3 + 4 = 8", "asked"),
        ("3 hens + 4 ducks = 8", "3 hens + 4 ducks = 8", "unlike"),
        ("One brick is 50 g.", "One brick is 50 g", "more things"),
    ],
)
def test_what_is_left_alone_is_listed_with_its_reason(text: str, left: str, why: str) -> None:
    (unread,) = find_unread(text)
    assert (unread.text, text[unread.start]) == (left, left[0])
    assert why in unread.why


@pytest.mark.parametrize(
    "text", ["x < y", "The sign = means the same as.", "What is it?", "3 + 4 = 7", "Two is company."]
)
def test_nothing_is_listed_where_no_numbers_are_related(text: str) -> None:
    assert find_unread(text) == ()


def test_a_sentence_is_given_back_in_one_line() -> None:
    (sentence,) = find_number_sentences("since 9 + 5 =\n6 + 4 + 3")
    assert (sentence.text, sentence.start) == ("9 + 5 = 6 + 4 + 3", 6)


@pytest.mark.parametrize("parted", ["5 = 4 +\n\n1 + 1 = 2", "5 = 4 +\u2028\n1 + 1 = 2", "It is 5. 1 + 1 = 2"])
def test_a_sum_does_not_run_over_the_end_of_a_paragraph_or_sentence(parted: str) -> None:
    assert truths(parted) == [("1 + 1 = 2", True)]


def test_several_in_a_line_and_the_words_between() -> None:
    assert truths("So 4 + 5 = 9, and 3 + 6 = 8. Is 2 + 2 = 4?") == [
        ("4 + 5 = 9", True),
        ("3 + 6 = 8", False),
        ("2 + 2 = 4", True),
    ]


def test_a_mark_of_a_mistake_is_seen() -> None:
    (sentence,) = find_number_sentences("Badger wrote [4 + 5 = 8]{wrong} on the slate.")
    assert sentence.marked_wrong
    assert is_true(sentence) is False


numbers = st.integers(0, 200)
signs = st.sampled_from("+−×÷")
WORK = {"+": operator.add, "−": operator.sub, "×": operator.mul, "÷": operator.truediv}


@given(st.lists(st.tuples(signs, numbers), min_size=1, max_size=4), numbers)
def test_values_agree_with_pythons_own_arithmetic(parts: list[tuple[str, int]], first: int) -> None:
    text = str(first) + "".join(f" {sign} {number}" for sign, number in parts)
    python = f"Fraction({first})" + "".join(
        f" {dict(zip('+−×÷', '+-*/', strict=True))[sign]} Fraction({number})" for sign, number in parts
    )
    try:
        expected = eval(python, {"Fraction": Fraction})
    except ZeroDivisionError:
        with pytest.raises(ZeroDivisionError):
            value_of(text)
        return
    assert value_of(text).amount == expected


@given(st.fractions(min_value=0, max_value=100, max_denominator=99))
def test_written_fractions_are_read_exactly(fraction: Fraction) -> None:
    assert exact(f"{fraction.numerator}/{fraction.denominator}") == fraction


@pytest.mark.parametrize(
    "text",
    [
        "(" * 9_000 + "1 = 1",
        "1, " * 6_000 + "1 and 1 is 1",
        "1 = " + "−" * 9_000 + "1",
        "3 tens, " * 2_000 + "1 = 1",
        "(" * 328 + "1" + ")" * 328 + " = 1",
        "1 + " * 3_000 + "1 = 1",
        "1" + " + (1" * 900 + ")" * 900 + " = 2",
    ],
)
def test_no_length_brings_it_down(text: str) -> None:
    assert False not in [truth for _, truth in truths(text)]


@given(st.text(alphabet="0123456789 +−×÷=≠<>()£pkgm½/.,_[]{}wrong-:x|%²? isand", max_size=60))
def test_no_text_brings_it_down(text: str) -> None:
    for sentence in find_number_sentences(text):
        assert is_true(sentence) in (True, False, None)
