"""Content files into the model: what is told of files that are not as they should be."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from project import text_of
from storymaths.model.document import Document, Unread
from storymaths.parse.document import parse_document

S2 = "books/cliff-house-lift/session-2.md"


@pytest.mark.parametrize(
    ("text", "line", "words"),
    [
        ("", 1, "does not open with front matter"),
        ("# A heading\n", 1, "does not open with front matter"),
        ("---\nkind: page\ntitle: A\n", 1, "never closed"),
        ("---\n- a\n---\n", 2, "it has no fields"),
        ("---\nkind: page\n title: A\n---\n", 3, ""),
    ],
)
def test_front_matter_that_cannot_be_read(text: str, line: int, words: str) -> None:
    page = parse_document("content/a.md", text)
    assert isinstance(page, Unread)
    (fault,) = page.faults
    assert (fault.kind, fault.place.line) == ("broken", line)
    assert words in fault.detail


def test_an_unknown_key_leaves_the_rest_to_be_checked() -> None:
    page = parse_document("content/a.md", "---\nkind: page\ntitle: A\nsummary: B\ncolour: red\n---\n")
    assert isinstance(page, Document)
    assert [(fault.kind, fault.field, fault.place.line) for fault in page.faults] == [("unknown", "colour", 5)]


def test_windows_line_ends_and_a_byte_order_mark_do_no_harm() -> None:
    text = "\ufeff" + text_of(S2).replace("\n", "\r\n")
    assert isinstance(parse_document("content/a.md", text), Document)


def test_faults_of_every_sort_are_told_at_once() -> None:
    text = "---\nkind: home\nbook: 3\ntitle: ''\nnumber: two\nyear: 9\nminutes: 12\nminutes: 13\npage: 3\n---\n"
    page = parse_document("content/a.md", text)
    assert isinstance(page, Unread)
    assert {fault.kind for fault in page.faults} == {"duplicate", "mistyped", "missing", "unknown"}
    assert all(fault.place.line > 1 for fault in page.faults)


@given(st.data())
def test_no_change_to_a_file_brings_the_reader_down(data: st.DataObject) -> None:
    text = text_of(S2)
    at = data.draw(st.integers(0, len(text)))
    cut = data.draw(st.integers(0, 40))
    put = data.draw(st.text(max_size=12))
    page = parse_document("content/a.md", text[:at] + put + text[at + cut :])
    assert isinstance(page, Document | Unread)


@pytest.mark.parametrize("key", ["0[:", "function-before[x]", "a.b", "''"])
def test_strange_keys_are_only_unknown_fields(key: str) -> None:
    page = parse_document("content/a.md", f'---\nkind: page\ntitle: A\nsummary: B\n"{key}": 1\n---\n')
    assert isinstance(page, Document)
    assert [(fault.kind, fault.place.line) for fault in page.faults] == [("unknown", 5)]
