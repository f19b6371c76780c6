"""Maths in text: shown as written, named as said."""

from __future__ import annotations

import re
from html import escape, unescape

import pytest
from hypothesis import given
from hypothesis import strategies as st
from project import collection
from storymaths.model.quantity import UNITS
from storymaths.parse.number_sentence import VULGAR, find_number_sentences
from storymaths.render.amounts_in_words import in_words
from storymaths.render.spoken import GAP_HTML, speak


def named(html: str) -> list[str]:
    return re.findall(r'aria-label="([^"]*)"', html)


def text_of(html: str) -> str:
    return unescape(re.sub(r"<[^>]*>", "", html.replace(GAP_HTML, "___").replace('<i class="gap"></i>', "___")))


@pytest.mark.parametrize(
    ("maths", "words"),
    [
        ("6 + 4 = 7 + 3", "6 add 4 equals 7 add 3"),
        ("9 ≠ 5 + 3", "9 is not equal to 5 add 3"),
        ("3 < 5", "3 is less than 5"),
        ("5 > 3", "5 is greater than 3"),
        ("9 − 6 = 3", "9 take away 6 equals 3"),
        ("−3 °C", "minus 3 degrees Celsius"),
        ("2 − −3 = 5", "2 take away minus 3 equals 5"),
        ("4 × 5 = 20", "4 times 5 equals 20"),
        ("20 ÷ 5 = 4", "20 divided by 5 equals 4"),
        ("14 ÷ 4 = 3 r 2", "14 divided by 4 equals 3 remainder 2"),
        ("(3 + 4) × 2", "open bracket 3 add 4 close bracket times 2"),
        ("9 = 6 + ___", "9 equals 6 add blank"),
        ("3/4", "three quarters"),
        ("1/2 of 8 = 4", "one half of 8 equals 4"),
        ("⅔", "two thirds"),
        ("5/2", "five halves"),
        ("1 1/2", "1 and one half"),
        ("2¾ kg", "2 and three quarters kilograms"),
        ("1/2 hour", "one half of an hour"),
        ("7/63", "seven over 63"),
        ("450 g = 250 g + 200 g", "450 grams equals 250 grams add 200 grams"),
        ("1 m = 100 cm", "1 metre equals 100 centimetres"),
        ("£2.50 + 50p = £3", "2 pounds 50 pence add 50 pence equals 3 pounds"),
        ("£1.05", "1 pound 5 pence"),
        ("1p", "1 penny"),
        ("1,200 − 1 = 1,199", "1,200 take away 1 equals 1,199"),
        ("−", "take away"),
        ("≠", "is not equal to"),
    ],
)
def test_maths_in_words(maths: str, words: str) -> None:
    assert in_words(maths) == words


@pytest.mark.parametrize(
    "html",
    [
        "<p>Session 2 of 4</p>",
        "<p>pages 6 to 7, ages 5–6, 50 minutes</p>",
        "<p>It was 12/11/2026.</p>",
        "<code>1 + 1 = 2</code>",
        '<svg><text x="1">3 + 4 = 7</text></svg>',
        '<a href="find.html?year=2&amp;q=1">AT&amp;T</a>',
        '<img alt="9 = 5 + 4" src="a.svg">',
        "",
    ],
)
def test_what_is_no_maths_is_left_alone(html: str) -> None:
    assert speak(html) == html


def test_a_page_is_shown_as_it_was() -> None:
    html = "<p>Write 9 = 6 + ___. Then 3 &lt; 5 &amp; ½ of 8, ___ more.</p>"
    spoken = speak(html)
    assert text_of(spoken) == text_of(html)
    assert named(spoken) == ["9 equals 6 add blank", "3 is less than 5", "one half of 8", "blank"]


def test_saying_twice_changes_nothing() -> None:
    once = speak("<p>9 = 6 + ___ and <b>4 ≠ 5</b></p>" + GAP_HTML)
    assert speak(once) == once


NUMBERS = st.one_of(
    st.integers(0, 10_000).map(str), st.sampled_from([*VULGAR, "3/4", "1 1/2", "2.5", "£4", "7 cm", "___"])
)


@given(st.lists(st.tuples(NUMBERS, st.sampled_from("+−×÷=≠")), min_size=1, max_size=5), NUMBERS)
def test_every_sign_is_said(pairs: list[tuple[str, str]], last: str) -> None:
    maths = "".join(f"{number} {sign} " for number, sign in pairs) + last
    spoken = speak(f"<p>{maths}</p>")
    assert text_of(spoken) == maths
    assert not re.search(f"[+−×÷=≠/_{''.join(VULGAR)}]", " ".join(named(spoken)))
    assert len(named(spoken)) == 1


def test_every_unit_has_a_name() -> None:
    for unit in UNITS:
        said = in_words(f"£{2}" if unit == "£" else f"2 {unit}")
        assert len(said.split()[1]) > 3, said


def test_every_number_sentence_of_the_collection_is_heard_whole() -> None:
    # The finder of sentences to check is another reader, written apart: what it finds must stand inside one name.
    for page in collection().documents:
        for sentence in find_number_sentences(page.prose.text):
            # What is told in words is heard as it is read.
            if not sentence.marked_wrong and not any(token.typed for token in sentence.tokens):
                assert named(speak(f"<p>{escape(sentence.text)}</p>"))[:1] == [in_words(sentence.text)]


def test_a_number_over_a_number_is_no_fraction_where_it_names_something() -> None:
    for reference in ("1169/2011", "2026/27", "178/2002"):
        assert speak(f"<p>See {reference} there.</p>") == f"<p>See {reference} there.</p>"
    assert "aria-label" in speak("<p>1/1000 of it</p>")
