"""Books a school owns: the browser works out what the build does, and what is ticked stays in the address."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Any

import pytest
from covers.made_up_shelves import CAPS, a_large_collection
from playwright.sync_api import Page, expect
from project import collection
from storymaths.covers.shelf import ShelfBook, as_question, shortest_shelf
from storymaths.covers.shelves import year_shelves
from storymaths.scripts.join import joined

from .pages_of_every_kind import TEMPLATES

SHELF = TEMPLATES["shelf"]


def on_the_device(page: Page, books: Sequence[ShelfBook], owned: frozenset[str]) -> dict[str, Any]:
    asked = [as_question(books), sorted(owned), CAPS.model_dump()]
    answer: dict[str, Any] = page.evaluate(f"(asked) => {joined('shelf/sums.js')}.shortest(...asked)", asked)
    return {**answer, "ways": [[books[place].id for place in way] for way in answer["ways"]]}


def by_the_build(books: Sequence[ShelfBook], owned: frozenset[str]) -> dict[str, Any]:
    shelf = shortest_shelf(books, CAPS, owned)
    return {**asdict(shelf), "ways": [list(way) for way in shelf.ways]}


def own(page: Page, *titles: str) -> None:
    for title in titles:
        page.get_by_label(title).check()


def ask(page: Page, question: str) -> None:
    page.get_by_label("For", exact=True).select_option(label=question)


def test_the_collection_is_answered_as_the_build_answers(page: Page, base: str) -> None:
    page.goto(base + SHELF)
    for asked in year_shelves(collection()).values():
        ids = [book.id for book in asked.books]
        for owned in (frozenset[str](), *(frozenset({book}) for book in ids), frozenset(ids)):
            assert on_the_device(page, asked.books, owned) == by_the_build(asked.books, owned)


def test_sixty_books_are_answered_as_the_build_answers(page: Page, base: str) -> None:
    page.goto(base + SHELF)
    books = a_large_collection(0)
    owned = frozenset(book.id for book in books[:5])
    assert on_the_device(page, books, owned) == by_the_build(books, owned)


def test_ticking_a_book_changes_what_is_left_to_buy(page: Page, base: str) -> None:
    page.goto(base + SHELF)
    ask(page, "Year 1, National curriculum")
    buy = page.locator(".shelf-part", has=page.get_by_role("heading", name="The fewest to buy"))
    expect(buy.get_by_role("link", name="The Ferry Fare")).to_be_visible()
    own(page, "The Ferry Fare")
    have = page.locator(".shelf-part", has=page.get_by_role("heading", name="What your books teach"))
    expect(have).to_contain_text("Yours teach")
    expect(buy.get_by_role("link", name="The Ferry Fare")).to_have_count(0)


def test_what_is_ticked_stays_in_the_address_and_can_be_forgotten(page: Page, base: str) -> None:
    asked: list[str] = []
    page.goto(base + SHELF, wait_until="networkidle")
    page.on("request", lambda request: asked.append(request.url))
    own(page, "The Ferry Fare")
    expect(page.get_by_role("status").filter(has_text="with 1 of")).to_be_visible()
    assert [url for url in asked if not url.endswith("mark.svg")] == []  # the browser's own wish, for the tab's picture
    assert page.url == f"{base}{SHELF}#own=ferry-fare"
    page.reload()
    expect(page.get_by_label("The Ferry Fare")).to_be_checked()
    page.get_by_role("button", name="Forget them").click()
    expect(page.get_by_label("The Ferry Fare")).not_to_be_checked()
    assert page.url == f"{base}{SHELF}"


@pytest.mark.reads(java_script_enabled=False)
def test_without_script_the_shelves_are_there(page: Page, base: str) -> None:
    page.goto(base + SHELF)
    expect(page.locator(".shelf-without")).to_be_visible()
    expect(page.get_by_role("heading", name="Year 2")).to_be_visible()
    expect(page.locator(".shelf-ways").first).to_be_visible()


def test_it_works_from_a_memory_stick(page: Page, site: Path) -> None:
    page.goto((site / SHELF).as_uri())
    own(page, "The Ferry Fare")
    expect(page.get_by_role("heading", name="The fewest to buy")).to_be_visible()


def test_on_paper_are_the_answers_and_not_the_form(page: Page, base: str) -> None:
    page.goto(base + SHELF)
    own(page, "The Ferry Fare")
    expect(page.get_by_role("heading", name="The fewest to buy")).to_be_visible()
    page.emulate_media(media="print")
    expect(page.get_by_role("heading", name="The fewest to buy")).to_be_visible()
    expect(page.get_by_label("The Ferry Fare")).to_be_hidden()
    expect(page.get_by_role("button", name="Forget them")).to_be_hidden()
