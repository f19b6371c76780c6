"""Where a fact stands: what follows it by itself, and every line that does not."""

from __future__ import annotations

import pytest
from naming.pages import LIFT
from project import PROJECT, collection, text_of
from storymaths.commands.program import main
from storymaths.naming.where import Line, lines_about, numbers_in


def about(text: str) -> list[Line]:
    book = collection().books["cliff-house-lift"].fields
    moose = next(one for one in book.cast if one.id == "moose")
    return lines_about({f"content/{LIFT}/home-1.md": text}, book, moose, "mass")


@pytest.mark.parametrize(
    ("text", "sort"),
    [
        ("Moose is as heavy as [[moose.mass]].", "by name"),
        ("All are [[all.mass: number]].", "by name"),
        ("Moose is [[moose.mass: number]], and 6 is even.", "by name, and more"),
        ("Moose is 6.", "with a number"),
        ("{moose: 300, worm: 50}", "with a number"),
        ("9 = 6 + 3", "the same number"),
        ("Six and three for nine.", "the same number"),
        ("Both baskets are worth 15.", "a sum"),
    ],
)
def test_a_line_is_listed_for_what_it_has(text: str, sort: str) -> None:
    assert [line.sort for line in about(text)] == [sort]


@pytest.mark.parametrize(
    "text", ["Moose looks up.", "pages: 6", "Camel is [[camel.mass]].", "![A lift](scenes/page-6.svg)"]
)
def test_other_lines_are_not(text: str) -> None:
    assert about(text) == []


def about_a_ride(text: str, arrives: str = "10:20") -> list[Line]:
    """A bus sets off at 9:40, and has a driver with a badge."""
    book = collection().books["cliff-house-lift"].fields
    moose = next(one for one in book.cast if one.id == "moose")
    moose = moose.model_copy(update={"facts": {"sets_off": "9:40", "arrives": arrives, "badge": "square"}})
    fact = "badge" if "badge" in text or "square" in text.lower() else "sets_off"
    return lines_about({"session-1.md": text}, book.model_copy(update={"cast": (moose,)}), moose, fact)


@pytest.mark.parametrize(
    ("text", "sort"),
    [
        ("It went at 9:40.", "the same number"),
        ("It went at twenty to ten.", "the same number"),
        ("It went at 20 minutes to 10.", "the same number"),
        ("Moose went at quarter to ten.", "with a number"),
        ("Moose took 35 minutes.", "with a number"),
        ("The ride takes forty minutes.", "a sum"),
        ("They leave at [[moose.sets_off]].", "by name"),
        ("[[moose.sets_off]] is 20 to 10.", "by name, and more"),
        ("Two Squares.", "the same number"),
        ("Moose wears a square.", "with a number"),
        ("[[moose.badge]]", "by name"),
    ],
)
def test_a_time_is_found_however_it_is_told_and_a_word_where_it_stands(text: str, sort: str) -> None:
    assert [line.sort for line in about_a_ride(text)] == [sort]


def test_the_time_between_two_times_may_be_hours() -> None:
    assert [line.sort for line in about_a_ride("It takes 1 hour 15 minutes.", "10:55")] == ["a sum"]
    assert [line.sort for line in about_a_ride("It takes an hour and a half.", "11:10")] == ["a sum"]


@pytest.mark.parametrize("text", ["It went at 9:45.", "Moose waits.", "The ride takes 45 minutes.", "Round badges."])
def test_other_times_and_words_are_not(text: str) -> None:
    assert about_a_ride(text) == []


@pytest.mark.parametrize(("text", "value"), [("1,200 people", 1200), ("It costs £1.30.", 130), ("75p and 5p", 75)])
def test_numbers_are_found_in_thousands_and_in_pounds(text: str, value: int) -> None:
    assert value in numbers_in(text)


def test_the_line_that_says_the_fact_is_not_listed_as_hanging_on_it() -> None:
    book = collection().books["cliff-house-lift"].fields
    moose = next(one for one in book.cast if one.id == "moose")
    text = text_of(f"{LIFT}/index.md")
    written = next(at for at, line in enumerate(text.split("\n"), start=1) if "{mass: 6," in line)
    assert written not in {line.number for line in lines_about({f"content/{LIFT}/index.md": text}, book, moose, "mass")}


def test_the_command_lists_them_and_helps_with_a_slip(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(PROJECT)
    assert main(["where", "moose.mass"]) == 0
    told = capsys.readouterr().out
    assert told.startswith("Moose: mass is 6 (")
    assert f"content/{LIFT}/story.md:" in told
    assert main(["where", "mose.mass"]) == 2
    assert 'Did you mean "moose.mass"?' in capsys.readouterr().err
