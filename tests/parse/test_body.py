"""Markdown read once: blocks, runs and lines; and what is drawn of them held to a second renderer of CommonMark."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt
from storymaths.model.body import Body, Fence, Heading, List, Paragraph, Quotation, Table
from storymaths.model.document import Document
from storymaths.parse.body import read_body, read_text, words_of
from storymaths.parse.document import parse_document
from storymaths.render.body import draw_blocks
from storymaths.render.cleaning import cleaned

PAGE = "---\nkind: page\ntitle: A page\nsummary: Some words.\n---\n"


def only(body: Body) -> object:
    (block,) = body.blocks
    return block


def test_every_sort_of_block_knows_its_line() -> None:
    text = (
        "Above.\n\n## One\n\n1. a\n2. b\n\n   > said\n\n| A | B |\n| - | -: |\n| 1 | 2 |\n\n"
        "```maths\nkind: share\n```\n\n<!-- a note -->\n"
    )
    body = read_body(text, 10)
    assert [(type(block).__name__, block.line) for block in body.blocks] == [
        ("Paragraph", 10), ("Heading", 12), ("List", 14), ("Table", 19), ("Fence", 23), ("Markup", 27),
    ]  # fmt: skip
    assert [(fence.line, fence.text) for fence in body.activities] == [(23, "kind: share\n")]
    assert [block.line for block in body.every(Quotation)] == [17]
    table = next(body.every(Table))
    assert table.sides == ("", "right")
    assert len(table.rows) == 1


def test_runs_know_their_marks_links_and_lines() -> None:
    body = read_body('So *this* is\n[the **end**](a.md "T") `x` ![what](b.svg).')
    said = [(run.kind, run.text, run.line, [mark.name for mark in run.marks]) for run in body.runs]
    assert said == [
        ("words", "So ", 1, []),
        ("words", "this", 1, ["emphasis"]),
        ("words", " is", 1, []),
        ("break", "\n", 1, []),
        ("words", "the ", 2, ["link"]),
        ("words", "end", 2, ["link", "strong"]),
        ("words", " ", 2, []),
        ("code", "x", 2, []),
        ("words", " ", 2, []),
        ("picture", "what", 2, []),
        ("words", ".", 2, []),
    ]
    assert [(link.target, link.title, line) for link, line in body.links] == [("a.md", "T", 2)]
    assert [picture.target for picture in body.pictures] == ["b.svg"]


@pytest.mark.parametrize(
    ("text", "closed", "column"),
    [
        ("```maths\na: 1\n```", True, 1),
        ("```maths\na: 1\n", False, 1),
        ("```maths\na: 1", False, 1),
        ("     ```maths\n     a: 1\n     ```", True, 6),
        ("- In a list:\n\n  ```maths\n  a: 1\n  ```\n", True, 3),
        ("~~~ maths\na: 1\n~~~~~", True, 1),
    ],
)
def test_data_is_found_however_it_is_fenced(text: str, closed: bool, column: int) -> None:
    (fence,) = read_body(text).activities
    assert (fence.closed, fence.column, fence.text.strip()) == (closed, column, "a: 1")


def test_data_shown_inside_other_fences_is_none() -> None:
    assert read_body("````\n```maths\nkind: share\n```\n````\n").activities == ()


def test_gaps_are_words_wherever_they_stand() -> None:
    for text in ("___, £___ and ___.", "(___ + 4 = 7)", "___ is ___"):
        block = only(read_body(text))
        assert isinstance(block, Paragraph)
        assert [(run.text, run.marks) for run in block.runs] == [(text, ())]


def test_a_mistake_on_purpose_is_a_mark() -> None:
    block = only(read_body("See [4 + 5 = **8**]{wrong}."))
    assert isinstance(block, Paragraph)
    assert [(run.text, [mark.name for mark in run.marks]) for run in block.runs] == [
        ("See ", []), ("4 + 5 = ", ["wrong"]), ("8", ["wrong", "strong"]), (".", []),
    ]  # fmt: skip


def test_headings_have_names_of_their_own() -> None:
    body = read_body("## Same\n\n## Same\n\n## Mine {#own}\n")
    assert [(one.anchor, one.words) for one in body.every(Heading)] == [
        ("same", "Same"),
        ("same-2", "Same"),
        ("own", "Mine"),
    ]


def test_words_alone() -> None:
    assert words_of("A **bold**\nline with `code`, <kbd>a</kbd> and [a link](b.md) ___") == (
        "A bold line with code, a and a link ___"
    )
    assert words_of("Plain  words") == "Plain words"


@pytest.mark.parametrize("text", ["124.", "- 4", "−4", "3 < 4", "#tag", "> 4"])
def test_a_number_or_a_sign_alone_is_no_list(text: str) -> None:
    words = "".join(run.text for run in read_text(text).runs)
    assert words == (text if text not in ("- 4", "> 4") else "4")


def test_words_are_placed_where_they_stand_and_not_in_the_data_above() -> None:
    body = "\n```maths\nfacts: {gull: 250}\n```\n\nNow make 250, and\nthen **4** + 5 = 8.\n"
    page = parse_document("content/a.md", PAGE + body)
    assert isinstance(page, Document)
    assert str(page.place_in_prose(page.prose.text.index("250"), "250")) == "content/a.md:11:10"
    at = page.prose.text.index("4 + 5 = 8")
    assert page.place_in_prose(at, "4 + 5 = 8").line == 12
    assert page.prose.text.count("250") == 1, "data is no prose"


SECOND = MarkdownIt("commonmark").enable("table").disable("code")
PIECES = st.sampled_from(
    [*"ab 12.,*_`[]()!<>#-+|\n\n\\&;:", "**", "\n- ", "\n1. ", "\n> ", "\n```\n", "[a](b)", "![a](b)", "<br>", "| a | b |\n|-|-|\n"]
)  # fmt: skip


def squeezed(html: str) -> str:
    html = re.sub(r'<img src="([^"]*)" alt="([^"]*)"', r'<img alt="\2" src="\1"', html)
    html = re.sub(r' (?:id|class|tabindex|role|aria-label)="[^"]*"|</?div[^>]*>', "", html)
    return re.sub(r"\s+", "", html)


@given(st.lists(PIECES, max_size=40).map("".join))
def test_what_is_drawn_is_what_another_renderer_draws(text: str) -> None:
    # The renderer of markdown-it-py, written by others from the same tokens; gaps and mistakes are ours alone.
    if "___" in text or "{" in text:
        return
    expected = cleaned(SECOND.render(text))
    assert squeezed(draw_blocks(read_body(text).blocks, "a.md")) == squeezed(expected)


@given(st.lists(PIECES, max_size=40).map("".join))
def test_lines_are_those_of_the_text(text: str) -> None:
    lines = text.split("\n")
    for block in read_body(text).every(Fence):
        assert lines[block.line - 1][block.column - 1 :].startswith(("```", "~~~"))
    for one in read_body(text).every(List):
        assert 1 <= one.line <= len(lines)


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("9. A child who says 15 has added.", ["Paragraph"]),
        ("9) Nine.\nAnd more.", ["Paragraph"]),
        ("1. One.\n2. Two.", ["List"]),
        ("9.5 is more.", ["Paragraph"]),
    ],
)
def test_an_answer_that_begins_with_its_number_is_no_list_of_one(text: str, kinds: list[str]) -> None:
    found = read_text(text)
    assert [type(block).__name__ for block in found.blocks] == kinds
    assert kinds == ["List"] or words_of(text).startswith(text[:2])
