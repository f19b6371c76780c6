"""What is named in the text is printed on the page, wherever it stands, and problems keep their places in the file."""

from __future__ import annotations

import pytest
from naming.pages import changed, page_of, place_of, problems_of
from storymaths.model.body import Table
from storymaths.model.book import Book
from storymaths.naming.facts import Unprintable, print_fact

S4 = "session-4"
SUMMARY = "Children finish the story, then use a fair exchange to answer Worm's last question for all six friends."


def book() -> Book:
    fields = page_of(changed(), "index").fields
    assert isinstance(fields, Book)
    return fields


@pytest.mark.parametrize(
    ("name", "prints"),
    [
        ("moose.mass", "6 bricks"),
        ("worm.mass", "1 brick"),
        ("moose.mass: number", "6"),
        ("moose.mass: in words", "six"),
        ("moose.mass: In words", "Six"),
        ("camel.mass + badger.mass", "14 bricks"),
        ("camel.mass + badger.mass − worm.mass: in words", "thirteen"),
        ("all.mass: number", "28"),
    ],
)
def test_a_fact_is_printed_with_its_unit_as_a_number_or_in_words(name: str, prints: str) -> None:
    assert print_fact(name, book()) == prints


@pytest.mark.parametrize(
    ("name", "says"),
    [
        ("mose.mass", 'Did you mean "moose"?'),
        ("moose.mas", 'Did you mean "mass"?'),
        ("moose.hat", "true or false"),
        ("moose.mass: as a word", "no way to print"),
        ("moose.mass + moose.legs", "something else"),
    ],
)
def test_what_prints_nothing_says_why(name: str, says: str) -> None:
    with pytest.raises(Unprintable, match=says.replace("?", r"\?")):
        print_fact(name, book())


def test_names_are_printed_in_front_matter_prose_captions_tables_and_activities() -> None:
    whole = changed(
        (
            S4,
            f"summary: {SUMMARY}",
            "summary: [[moose.mass: In words]] for [[moose.mass]], and [[every-ride: count]] rides.",
        ),
        (S4, "{item: cast-card, count: 6,", "{item: cast-card, count: [[moose.mass: number]],"),
        (
            S4,
            "## Start\n",
            "## Start\n\n| Who | Mass |\n| --- | --- |\n| Moose | [[moose.mass]] |\n\n[[all-six: table]]\n",
        ),
        (S4, "title: All six, and level", "title: All [[moose.mass: in words]], and level"),
        ("story", "Moose by 6,", "Moose by [[moose.mass: number]],"),
    )
    page = page_of(whole, S4)
    assert page.raw["summary"] == "Six for 6 bricks, and 12 rides."
    assert {"item": "cast-card", "count": 6}.items() <= page.raw["materials"][2].items()
    typed, found = list(page.content.every(Table))[:2]
    assert [cell[0].text for cell in typed.rows[0]] == ["Moose", "6 bricks"]
    assert [row[1][0].text for row in found.rows] == [
        "Camel + Badger = Moose + Puffin + Hamster + Worm",
        "Camel + Puffin + Worm = Moose + Badger + Hamster",
    ]
    assert "title: All six, and level" in page.content.activities[0].text
    assert "Moose by 6," in page_of(whole, "story").prose.text
    assert problems_of(whole) == []


def test_a_changed_fact_changes_what_is_printed() -> None:
    said = ("home-1", "\n---\n\n", "\n---\n\nMoose is as heavy as [[moose.mass]].\n\n")
    before, after = changed(said), changed(said, ("index", "facts: {mass: 6,", "facts: {mass: 7,"))
    assert "Moose is as heavy as 6 bricks." in page_of(before, "home-1").prose.text
    assert "Moose is as heavy as 7 bricks." in page_of(after, "home-1").prose.text


def test_an_activity_of_another_page_can_be_named() -> None:
    whole = changed(("index", "exactly 12 pairs", "exactly [[session-4/every-ride: count]] pairs"))
    assert "exactly 12 pairs" in page_of(whole, "index").prose.text


@pytest.mark.parametrize(
    ("name", "old", "new", "words", "says"),
    [
        (S4, f"summary: {SUMMARY}", "summary: [[moose.maas]]", "[[moose.maas]]", "Did you mean"),
        (S4, "## Start\n", "## Start\n\nMoose is [[moos.mass]].\n", "[[moos.mass]]", "Did you mean"),
        (S4, "## Start\n", "## Start\n\nThere are [[every-rid: count]].\n", "[[every-rid:", "Did you mean"),
        (S4, "## Start\n", "## Start\n\nSee [[all-six: table]] here.\n", "[[all-six: table]]", "a table"),
        (S4, "## Start\n", "## Start\n\nMoose is [[moose mass]].\n", "[[moose mass]]", "no name of a fact"),
        (S4, f"summary: {SUMMARY}", "summary: Moose is [[moose]] heavy.", "[[moose]]", "no name of a fact"),
    ],
)
def test_an_unknown_name_is_told_with_its_place(name: str, old: str, new: str, words: str, says: str) -> None:
    (problem,) = problems_of(changed((name, old, new)))
    assert problem.rule == "name-unknown"
    assert says in f"{problem.message} {problem.fix}"
    assert (problem.place.line, problem.place.column) == place_of(name, (old, new), words=words)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        (f"summary: {SUMMARY}", "summary: Moose, [[moose.mass]], and [[camel.mass]]. So 4 + 4 = 9."),
        ("## Start\n", "## Start\n\nMoose, [[moose.mass]], and [[camel.mass]]. So 4 + 4 = 9.\n"),
        ("ask: All six ride,", "ask: So [[moose.mass: in words]], [[camel.mass]]. 4 + 4 = 9. All six ride,"),
    ],
)
def test_problems_after_a_name_keep_their_column(old: str, new: str) -> None:
    (problem,) = problems_of(changed((S4, old, new)))
    assert problem.rule == "number-sentence-untrue"
    assert (problem.place.line, problem.place.column) == place_of(S4, (old, new), words="4 + 4 = 9")


def test_yaml_of_other_sorts_is_left_alone() -> None:
    page = page_of(changed(), S4)
    assert page.written == ""
