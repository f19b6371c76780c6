"""The Flesch–Kincaid grade against the general-purpose library ``textstat-rs``, and by hand from the formula.

Formula: J. P. Kincaid and others, Research Branch Report 8-75 (US Navy, 1975).
"""

from __future__ import annotations

import pytest
import textstat_rs
from project import collection
from storymaths.parse.reading_level import reading_grade, syllables

PLAIN = (
    "Put five cups in a row. Share out the twenty shells. Give one to each cup, then go round again. How many are in "
    "each cup now? Take some away and put it right. You can stop when it is still fun."
)
HARDER = (
    "Mathematical understanding develops gradually through conversation and careful observation. Children encounter "
    "equivalence whenever they balance quantities, although the underlying principle remains unfamiliar to many of "
    "them until an adult describes the relationship explicitly."
)


def test_by_hand() -> None:
    """Six words of one syllable in one sentence: 0.39 × 6 + 11.8 × 1 − 15.59."""
    assert reading_grade("The crab sat on the quay.") == pytest.approx(0.39 * 6 + 11.8 - 15.59)


@pytest.mark.parametrize("text", [PLAIN, HARDER])
def test_within_a_grade_and_a_half_of_the_library(text: str) -> None:
    """Tools differ by about a grade on one text, since they count syllables differently."""
    assert reading_grade(text) == pytest.approx(textstat_rs.flesch_kincaid_grade(text), abs=1.5)


def test_the_two_texts_are_told_apart() -> None:
    plain, harder = reading_grade(PLAIN), reading_grade(HARDER)
    assert plain is not None
    assert harder is not None
    assert plain < 4 < 12 < harder


def test_syllables_agree_with_the_library_on_the_words_of_the_stories() -> None:
    words = sorted({word for page in collection().documents for word in page.prose.words if len(word) > 2})
    same = sum(syllables(word) == textstat_rs.syllable_count(word) for word in words)
    assert same / len(words) > 0.85, "the share of words on which a counter by rule and one with a dictionary agree"


def test_a_text_without_words_has_no_grade() -> None:
    assert reading_grade("1, 2, 3!") is None
