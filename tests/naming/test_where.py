"""Where a fact stands: what follows it by itself, and every line that does not."""

from __future__ import annotations

import pytest
from naming.pages import LIFT
from project import PROJECT, collection, text_of
from storymaths.commands.program import main
from storymaths.naming.where import Line, lines_about


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
