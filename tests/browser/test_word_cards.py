"""The card that says what a word means: by pointer, key and finger (WCAG 2.2, success criterion 1.4.13)."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

SESSION = "books/twenty-lamps/session-1.html"


def test_it_shows_under_the_pointer_and_can_be_pointed_at(page: Page, base: str) -> None:
    page.goto(base + SESSION)
    word = page.locator("a.word").first
    word.hover()
    card = page.get_by_role("tooltip")
    expect(card).to_be_visible()
    expect(word).to_have_attribute("aria-describedby", "meaning-card")
    card.hover()
    page.wait_for_timeout(500)
    expect(card).to_be_visible()
    page.mouse.move(5, 5)
    expect(card).to_have_count(0)
    assert word.get_attribute("aria-describedby") is None


def test_it_shows_on_focus_and_goes_with_escape(page: Page, base: str) -> None:
    page.goto(base + SESSION)
    word = page.locator("a.word").first
    word.focus()
    expect(page.get_by_role("tooltip")).to_be_visible()
    page.wait_for_timeout(600)
    expect(page.get_by_role("tooltip")).to_be_visible()
    page.keyboard.press("Escape")
    expect(page.get_by_role("tooltip")).to_have_count(0)
    expect(word).to_be_focused()


@pytest.mark.reads(has_touch=True, viewport={"width": 390, "height": 844})
def test_a_first_tap_shows_and_a_second_follows(page: Page, base: str) -> None:
    page.goto(base + SESSION)
    word = page.locator("a.word").first
    word.tap()
    expect(page.get_by_role("tooltip")).to_be_visible()
    expect(page).to_have_url(base + SESSION)
    word.tap()
    expect(page).to_have_url(re.compile("#word-"))
    expect(page.get_by_role("tooltip")).to_have_count(0)


@pytest.mark.reads(has_touch=True, viewport={"width": 390, "height": 844})
def test_a_tap_elsewhere_puts_it_away(page: Page, base: str) -> None:
    page.goto(base + SESSION)
    page.locator("a.word").first.tap()
    expect(page.get_by_role("tooltip")).to_be_visible()
    page.locator("h1").tap()
    expect(page.get_by_role("tooltip")).to_have_count(0)


def test_enter_follows_at_once(page: Page, base: str) -> None:
    page.goto(base + SESSION)
    page.locator("a.word").first.focus()
    page.keyboard.press("Enter")
    expect(page).to_have_url(re.compile("#word-"))


def test_the_card_stays_inside_a_small_screen(page: Page, base: str) -> None:
    page.set_viewport_size({"width": 320, "height": 640})
    page.goto(base + SESSION)
    for word in page.locator("a.word").all()[:8]:
        word.focus()
        box = page.get_by_role("tooltip").bounding_box()
        assert box
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= 320
