"""What pages say of a book's characters, held to the cast: the frozen collection's books are the facts."""

from __future__ import annotations

import pytest
import yaml
from project import collection, problems_with, text_of
from storymaths.claims.cast_pictures import unlike_shape

LIFT, FERRY = "books/cliff-house-lift/session-2.md", "books/ferry-fare/session-1.md"


def said_of_cast(words: str, path: str = LIFT) -> list[str]:
    text = text_of(path).rstrip() + f"\n\n{words}\n"
    return [problem.message for problem in problems_with({path: text}) if problem.rule == "book-fact-untrue"]


@pytest.mark.parametrize(
    "words",
    [
        "Camel is 8.", "So Camel is nine, and Moose is 5.", "Moose is worth 7, so it is not level.".replace("not ", "far from "),
        "Camel is as heavy as eight bricks.", "Camel was as heavy as nine bricks, Moose as heavy as seven.",
        "Camel weighs 10 bricks.", "Camel has five legs.", "Camel’s mass is 7.", "The six masses, 9, 6, 5, 4, 2 and 1, are known.",
        "For the adult: Camel 9, Moose 5, Badger 5 and Puffin 4.", "\"I am ten,\" said Camel.", "The six masses are 9, 6, 5, 4, 3 and 2.",
    ],
)  # fmt: skip
def test_what_the_cast_does_not_say_is_found(words: str) -> None:
    (message,) = said_of_cast(words)
    assert "in the book" in message


@pytest.mark.parametrize(
    "words",
    [
        "Camel is 9.", "Camel is one of them.", "If Camel is 8, what then?", "Is Camel 8?", "Camel is not 8.", "Camel is 450 g.",
        "[Camel is 8]{wrong}", "Camel has two legs on the quay.", "Camel has 10 bricks.", "Camel was as heavy as nine bricks.",
        "A child says, \"Camel is 8.\"", "Camel 9, Moose 6, Badger 5 and Puffin 4.", "Camel is on page 8.", "Camel is 8 bricks too heavy.",
        "Camel’s mass is 9.", "The six masses, 9, 6, 5, 4, 3 and 1, are known.", "Suppose that Camel is 8.", "Camel is second.",
        "Change Camel to 8. Would Camel be 8 with a bag?", "Camel 2, Moose 3.",
    ],
)  # fmt: skip
def test_what_it_says_or_is_doubtful_is_left(words: str) -> None:
    assert said_of_cast(words) == []


def test_a_fact_of_a_page_is_read_where_the_page_is_named() -> None:
    name = next(c.name for c in collection().books["ferry-fare"].fields.cast if c.facts.get("coin") == 10)
    assert said_of_cast(f"{name}’s coin is 5.", FERRY) == []
    assert len(said_of_cast(f"On page 6 {name}’s coin is 5.", FERRY)) == 1


def test_what_the_words_for_a_picture_count_is_what_the_cast_says() -> None:
    index = "books/ferry-fare/index.md"
    text, who = (
        text_of(index),
        next(c for c in collection().books["ferry-fare"].fields.cast if c.facts.get("legs") == 4),
    )
    assert who.alt
    for words, is_found in (
        ("on three legs", True), ("with five long legs", True), ("on four legs", False), ("with 4 long legs", False),
        ("on three walking legs, with one raised", False), ("on legs", False),
    ):  # fmt: skip
        changed = text.replace(f"alt: {who.alt}", f"alt: A friend {words}, in a hat.", 1)
        assert changed != text
        found = [problem.message for problem in problems_with({index: changed}) if problem.rule == "book-fact-untrue"]
        assert len(found) == is_found, (words, found)


@pytest.mark.parametrize(
    ("facts", "is_found"),
    [
        ("parcel: cube, squares: 6, flat_faces: 6, circles: 0", 0),
        ("parcel: cube, squares: 5, flat_faces: 7", 2),
        ("parcel: triangular prism, triangles: 3, edges: 9", 1),
        ("parcel: cylinder, circles: 2, flat_faces: 2, squares: 0", 0),
        ("parcel: cube of straw, squares: 4", 0),
    ],
)  # fmt: skip
def test_what_a_solid_of_the_cast_cannot_have(facts: str, is_found: int) -> None:
    book = collection().books["ferry-fare"].fields
    shapes = collection().reference.facts.shapes
    who = book.cast[0].model_copy(update={"facts": yaml.safe_load(f"{{{facts}}}")})
    assert len(list(unlike_shape(who, shapes))) == is_found
