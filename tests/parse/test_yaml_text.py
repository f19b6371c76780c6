"""YAML with positions: what is refused, and where each thing is said to stand."""

from __future__ import annotations

import pytest
from storymaths.parse.document import parse_document
from storymaths.parse.yaml_text import BrokenYaml, YamlLocator, load

TEXT = """\
title: Harbour
reads:
  - pages: 1-3
    stops: [{page: 2, ask: Why?}]
note: >-
  folded over
  two lines
"""


@pytest.mark.parametrize(
    ("loc", "line", "column"),
    [
        (("title",), 1, 8),
        (("title", "[key]"), 1, 1),
        (("reads", 0, "pages"), 3, 12),
        (("reads", 0, "stops", 0, "ask"), 4, 28),
        (("reads", 0, "missing"), 3, 5),
        ((), 1, 1),
    ],
)
def test_places(loc: tuple[str | int, ...], line: int, column: int) -> None:
    place = YamlLocator("a.md", TEXT).place(loc)
    assert (place.line, place.column) == (line, column)


def test_lines_above_are_counted() -> None:
    assert YamlLocator("a.md", TEXT, lines_above=1).place(("title",)).line == 2


def test_words_within_a_folded_text_are_found_on_their_own_line() -> None:
    place = YamlLocator("a.md", TEXT).place(("note",), within="two")
    assert (place.line, place.column) == (7, 3)


def test_the_second_time_words_stand_there() -> None:
    place = YamlLocator("a.md", "say: one and one\n").place(("say",), within="one", before="one and ")
    assert place.column == 14


def test_keys_written_twice_are_told_at_any_depth() -> None:
    _, twice = load("a: 1\nb: {c: 1, c: 2}\na: 3\n")
    assert [(key.key, key.line, key.column) for key in twice] == [("c", 2, 11), ("a", 3, 1)]


@pytest.mark.parametrize("text", ["a: [1, 2", "a: b: c", "\ta: 1", "a: 'open", "- a\nb: 1"])
def test_text_that_is_not_yaml_says_where(text: str) -> None:
    with pytest.raises(BrokenYaml) as error:
        load(text)
    assert error.value.line >= 1
    assert error.value.reason


@pytest.mark.parametrize("text", ["date: 2027-02-30", "? [a, b]\n: 1", "a: !!python/object:os.system x"])
def test_values_that_cannot_be_made_are_no_traceback(text: str) -> None:
    with pytest.raises(BrokenYaml):
        load(text)


@pytest.mark.parametrize(
    "value", ["!!timestamp x", "!!bool x", '!!int ""', '!!float ""', "!!null x", "!!binary AAAA", "!mine x"]
)
def test_a_tag_that_would_make_something_else_of_a_value_is_told_where_it_stands(value: str) -> None:
    """Tags of YAML 1.1 (yaml.org/type), on values that are not of their type."""
    with pytest.raises(BrokenYaml, match=r"a tag \(!\)") as error:
        load(f"a: 1\nminutes: {value}")
    assert (error.value.line, error.value.column) == (2, 10)


def test_letters_beyond_ascii_do_not_shift_places() -> None:
    place = YamlLocator("a.md", "é: ½ ≠\nß: 𝟙 here\n").place(("ß",), within="here")
    assert (place.line, place.column) == (2, 6)


def test_a_bare_equals_sign_is_the_sign() -> None:
    """YAML 1.1 gives a plain = a type of its own (yaml.org/type/value.html), which no library makes anything of."""
    assert load("signs: [=, ≠]\nsame: =") == ({"signs": ["=", "≠"], "same": "="}, [])


def test_a_key_is_a_name_as_it_is_written_or_a_whole_number() -> None:
    assert load("no: 1\n~: 2\n2027-01-11: 3\n1.5: 4\n0x10: 5\n2: 6\n1000000000000000000000000000000: 7\n")[0] == {
        "no": 1,
        "~": 2,
        "2027-01-11": 3,
        "1.5": 4,
        "0x10": 5,
        2: 6,
        "1000000000000000000000000000000": 7,
    }


@pytest.mark.parametrize("key", ["~", "null", "no", "1.5", "2027-01-11", "7", "-7", "9" * 30])
def test_a_field_whose_name_is_no_word_is_told_where_it_stands(key: str) -> None:
    page = parse_document("content/a.md", f"---\nkind: page\ntitle: A\nsummary: B.\n{key}: x\n---\n\nC.\n")
    assert [(fault.kind, fault.detail, fault.place.line) for fault in page.faults] == [("unknown", key, 5)]
