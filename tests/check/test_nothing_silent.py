"""What is nearly right is told where it stands: links and pictures in every form there is, fences, comments, empty sections.

The forms are those of CommonMark 0.31.2, chapters 6.3 (links), 6.4 (images), 6.6 (raw HTML), 4.5 (fences) and 4.6 (HTML blocks).
"""

from __future__ import annotations

import json

import pytest
from project import collection, text_of
from storymaths.activities.on_pages import check_activities, work_out_pages
from storymaths.check import (
    activity_unread,
    address_forbidden,
    html_not_on_list,
    link_broken,
    picture_missing,
    picture_without_words,
    section_empty,
)
from storymaths.model.collection import Collection
from storymaths.model.document import Document
from storymaths.parse.collection import read_page

PATH = "about-the-quay.md"
SUMMARY = "summary: Where these books come from, and who is made up."
RULES = (
    activity_unread, address_forbidden, html_not_on_list, link_broken, picture_missing, picture_without_words, section_empty,
)  # fmt: skip


def told(text: str) -> list[tuple[str, int]]:
    """The rules that speak of a page, and the lines they name."""
    page = read_page(f"content/{PATH}", text.encode(), collection().reference.limits.files)
    assert isinstance(page, Document)
    small = Collection((page,), (), collection().files, collection().reference)
    return sorted({(problem.rule, problem.place.line) for rule in RULES for problem in rule.check(small)})


def told_at_the_end(words: str) -> list[str]:
    """The rules that speak of some words at the end of a page, which must name a line of theirs."""
    body = text_of(PATH).rstrip("\n")
    first = body.count("\n") + 3
    found = told(f"{body}\n\n{words}\n")
    assert all(first <= line <= first + words.count("\n") for _, line in found), found
    return [rule for rule, _ in found]


LINKS = [
    "[x](nowhere.md)", "[x](nowhere.md 'a')", "[x](nowhere.md\n'a')", "[x](<nowhere.md>)", "[x][y]\n\n[y]: nowhere.md",
    "[y]\n\n[y]: nowhere.md 'a'", "[y][]\n\n[y]: <nowhere.md>", "[a [b] c](nowhere.md)", "[x\ny](nowhere.md)", "[x]()",
    "[x](<>)", "[*x*](./nowhere.md#a)", "[x](/nowhere.md)", "[x](#nowhere)", "[x](nowhere%2emd)", "<a href=nowhere.md>x</a>",
    "<a\nhref='nowhere.md'>x</a>", '<a href="">x</a>', "- > [x](nowhere.md)", "| a |\n|-|\n| [x](nowhere.md) |",
]  # fmt: skip
PICTURES = [
    "![a](nope.svg)", "![a](nope.svg 'b')", "![a\nb](<nope.svg>)", "![a][p]\n\n[p]: nope.svg", "![p]\n\n[p]: nope.svg",
    "![a]()", "<img src=nope.svg alt=a>", "<img alt=a>",
]  # fmt: skip
RIGHT = [
    "[x](words.md)", "[x][y]\n\n[y]: words.md", "<a href='#who-lives-there'>x</a>", "[x](https://example.org)",
    "[x](mailto:a@example.org)", "~~~\nwords shown as they are\n~~~", "```yaml\nkind: session\n```",
    "<!-- a note of the author's -->", "## More\n\nWords. <!-- a note -->", "![A boat](books/ferry-fare/cover.svg)",
    "~~~~\n```maths\nkind: bonds\n```\n~~~~",
]  # fmt: skip


@pytest.mark.parametrize("form", LINKS)
def test_a_link_to_nowhere_is_told_in_every_form_in_the_body_and_above_it(form: str) -> None:
    assert told_at_the_end(form) == ["link-broken"]
    front = text_of(PATH).replace(SUMMARY, f"summary: {json.dumps(f'See {form}')}")
    assert told(front) == [("link-broken", 4)]


@pytest.mark.parametrize("form", PICTURES)
def test_a_picture_that_is_not_there_is_told_in_every_form_in_the_body_and_above_it(form: str) -> None:
    assert told_at_the_end(form) == ["picture-missing"]
    front = text_of(PATH).replace(SUMMARY, f"summary: {json.dumps(f'See {form}')}")
    assert ("picture-missing", 4) in told(front)


@pytest.mark.parametrize(
    ("words", "rule"),
    [
        ("[x][nowhere]", "link-broken"),
        ('<a href="books/ferry-fare/index.md">x</a>', "link-broken"),
        ("[x](http://example.org)", "address-forbidden"),
        ("![](books/ferry-fare/cover.svg)", "picture-without-words"),
        ("```maths here\nkind: bonds\n```", "activity-unread"),
        ("```\ntitle: A\nkind: bonds\n```", "activity-unread"),
        ("~~~\n\n```maths\nkind: bonds\n```", "activity-unread"),
        ("<!--\n```maths\nkind: bonds\n```\n-->", "activity-unread"),
        ("<!-- not yet\n\nMore words.", "activity-unread"),
        ("## More", "section-empty"),
        ("## More\n\n<!-- to be written -->", "section-empty"),
    ],
)
def test_what_is_nearly_right_is_told(words: str, rule: str) -> None:
    assert rule in told_at_the_end(words)


def test_a_link_in_a_summary_is_told_though_it_leads_somewhere_from_its_own_page() -> None:
    assert told(text_of(PATH).replace(SUMMARY, 'summary: "See [x](words.md)"')) == [("link-broken", 4)]


@pytest.mark.parametrize("words", RIGHT)
def test_what_is_right_is_left_alone(words: str) -> None:
    assert told_at_the_end(words) == []


def test_a_fact_that_the_cast_of_an_activity_lacks_is_told_on_a_page_of_no_book() -> None:
    lacking = "```maths\nkind: compare\ntitle: T\nfact: mass\ncast: {gull: {mass: 2}, crab: {legs: 3}}\nstatements: [gull < crab]\n```"
    page = read_page(f"content/{PATH}", f"{text_of(PATH)}\n\n{lacking}\n".encode(), collection().reference.limits.files)
    assert isinstance(page, Document)
    small = Collection((page,), (), collection().files, collection().reference)
    assert "activity-fact-missing" in {problem.rule for problem in check_activities(work_out_pages(small))}
