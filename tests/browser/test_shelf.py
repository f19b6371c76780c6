"""Books a school owns: the answers on the device are those of the build, and what is ticked stays in the address."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from random import Random
from typing import Any

import pytest
from covers.made_up_shelves import CAPS, a_large_collection, a_small_collection, books_by_chance
from playwright.sync_api import Page, expect
from project import collection
from storymaths.covers.shelf import Shelf, ShelfBook, best_next, shortest_shelf
from storymaths.covers.shelves import year_shelves

from .pages_of_every_kind import TEMPLATES

SHELF = TEMPLATES["shelf"]
_ANSWER = """({question, owned, caps}) => {
    const { shelf } = window.storymaths, ids = new Set(owned);
    const answer = shelf.shortest(question, ids, caps);
    const id = (place) => question.books[place][0], code = (place) => question.objectives[place][0];
    return {
        ...answer,
        ways: answer.ways.map((way) => way.map(id)),
        next: shelf.bestNext(question, ids).map(([place, adds]) => [id(place), adds.map(code).sort()]),
    };
}"""


def on_the_device(page: Page, books: Sequence[ShelfBook], owned: frozenset[str], caps: Any = CAPS) -> dict[str, Any]:
    codes = sorted(frozenset().union(*(book.teaches for book in books)))
    question = {
        "objectives": [[code, code, ""] for code in codes],
        "books": [[book.id, book.minutes, sorted(codes.index(code) for code in book.teaches)] for book in books],
    }
    return page.evaluate(_ANSWER, {"question": question, "owned": sorted(owned), "caps": caps.model_dump()})


def by_the_build(books: Sequence[ShelfBook], owned: frozenset[str], caps: Any = CAPS) -> dict[str, Any]:
    shelf: Shelf = shortest_shelf(books, caps, owned)
    return {
        "books": shelf.books,
        "minutes": shelf.minutes,
        "ways": [list(way) for way in shelf.ways],
        "more": shelf.more,
        "proved": shelf.proved,
        "next": [[gain.id, sorted(gain.adds)] for gain in best_next(books, owned)],
    }


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


def test_made_up_collections_are_answered_as_the_build_answers(page: Page, base: str) -> None:
    page.goto(base + SHELF)
    for number in range(150):
        books, owned = a_small_collection(number)
        assert on_the_device(page, books, owned) == by_the_build(books, owned), number


@pytest.mark.parametrize("number", range(4))
def test_sixty_books_are_answered_as_the_build_answers(page: Page, base: str, number: int) -> None:
    page.goto(base + SHELF)
    books = a_large_collection(number)
    owned = frozenset(book.id for book in books[:5])
    assert on_the_device(page, books, owned) == by_the_build(books, owned)


def test_it_gives_up_where_the_build_gives_up(page: Page, base: str) -> None:
    page.goto(base + SHELF)
    like = [ShelfBook(f"{code}{n}", frozenset({code}), 100) for code in "abcdefgh" for n in range(9)]
    hasty = CAPS.model_copy(update={"tries": 20, "ways": 6})
    for books in (like, a_large_collection(5), books_by_chance(Random(3), 40, 30, 2, 6)):
        assert on_the_device(page, books, frozenset(), hasty) == by_the_build(books, frozenset(), hasty)


def test_ticking_a_book_changes_what_is_left_to_buy(page: Page, base: str) -> None:
    page.goto(base + SHELF)
    ask(page, "Year 1, National curriculum")
    buy = page.locator(".shelf-part", has=page.get_by_role("heading", name="The fewest to buy"))
    expect(buy.get_by_role("link", name="The Ferry Fare")).to_be_visible()
    own(page, "The Ferry Fare")
    have = page.locator(".shelf-part", has=page.get_by_role("heading", name="What you cover"))
    expect(have).to_contain_text("1 of your books teaches")
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
