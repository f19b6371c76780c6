"""The singular and the plural of nouns, beside what a dictionary has for each."""

from __future__ import annotations

import pytest
from storymaths.activities.saying import counted, there_are
from storymaths.expression.noun import Noun, is_plural, plural, singular, with_article

# Common knowledge of English, no source; the vertex, the axis and the penny are the words of the national curriculum.
NOUNS = (
    ("fox", "foxes"), ("mouse", "mice"), ("bus", "buses"), ("wish", "wishes"), ("foot", "feet"), ("wolf", "wolves"),
    ("goose", "geese"), ("die", "dice"), ("potato", "potatoes"), ("half", "halves"), ("ox", "oxen"),
    ("person", "people"), ("child", "children"), ("leaf", "leaves"), ("box", "boxes"), ("house", "houses"),
    ("shoe", "shoes"), ("berry", "berries"), ("lamp", "lamps"), ("vertex", "vertices"), ("axis", "axes"),
    ("penny", "pence"), ("right angle", "right angles"), ("line of symmetry", "lines of symmetry"),
)  # fmt: skip


@pytest.mark.parametrize(("one", "many"), NOUNS)
def test_one_and_many_lead_to_each_other(one: str, many: str) -> None:
    assert (singular(many), plural(one)) == (one, many)
    assert is_plural(many)
    assert not is_plural(one)
    assert (counted(1, many), counted(2, many)) == (f"1 {one}", f"2 {many}")


def test_a_coin_of_a_penny_has_two_plurals() -> None:
    assert singular("pennies") == "penny"


@pytest.mark.parametrize("word", ["sheep", "fish", "glass", "", "²", "seven"])
def test_what_has_no_other_form_stays(word: str) -> None:
    assert singular(word) == word
    assert counted(1, word) == f"1 {word}".strip()


def test_the_authors_own_singular_comes_first() -> None:
    assert counted(1, Noun("staves", "stave")) == "1 stave"
    assert there_are(1, "mice") == "There is 1 mouse"
    assert there_are(3, "mice") == "There are 3 mice"


def test_articles_go_by_the_sound() -> None:
    nouns = ("cube", "oval", "L-shaped hexagon", "hour", "unit", "interlocking cube")
    assert [with_article(noun) for noun in nouns] == [
        "a cube", "an oval", "an L-shaped hexagon", "an hour", "a unit", "an interlocking cube",
    ]  # fmt: skip
