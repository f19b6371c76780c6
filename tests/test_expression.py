"""The one reader of arithmetic: numbers, tokens with their places, trees, and numbers said again."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from storymaths.expression.gapped import NotASentence, read_gapped, sentences_of
from storymaths.expression.grammar import Reader, Unreadable
from storymaths.expression.number import WrittenNumber, exact, read_amount, read_number, read_stretch
from storymaths.expression.say import written
from storymaths.expression.signs import COMPARED, GAPPED, PROSE, RULES, Dialect
from storymaths.expression.tokens import read_tokens
from storymaths.expression.tree import fill_gap, operations_in, quantity_of, units_in
from storymaths.model.quantity import Quantity, UnlikeQuantities

ALL = (PROSE, GAPPED, COMPARED, RULES)


def worth(text: str) -> Quantity:
    return quantity_of(Reader(tuple(read_tokens(text, PROSE))).sum())


@given(st.fractions(-10_000, 10_000, max_denominator=100), st.integers(0, 3))
def test_a_number_that_is_written_is_read_again(number: Fraction, places: int) -> None:
    read = read_number(written(number, places))
    assert read is not None
    assert read.value == number


@pytest.mark.parametrize(
    ("text", "value", "under", "places"),
    [
        ("1,200", Fraction(1200), 1, 0),
        ("2/4", Fraction(1, 2), 4, 0),
        ("1 6/8", Fraction(7, 4), 8, 0),
        ("−3", Fraction(-3), 1, 0),
        ("2.50", Fraction(5, 2), 1, 2),
        ("45%", Fraction(9, 20), 1, 0),
        ("1½", Fraction(3, 2), 1, 0),
    ],
)
def test_a_number_keeps_the_way_it_was_written(text: str, value: Fraction, under: int, places: int) -> None:
    number = read_number(text)
    assert number == WrittenNumber(text, value)
    assert (number.under, number.places) == (under, places)


@pytest.mark.parametrize("text", ["", "one", "1,2,3", "1.2.3", "3 4", "2/", "1e3", "nan"])
def test_what_is_no_number_is_not_read(text: str) -> None:
    assert read_number(text) is None


def test_nought_under_a_line_is_told_apart() -> None:
    for read in (exact, read_number, read_amount):
        with pytest.raises(ZeroDivisionError):
            read("3/0")


@pytest.mark.parametrize(
    ("text", "number", "unit", "count"),
    [
        ("2.5 kg", Fraction(5, 2), "kg", None),
        ("£1.50", Fraction(3, 2), "£", None),
        ("3 × 20 cm", Fraction(20), "cm", 3),
        ("−4 °C", Fraction(-4), "°C", None),
        ("7 shells", Fraction(7), "shells", None),
    ],
)  # fmt: skip
def test_amounts(text: str, number: Fraction, unit: str, count: int | None) -> None:
    amount = read_amount(text)
    assert amount is not None
    assert (amount.number.value, amount.unit, amount.count) == (number, unit, count)


@pytest.mark.parametrize("text", ["0-20", "0 to 20", "0–20", "0 .. 20"])
def test_stretches(text: str) -> None:
    assert read_stretch(text) == (0, 20)
    assert read_stretch("−5 to −1") == (-5, -1)
    assert read_stretch("twenty") is None


@given(st.text(alphabet="12,./ ½−+×÷=≠<>_?□()kgcm£of abc’-*\"'", max_size=40), st.sampled_from(ALL))
def test_tokens_know_their_places_and_leave_nothing_out(text: str, dialect: Dialect) -> None:
    end = 0
    for token in read_tokens(text, dialect):
        assert not text[end : token.start].strip()
        assert token.end > token.start
        if token.kind in ("number", "word", "other"):
            assert token.text == text[token.start : token.end]
        end = token.end
    assert not text[end:].strip()


def test_how_each_kind_of_text_types_a_sign() -> None:
    typed = "6 - 2 * 3"
    assert [token.kind for token in read_tokens(typed, PROSE)] == ["number", "other", "number", "other", "number"]
    for dialect in (GAPPED, COMPARED, RULES):
        assert [token.text for token in read_tokens(typed, dialect)] == ["6", "−", "2", "×", "3"]
    assert [token.text for token in read_tokens("a <= 5,000", RULES)] == ["a", "≤", "5", ",", "000"]
    assert [token.text for token in read_tokens("1/2 of 5,000", PROSE)] == ["1/2", "of", "5,000"]


def test_a_word_for_a_sign_is_a_row_of_a_table() -> None:
    spoken = Dialect({**PROSE.signs, "lots of": "×", "plus": "+"})
    tree = Reader(tuple(read_tokens("3 lots of 5 plus 2", spoken))).sum()
    assert quantity_of(tree) == Quantity(17)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("2 + 3 × 4", Quantity(14)),
        ("10 − 3 − 2", Quantity(5)),
        ("−(2 + 3)", Quantity(-5)),
        ("−(2 kg + 3 kg)", Quantity(-5, "mass")),
        ("1/2 of 1 kg", Quantity(Fraction(1, 2), "mass")),
        ("£2 + 50p", Quantity(Fraction(5, 2), "money")),
    ],
)
def test_trees_come_to_exact_amounts(text: str, value: Quantity) -> None:
    assert worth(text) == value


def test_what_cannot_be_worked_out_says_why() -> None:
    with pytest.raises(UnlikeQuantities):
        worth("2 m + 3 kg")
    with pytest.raises(ZeroDivisionError):
        worth("1 ÷ 0")
    for text, amiss in (("2 +", "no-value"), ("(2 + 3", "bracket"), ("3/0", "broken"), ("(" * 99, "deep")):
        with pytest.raises(Unreadable) as caught:
            worth(text)
        assert caught.value.amiss == amiss


def test_a_gap_is_filled_in_its_unit() -> None:
    number = Reader(tuple(read_tokens("3", PROSE))).sum()
    side = Reader(tuple(read_tokens("___ cm + 1 m", GAPPED))).sum()
    filled = fill_gap(side, number)  # type: ignore[arg-type]
    assert quantity_of(filled) == Quantity(Fraction(103, 100), "length")
    assert units_in(filled) == ("cm", "m")
    assert operations_in(filled) == 1


@pytest.mark.parametrize(
    "text", ["7 + = 3", "7 + 3", "(7 = 3", "7 + gull = 3", "99999999999 = 1", "3/0 = 1", "7 8 = 3"]
)
def test_a_sentence_that_cannot_be_read_says_why_in_words(text: str) -> None:
    with pytest.raises(NotASentence, match=r"^[a-z\"0-9]"):
        next(sentences_of(read_gapped(text, {}), ()))
