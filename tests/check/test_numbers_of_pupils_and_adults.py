"""Numbers and fractions in words are held to the year; an adult's numbers are left alone, however large."""

from __future__ import annotations

import pytest
from project import problems_with, text_of

S2 = "books/cliff-house-lift/session-2.md"
YEAR_1 = "books/ferry-fare/session-1.md"


def rules_broken_by(words: str, path: str = S2) -> list[str]:
    text = text_of(path).rstrip() + f"\n\n{words}\n"
    return [problem.rule for problem in problems_with({path: text})]


@pytest.mark.parametrize(
    "words",
    [
        "The ISBN is 978-0-00-000000-2.", "Ring the school on 01632 960123.", "The telephone number is 01632 960456.",
        "Meet in Room 215.", "The sheet prints well at 300 dpi.", "A4 paper is 210 mm by 297 mm.", "The sheet is 210 × 297 mm.",
        "There are 240 cubes in the tub.", "There are 350 counters left in the cupboard.", "The bell goes at 3.30 pm.",
        "Assembly is at 9.15.", "The hall is free from 9.15 to 10.05.", "A pack costs £1.20.", "Enlarge it to 150%.",
        "Photocopy it at 141 %.", "There are 101 dogs in the film that we do not show.", "Not −3, since Year 2 has not met it.",
        "Year 2 has not met 250.", "Print 500 copies of the letter.", "The order code is 4512.", "Read it again in 2027.",
        "Hall 104 is dark.", "We stop at 2.45 p.m. for milk time.", "Extension 2204 is the office.",
        "**Before the lesson.** *For thirty, about 10 minutes.* Count out 320 cubes for eight tables.",
    ],
)  # fmt: skip
def test_an_adults_numbers_are_left(words: str) -> None:
    assert set(rules_broken_by(words)) <= {"caution-missing"}  # a film calls for its own


@pytest.mark.parametrize(
    ("words", "rule"),
    [
        ("Make two hundred and fifty with the cards.", "number-beyond-year"),
        ("There were three thousand boats.", "number-beyond-year"),
        ("One hundred and one friends come.", "number-beyond-year"),
        ("Colour two fifths of it.", "fraction-beyond-year"),
        ("Find a sixth of the shells.", "fraction-beyond-year"),
        ("Count to 240.", "number-beyond-year"),
        ("**Before the lesson.** It is quiet.\n\nCount out 320 cubes for eight tables.", "number-beyond-year"),
        ("There are 120 boats in the bay.", "number-beyond-year"),
        ("The fare is £1.20.", "number-beyond-year"),
        ("Write 3.30 on the slate.", "number-beyond-year"),
        ("So 150% of them.", "unit-beyond-year"),
        ("It is −3 on the quay.", "number-beyond-year"),
        ("The shell is 6 mm thick.", "unit-beyond-year"),
    ],
)
def test_a_pupils_numbers_are_held_to_the_year(words: str, rule: str) -> None:
    assert rule in rules_broken_by(words)


@pytest.mark.parametrize(
    "words",
    [
        "Use a hundred square.", "One hundred is ten tens.", "The third friend rides.", "One third of the shells are white.",
        "Two thirds of it.", "A class of two hundred and ten children came.", "A fifth friend comes.", "Hundreds of boats.",
    ],
)  # fmt: skip
def test_numbers_in_words_within_the_year_are_left(words: str) -> None:
    assert rules_broken_by(words) == []


def test_thirds_in_year_1() -> None:
    assert "fraction-beyond-year" in rules_broken_by("Share two thirds of the pie.", YEAR_1)
