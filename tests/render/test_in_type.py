"""What stands for pictures: a card and tokens, the same for the same book, told apart and easy to read."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path
from types import SimpleNamespace

import pytest
from outside.test_contrast import contrast
from project import PROJECT, collection, problems_with, text_of
from storymaths.model.book import Book
from storymaths.model.fields import Pages
from storymaths.model.session import Reading
from storymaths.model.token import token_of
from storymaths.parse.drawing import faults_in_drawing
from storymaths.publish.sheets import _drawings
from storymaths.render.in_type.card import INK, LIGHT, TINTS, book_card
from storymaths.render.in_type.drawings import drawings_in_type
from storymaths.render.in_type.letters import lines_of, outline, width
from storymaths.render.in_type.token import PAPER, token_drawing
from storymaths.render.screens.slides import stretches
from storymaths.render.sheets.sheet_context import SheetPictures

NAMES = [f"{letter}{letter.lower()}{vowel}n" for letter in "BCDFGHJK" for vowel in "aei"]
BOOK = "books/ferry-fare/index.md"


def a_book(title: str = "A Gate in the Hedge", rights: str = "in-copyright") -> Book:
    return Book.model_construct(title=title, story_by="L. Oke", pictures_by="P. Wren", rights=rights)


def without_pictures(rights: str = "own") -> str:
    """The record of a book whose cast has no pictures, and whose cover has none."""
    head, _, rest = text_of(BOOK).partition("cover:")
    kept = rest[rest.index("\nmaths_on_pages") :] if "\nmaths_on_pages" in rest else rest[rest.index("\nsensitive") :]
    lines, skipping = [], False
    for line in (head + kept.lstrip("\n")).splitlines():
        skipping = skipping and line.startswith("      ")
        if line.strip().startswith(("picture: cast/", "alt:")):
            skipping = True
        elif not skipping:
            lines.append(line)
    return "\n".join(lines).replace("rights: own", f"rights: {rights}") + "\n"


def test_a_book_without_a_picture_is_in_order() -> None:
    assert problems_with({BOOK: without_pictures()}) == []


def test_a_card_is_the_same_for_the_same_book_and_another_for_another() -> None:
    ids = [f"a-book-{number}" for number in range(60)]
    drawn = {name: book_card(name, a_book()) for name in ids}
    assert drawn == {name: book_card(name, a_book()) for name in ids}
    assert len(set(drawn.values())) == len(ids)


@pytest.mark.parametrize(
    "title", ["Hush", "Six Pegs in a Row", "An Extraordinarily Long Tale of a Goose " * 3, "é ≠ 中"]
)
def test_a_card_can_be_used_as_any_drawing_can(title: str) -> None:
    drawn = book_card("a", a_book(title))
    assert faults_in_drawing("", drawn) == []
    assert drawn.isascii()  # letters are outlines: no typeface has to be there


def test_a_card_says_that_the_book_is_needed_and_that_our_own_is_not() -> None:
    said = {rights: book_card("a", a_book(rights=rights)) for rights in ("in-copyright", "public-domain", "own")}
    assert said["in-copyright"] == said["public-domain"] != said["own"]


def test_words_stay_within_the_room_they_are_given() -> None:
    lines = lines_of("The Lid that Would Not Fit", 40, 300)
    assert " ".join(lines) == "The Lid that Would Not Fit"
    assert all(width(line, 40) <= 300 for line in lines)
    assert outline("a", 0, 0, 20).startswith("M")


def test_the_words_of_a_card_have_contrast_enough() -> None:
    # WCAG 2.2, 1.4.3 (AA) and 1.4.6 (AAA); the same by day and by night, since drawings keep their own paper.
    for paper, band in TINTS:
        assert contrast(INK, paper) >= 7
        assert contrast(LIGHT, band) >= 7
    assert contrast(INK, PAPER) >= 7


def test_no_two_of_a_cast_have_one_token_and_none_rests_on_colour() -> None:
    tokens = [token_of(NAMES, place) for place in range(len(NAMES))]
    assert all((a.shape, a.pattern) != (b.shape, b.pattern) for a, b in combinations(tokens, 2))
    assert len({token.letters for token in tokens}) == len(tokens)
    assert [
        faults_in_drawing("", token_drawing(token)) for token in tokens if faults_in_drawing("", token_drawing(token))
    ] == []
    first_eight = {token.shape for token in tokens[:8]}
    assert len(first_eight) == 8


@pytest.mark.parametrize(
    ("names", "letters"),
    [
        (["Nan", "Jory"], ["N", "J"]),
        (["Badger", "Bear"], ["Ba", "Be"]),
        (["Mrs Quill", "The Moth"], ["Q", "M"]),
        (["Ada", "Ada"], ["Ada", "Ada"]),
    ],
)
def test_letters_tell_names_apart(names: list[str], letters: list[str]) -> None:
    assert [token_of(names, place).letters for place in range(len(names))] == letters


def test_a_photograph_is_printed_too() -> None:
    from PIL import Image  # noqa: PLC0415

    folder = PROJECT.parent / "a-photograph"
    (folder / "content").mkdir(parents=True, exist_ok=True)
    Image.new("RGB", (900, 600), "red").save(folder / "content/toy.jpg")
    pictures = SheetPictures(_drawings(folder, {}))
    assert pictures.add("toy.jpg") == "toy.jpg"
    assert 'width="480"' in pictures.kept["toy.jpg"]
    Path(folder / "content/broken.png").write_bytes(b"\x89PNG\r\n\x1a\n")
    assert pictures.add("broken.png") == ""


def test_the_pictures_of_a_book_in_copyright_are_refused_and_ones_own_are_not() -> None:
    theirs = without_pictures("in-copyright\npublisher: A Press")
    story = ("books/ferry-fare/story.md",)
    unlinked = [problem for problem in problems_with({BOOK: theirs}, story) if problem.rule != "link-broken"]
    assert unlinked == []
    told = theirs.replace("\nmaths_on_pages", "\ncover: { picture: cover.svg, alt: A toy. }\nmaths_on_pages", 1)
    found = [problem for problem in problems_with({BOOK: told}, story) if problem.rule == "rights-missing"]
    assert len(found) == 1
    assert "publisher's" in found[0].message
    assert "shows: toy" in found[0].fix
    own = told.replace("alt: A toy. }", "alt: A toy., shows: toy }")
    assert [problem for problem in problems_with({BOOK: own}, story) if problem.rule == "rights-missing"] == []


def test_a_picture_of_the_cast_has_words() -> None:
    text = without_pictures().replace("\ncast:\n  - id:", "\ncast:\n  - picture: cover.svg\n    id:", 1)
    assert [problem.rule for problem in problems_with({BOOK: text})] == ["picture-without-words"]


def test_nothing_is_drawn_where_there_is_a_picture() -> None:
    assert drawings_in_type(collection()) == {}


@pytest.mark.parametrize(
    ("spreads", "shown"),
    [
        ((), ["pages 8 to 10", "pages 11 to 13", "page 14"]),
        ((9,), ["page 8", "page 9", "page 10", "pages 11 to 13", "page 14"]),
        (range(8, 15), [f"page {page}" for page in range(8, 15)]),
    ],
)
def test_a_class_screen_has_one_slide_for_the_pages_between_two_stops(
    spreads: tuple[int, ...], shown: list[str]
) -> None:
    stops = tuple(SimpleNamespace(page=page) for page in (10, 13))
    reading = Reading.model_construct(pages=Pages((8, 14)), stops=stops)
    assert [str(pages) for pages in stretches(reading, spreads)] == shown
