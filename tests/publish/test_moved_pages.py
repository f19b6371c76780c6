"""Pages that have moved: what stands where they were, and what is said of those that lead nowhere."""

from __future__ import annotations

from dataclasses import replace

import pytest
from project import collection
from storymaths.check.rules import check_all
from storymaths.model.collection import Collection
from storymaths.model.moved import Moved
from storymaths.model.problem import Place
from storymaths.parse.reference import MovedFile
from storymaths.publish.moved_pages import moved_pages
from storymaths.render.site import Site

SESSION = "books/cliff-house-lift/session-2.md"


def moved(was: str, to: str) -> Moved:
    return Moved.model_validate({"from": was, "to": to, "since": "2027-01-11"})


def with_moved(*pages: Moved) -> Collection:
    places = {page.was: Place("site_data/moved.yaml", 10 + n, 5) for n, page in enumerate(pages)}
    reference = replace(collection().reference, moved={page.was: page for page in pages}, moved_places=places)
    return replace(collection(), reference=reference)


def test_a_renamed_page_is_followed_at_once_and_says_so_in_words() -> None:
    page = moved_pages(Site(with_moved(moved("books/old-lift/session-9.md", SESSION))))["books/old-lift/session-9.html"]
    address = "../cliff-house-lift/session-2.html"
    assert f'<meta http-equiv="refresh" content="0; url={address}">' in page
    assert f'<link rel="canonical" href="{address}">' in page
    assert f'<a class="button" href="{address}">Who is worth Camel?</a>' in page
    assert "since 11 January 2027" in page
    assert "default-src 'self'" in page.replace("&#39;", "'")
    assert "<script" not in page


def test_a_retired_page_says_why_and_leads_nobody_away() -> None:
    retired = Moved.model_validate(
        {
            "from": "books/old.md",
            "retired": "Its game & its cards are in session 2.",
            "see": SESSION,
            "since": "2027-01-11",
        }
    )
    page = moved_pages(Site(with_moved(retired)))["books/old.html"]
    assert "refresh" not in page
    assert "Its game &amp; its cards are in session 2." in page
    assert 'href="cliff-house-lift/session-2.html"' in page


def test_the_list_for_a_web_server() -> None:
    lines = moved_pages(Site(with_moved(moved("books/old.md", SESSION))))["moved.map"].splitlines()
    assert lines[0].startswith("#")
    assert lines[1:] == ["/books/old.html /books/cliff-house-lift/session-2.html;"]


@pytest.mark.parametrize(
    ("pages", "says"),
    [
        ([("books/old.md", "books/nowhere.md")], ["There is no page content/books/nowhere.md"]),
        (
            [("books/old.md", "books/cliff-house-lift/sesion-2.md")],
            ['Did you mean "books/cliff-house-lift/session-2.md"?'],
        ),
        ([(SESSION, "words.md")], ["there is a page of that name"]),
        ([("words.md", SESSION)], ["there is a page of that name"]),
        ([("books/old.md", "books/old.md")], ["books/old.md has moved itself"]),
        ([("a.md", "b.md"), ("b.md", SESSION)], ["b.md has moved itself, to books/cliff-house-lift/session-2.md"]),
        ([("a.md", "b.md"), ("b.md", "a.md")], ["b.md has moved itself", "a.md has moved itself"]),
    ],
)
def test_moves_that_lead_nowhere(pages: list[tuple[str, str]], says: list[str]) -> None:
    problems = check_all(with_moved(*(moved(*page) for page in pages)))
    assert [problem.rule for problem in problems] == ["moved-page-broken"] * len(says)
    for number, (problem, words) in enumerate(zip(problems, says, strict=True)):
        assert words in problem.message
        assert problem.place == Place("site_data/moved.yaml", 10 + number, 5)


def test_moves_that_lead_on() -> None:
    assert check_all(with_moved(moved("books/old.md", SESSION), moved("old-words.md", "words.md"))) == []


@pytest.mark.parametrize(
    "entry",
    [
        {"from": "a.md", "since": "2027-01-11"},
        {"from": "a.md", "since": "2027-01-11", "to": "b.md", "see": "c.md", "retired": "Gone."},
        {"from": "a.md", "since": "2027-01-11", "retired": "Gone."},
        {"from": "../a.md", "since": "2027-01-11", "to": "b.md"},
        {"from": "a.html", "since": "2027-01-11", "to": "b.md"},
        {"from": "a.md", "since": "2027-01-11", "to": "https://example.org/"},
        {"from": "a.md", "since": "soon", "to": "b.md"},
        {"from": "a.md", "to": "b.md"},
    ],
)
def test_entries_that_say_too_little_or_too_much(entry: dict[str, str]) -> None:
    with pytest.raises(ValueError, match="moved"):
        MovedFile.model_validate({"moved": [entry]})
