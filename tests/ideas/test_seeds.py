"""How books become candidates: every kind is in the table, and a block reads as its lines."""

from __future__ import annotations

from dataclasses import replace

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from ideas.books import STRANGER, ideas_for, stranger
from project import collection, reference
from storymaths.activities.table import KINDS
from storymaths.ideas.block_text import block_text
from storymaths.ideas.gather import material_of
from storymaths.ideas.material import Material
from storymaths.ideas.seeds.table import SEEDS
from storymaths.ideas.story_text import PageText, counted_in, grouped_in, measured_in, parts_in, times_in
from storymaths.model.book import FactAbout, FactValue
from storymaths.model.plain import Plain


def test_every_kind_has_its_seed() -> None:
    assert list(SEEDS) == list(KINDS)


def test_a_kind_that_nothing_feeds_says_what_it_needs() -> None:
    unfed = {one.kind: one.needs for one in ideas_for(STRANGER, 2).unfed}
    assert unfed["clock"] == "two clock times or more"
    assert unfed.keys().isdisjoint({idea.kind for idea in ideas_for(STRANGER, 2).ideas})


@pytest.mark.parametrize("book", ["ferry-fare", STRANGER])
def test_what_a_seed_writes_is_read_as_it_was_meant(book: str) -> None:
    """By the library for YAML, of another make than what writes it here."""
    material = material_of(stranger() if book == STRANGER else collection(), book)
    for year in (1, 3):
        for seed in SEEDS.values():
            for candidate in seed.plant(material, reference().years[year]):
                assert yaml.safe_load(candidate.block) == dict(candidate.lines)


_TEXTS = st.text(st.sampled_from("aZé ’\"':#-,[]{}?_=<>+−×&*!%@`~0127.\\/"), min_size=1, max_size=12).filter(str.strip)
_VALUES: st.SearchStrategy[Plain] = st.recursive(
    _TEXTS | st.integers(-99, 9999) | st.booleans(),
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(_TEXTS, inner, max_size=3),
    max_leaves=8,
)


@given(st.dictionaries(st.sampled_from(["title", "ask", "cast", "given"]), _VALUES, min_size=1))
def test_any_lines_are_read_as_they_were_meant(lines: dict[str, Plain]) -> None:
    text = block_text(lines)
    assert yaml.safe_load(text) == yaml.load(text, yaml.CSafeLoader) == lines


def _page(words: str, page: int = 3) -> list[PageText]:
    return [PageText(page, words)]


def test_things_are_counted_in_words_and_figures() -> None:
    found = counted_in(_page("Nine red bricks stood there. Then 12 boats came, and the boats took the bricks."), set())
    assert [(one.number, str(one.things), one.pages) for one in found] == [(9, "bricks", (3,)), (12, "boats", (3,))]
    assert counted_in(_page("There are two ways, and it is 4 o'clock. Both hands, both ways."), set()) == []
    assert (
        counted_in(_page("So eight goes on top, and ten goes below. Eight was first, and ten was next."), set()) == []
    )


def test_groups_are_told() -> None:
    found = grouped_in(_page("They pack boxes of four, and lines of 10. Pairs of 10 are numbers."))
    assert [(one.each, str(one.holders)) for one in found] == [(4, "boxes"), (10, "lines")]


def test_times_follow_one_another_through_the_book() -> None:
    texts = [
        PageText(1, "At 8 o'clock they woke."), PageText(2, "At half past 11 they set out, and the sun shone."),
        PageText(3, "At 2 o'clock they ate."), PageText(0, "It is all over by 9 o'clock."),
    ]  # fmt: skip
    told = [(one.minutes, one.page, one.event) for one in times_in(texts)]
    assert told == [(8 * 60, 1, "they woke"), (11 * 60 + 30, 2, "they set out"), (14 * 60, 3, "they ate")]


def test_amounts_have_their_units() -> None:
    found = measured_in(_page("It costs twenty pence. It is 3 metres long, and takes two hours."))
    assert [(one.number, one.unit, one.kind) for one in found] == [
        (20, "p", "money"), (3, "m", "length"), (2, "hour", "time"),
    ]  # fmt: skip


def test_what_a_fact_measures_is_told_by_its_unit_or_its_words() -> None:
    material: Material = material_of(collection(), "ferry-fare")
    assert {fact.id: fact.of for fact in material.numbers} == {"legs": "count", "fare": "money", "coin": "money"}
    assert {fact.id: fact.of for fact in material_of(collection(), "cliff-house-lift").numbers} == {
        "mass": "mass",
        "legs": "count",
    }


def _with_facts(about: dict[str, FactAbout], *facts: dict[str, FactValue]) -> Material:
    """What a book of the frozen collection would have if its cast had these facts."""
    whole = collection()
    page = whole.books["ferry-fare"]
    cast = tuple(one.model_copy(update={"facts": had}) for one, had in zip(page.fields.cast, facts, strict=False))
    book = page.fields.model_copy(update={"cast": cast, "facts": about})
    rest = tuple(one for one in whole.documents if one is not page)
    return material_of(replace(whole, documents=(*rest, replace(page, fields=book))), "ferry-fare")


def test_a_label_is_no_amount_and_a_plank_is_no_person() -> None:
    about = {
        "floor": FactAbout(means="floor they live on"),
        "plank": FactAbout(means="how long a plank they bring", unit="wellies"),
    }
    material = _with_facts(about, {"floor": 2, "plank": 6}, {"floor": 4, "plank": 4}, {"floor": 7, "plank": 5})
    assert [(fact.id, fact.of, fact.bearer) for fact in material.numbers] == [("plank", "length", "plank")]
    asks = [str(one.lines["ask"]) for one in SEEDS["measure"].plant(material, reference().years[2])]
    first, _, third = (one.name for one in material.book.cast)
    assert f"{first}’s plank or" in asks[0]
    assert third not in asks[0]


def test_times_of_the_cast_are_times() -> None:
    about = {"leaves": FactAbout(means="when they leave"), "arrives": FactAbout(means="when they arrive")}
    material = _with_facts(about, {"leaves": "9:40", "arrives": "10:20"}, {"leaves": "9:05", "arrives": "10:20"})
    assert [one.minutes for one in material.times if not one.page] == [580, 545, 620]
    spans = [one.lines.get("spans") for one in SEEDS["clock"].plant(material, reference().years[2])]
    assert [["9:40", "10:20"], ["9:05", "10:20"]] in spans


def test_the_parts_that_are_spoken_of_come_the_most_often_first() -> None:
    assert parts_in(_page("A third of it, then two thirds, and the third house has half.")) == (3, 2)
    assert parts_in(_page("A third of it, then three thirds, and half a loaf.")) == (3, 2)
