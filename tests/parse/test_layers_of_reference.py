"""A collection's own lists add to the program's and correct them, entry by entry, and are checked as strictly."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from project import FROZEN, reference
from storymaths.model.locator import Locator
from storymaths.model.reference import Reference
from storymaths.parse.layers import LayeredLocator, merged
from storymaths.parse.reference import ReferenceBroken, read_reference
from storymaths.parse.yaml_text import YamlLocator, load


def with_own(folder: Path, **lists: str) -> Reference:
    """What is read for a collection that says who speaks, and has lists of its own, by their names."""
    own = folder / "site_data"
    own.mkdir()
    (own / "site.yaml").write_bytes((FROZEN / "site_data/site.yaml").read_bytes())
    for name, text in lists.items():
        (own / f"{name}.yaml").write_text(text, encoding="utf-8")
    return read_reference(folder)


def test_a_collection_with_no_lists_of_its_own_has_the_program_s(tmp_path: Path) -> None:
    found = with_own(tmp_path)
    assert found.themes == reference().themes
    assert found.years == reference().years
    assert found.moved == {}


def test_an_entry_is_added_and_one_is_corrected_field_by_field(tmp_path: Path) -> None:
    found = with_own(
        tmp_path,
        themes="themes:\n  - {id: kites, name: Kites, says: Wind and string.}\n  - {id: weather, name: Wind and weather}\n",
        limits="class_size: 24\n",
    )
    assert list(found.themes)[:-1] == list(reference().themes)
    assert found.themes["kites"].name == "Kites"
    assert found.themes["weather"].name == "Wind and weather"
    assert found.themes["weather"].says == reference().themes["weather"].says
    assert found.limits == reference().limits.model_copy(update={"class_size": 24})


@pytest.mark.parametrize(
    ("name", "text", "place", "says"),
    [
        ("themes", "themes:\n  - id: kites\n    nam: Kites\n    says: Wind.\n", "site_data/themes.yaml:3:5", "nam"),
        ("themes", "themes:\n  - id: kites\n    says: Wind.\n", "site_data/themes.yaml:2:5", "name"),
        (
            "themes",
            "themes:\n  - {id: kites, name: K, says: W.}\n  - {id: kites, name: K, says: W.}\n",
            ":3:5",
            "already",
        ),
        ("words", "words:\n  - {word: sum, concept: summs}\n", "site_data/words.yaml:2:26", "not a known id"),
        ("words", "words:\n  - {concept: sums}\n", "site_data/words.yaml:2:5", "word"),
        ("themes", "themes: [\n", "site_data/themes.yaml", ""),
        ("drawings", "refused_elements: {}\n", "site_data/drawings.yaml", "the program's own"),
        ("thems", "themes: []\n", "site_data/thems.yaml", "there is no list of this name"),
        ("years", "years:\n  - {year: 2, tables: [2, 5, ten]}\n", "site_data/years.yaml:2:", "whole number"),
    ],
)
def test_a_slip_is_told_where_it_was_written(tmp_path: Path, name: str, text: str, place: str, says: str) -> None:
    with pytest.raises(ReferenceBroken) as error:
        with_own(tmp_path, **{name: text})
    assert place in str(error.value)
    assert says in str(error.value)


@pytest.mark.parametrize(
    ("base", "own", "both"),
    [
        ({"a": 1, "b": 2}, {"b": 3, "c": 4}, {"a": 1, "b": 3, "c": 4}),
        ([1, 2], [3], [3]),  # a list of plain values has no entries to correct
        ([{"id": "a", "x": 1}], [{"id": "a", "y": 2}, {"id": "b"}], [{"id": "a", "x": 1, "y": 2}, {"id": "b"}]),
        ([{"id": "a"}], [{"id": "a"}, {"id": "a"}], [{"id": "a"}, {"id": "a"}]),
        ([{"id": "a"}], None, None),
        ([{"id": "a"}], [{"x": 1}, 5], [{"id": "a"}, {"x": 1}, 5]),
        ({"a": [{"id": "b", "c": [{"year": 1, "d": 2}]}]}, {"a": [{"id": "b", "c": [{"year": 1, "d": 3}]}]},
         {"a": [{"id": "b", "c": [{"year": 1, "d": 3}]}]}),
    ],
)  # fmt: skip
def test_two_layers_make_one(base: Any, own: Any, both: Any) -> None:
    assert merged(base, own) == both


def test_a_value_is_found_in_the_layer_it_comes_from() -> None:
    texts = ("own", "list:\n  - id: b\n    x: 1\n  - id: c\n"), ("base", "list:\n  - id: a\n  - id: b\n    y: 2\n")
    layers: list[tuple[Any, Locator]] = [(load(text)[0], YamlLocator(name, text)) for name, text in texts]
    locator = LayeredLocator(merged(layers[1][0], layers[0][0]), layers)
    assert str(locator.place(("list", 1, "x"))) == "own:3:8"
    assert str(locator.place(("list", 1, "y"))) == "base:4:8"
    assert str(locator.place(("list", 0))) == "base:2:5"
    assert str(locator.place(("list", 2))) == "own:4:5"
    assert str(locator.place(("gone",))) == "own:1:1"
