"""What is typed and not named is held to the cast and to the activities, in notes, captions, front matter and bends."""

from __future__ import annotations

import pytest
from naming.pages import changed, place_of, problems_of

S4 = "session-4"


@pytest.mark.parametrize(
    ("name", "old", "new", "words"),
    [
        (S4, "note: in a tray for checking", "note: Moose is 7", "Moose is 7"),
        ("story", "Moose by 6,", "Moose by 7,", "Moose by 7"),
        (S4, "## Start\n", "## Start\n\nPut out Moose (7) and wait.\n", "Moose (7)"),
        (S4, "## Start\n", "## Start\n\nMoose’s 7 is swapped.\n", "Moose’s 7"),
        ("session-1", "    question: ", "    question: Moose is 7. ", "Moose is 7"),
    ],
)
def test_a_number_of_a_character_that_the_cast_does_not_have(name: str, old: str, new: str, words: str) -> None:
    told = [one for one in problems_of(changed((name, old, new))) if one.rule == "book-fact-untrue"]
    assert [(one.place.line, one.place.column) for one in told] == [place_of(name, (old, new), words=words)]


def test_a_bend_with_facts_of_its_own_may_say_other_numbers() -> None:
    grams = changed((S4, "    question: Count the five", "    question: Moose is 300. Count the five"))
    assert problems_of(grams) == []


def test_a_count_in_the_front_matter_is_held_to_the_activities() -> None:
    old, new = "summary: Children finish", "summary: There are five ways. Children finish"
    (problem,) = problems_of(changed((S4, old, new)))
    assert problem.rule == "ways-miscounted"
    assert (problem.place.line, problem.place.column) == place_of(S4, (old, new), words="There are five")
    assert problems_of(changed((S4, old, new.replace("five", "two")))) == []
