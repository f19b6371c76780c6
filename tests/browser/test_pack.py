"""A pack unpacked onto a memory stick and opened in a browser: it finds, teaches and prints, and asks nobody for anything."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

import pytest
from packed import SERIES, unpacked
from playwright.sync_api import Page, expect

from .axe import faults

ROOM = "books/cliff-house-lift/session-2"


@pytest.fixture
def stick(page: Page) -> Iterator[Page]:
    """A page that fails the test if anything is asked of anywhere but the pack, or is not there."""
    asked: list[str] = []
    wrong: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.on("requestfailed", lambda request: wrong.append(f"{request.url}: {request.failure}"))
    page.on("pageerror", lambda error: wrong.append(str(error)))
    page.on("console", lambda message: wrong.append(message.text) if message.type == "error" else None)
    yield page
    inside = unpacked().as_uri() + "/"
    assert [url for url in asked if not url.startswith((inside, "blob:", "data:"))] == []
    assert wrong == []
    assert asked


def address(name: str) -> str:
    return (unpacked() / name).as_uri()


def test_from_the_first_page_to_the_series_and_a_session(stick: Page) -> None:
    stick.goto(address("START-HERE.html"))
    expect(stick).to_have_title("Start here: A term on Plover Quay")
    colour = stick.locator("body").evaluate("body => getComputedStyle(body).backgroundColor")
    assert colour != "rgba(0, 0, 0, 0)", "it has its styles"
    stick.get_by_role("link", name="The series").click()
    expect(stick.locator("h1")).to_have_text("A term on Plover Quay")
    stick.get_by_role("link", name="The Cliff House Lift").first.click()
    stick.get_by_role("link", name="Who is worth Camel?").first.click()
    expect(stick.locator("h1")).to_have_text("Who is worth Camel?")
    stick.locator(".get-ready summary").first.click()
    stick.get_by_label("Children in the class").fill("27")
    stick.get_by_role("button", name="Add to my plan").click()
    stick.locator(".top").get_by_role("link", name="My plan").click()
    expect(stick.locator(".plan-ideas h3")).to_have_text(["Who is worth Camel?"])


def test_the_finder_finds_by_words_and_only_what_is_packed(stick: Page) -> None:
    stick.goto(address("pages/find.html"))
    expect(stick.locator(".finder.ready")).to_be_visible()
    stick.get_by_label("Looking for").fill("camel")
    expect(stick.get_by_role("link", name="Who is worth Camel?")).to_be_visible()
    stick.get_by_label("Looking for").fill("pegs")
    expect(stick.locator(".results")).not_to_contain_text("Eight pegs, no gaps")
    stick.get_by_label("Looking for").fill("")
    books = {link.get_attribute("href") or "" for link in stick.locator(".results .card a").all()}
    assert books
    assert all("cliff-house-lift" in href or "twenty-lamps" in href for href in books)


def test_a_sheet_is_there_to_print(stick: Page) -> None:
    stick.goto(address(f"pages/{ROOM}.html"))
    link = stick.locator(".to-print a").first
    expect(link).to_be_visible()
    href = link.evaluate("link => link.href")
    sheet = unpacked() / href.removeprefix(unpacked().as_uri() + "/")
    assert sheet.read_bytes().startswith(b"%PDF-")
    stick.locator(".to-print summary").click()
    shown = stick.locator(".to-print img").first
    shown.scroll_into_view_if_needed()
    expect(shown).to_have_js_property("complete", True)
    assert shown.evaluate("image => image.naturalWidth") > 0


def test_a_plan_of_the_weeks_is_made(stick: Page) -> None:
    stick.goto(address(f"pages/series/{SERIES}.html"))
    stick.get_by_label("First day").fill("2027-01-11")
    stick.get_by_role("button", name="Lay the sessions").click()
    expect(stick.locator(".weeks-said")).to_contain_text("from Monday 11 January 2027")


def test_each_class_screen_opens(stick: Page) -> None:
    stick.goto(address("START-HERE.html"))
    links = stick.get_by_role("link", name="on the class screen").evaluate_all("links => links.map(link => link.href)")
    screens = sorted(path.as_uri() for path in (unpacked() / "pages" / "books").rglob("*-screen.html"))
    assert sorted(links) == screens
    assert len(screens) == 8
    for screen in screens:
        stick.goto(screen)
        expect(stick.locator("body")).to_have_class("kind-screen")
        expect(stick.locator("main")).to_be_visible()
    stick.keyboard.press("ArrowRight")
    expect(stick.locator("main")).to_be_visible()


@pytest.mark.parametrize("light", ["light", "dark"])
@pytest.mark.parametrize("width", [320, 1280])
def test_axe_finds_nothing_on_the_first_page(page: Page, light: Literal["light", "dark"], width: int) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    page.emulate_media(color_scheme=light)
    page.goto(address("START-HERE.html"))
    assert faults(page) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= width


def test_a_story_is_read_without_a_server(stick: Page) -> None:
    stick.goto(address("pages/books/cliff-house-lift/story.html"))
    expect(stick.locator(".spread.open img")).to_be_visible()
    assert stick.locator(".spread.open img").evaluate("image => image.naturalWidth") > 0
