"""Pages by keyboard and by ear. What holds for every page is in ``test_every_page.py``."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

from .axe import WIDE
from .pages_of_every_kind import TEMPLATES


@pytest.mark.parametrize("name", ["front", "find", "session", "home activity", "book", "story", "words"])
def test_the_focus_can_be_seen_wherever_the_keyboard_leads(page: Page, base: str, name: str) -> None:
    page.set_viewport_size({"width": WIDE, "height": 800})
    page.emulate_media(reduced_motion="reduce")
    page.goto(base + TEMPLATES[name])
    seen = 0
    for _ in range(60):
        page.keyboard.press("Tab")
        focus = page.evaluate(_FOCUS)
        if focus is None:
            break
        assert focus["ring"], f"no ring on {focus['html']}"
        assert focus["inside"], f"out of sight: {focus['html']}"
        seen += 1
    assert seen > 4


_FOCUS = """() => {
    const e = document.activeElement;
    if (!e || e === document.body) return null;
    const style = getComputedStyle(e), box = e.getBoundingClientRect();
    return {
        ring: style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2,
        inside: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
        html: e.outerHTML.slice(0, 120),
    };
}"""


def test_the_first_tab_leads_past_the_links_at_the_top(page: Page, base: str) -> None:
    page.goto(base + TEMPLATES["session"])
    page.keyboard.press("Tab")
    expect(page.get_by_role("link", name="Skip to the page")).to_be_focused()
    page.keyboard.press("Enter")
    expect(page.locator("main")).to_be_focused()


def test_maths_is_heard_as_it_is_said(page: Page, base: str) -> None:
    # Chromium's own reckoning of names is what it hands to a screen reader.
    page.goto(base + TEMPLATES["session"])
    heard = page.locator("main").aria_snapshot()
    assert "9 equals 5 add 4" in heard
    assert "9 is not equal to 5 add 3" in heard
    assert "9 equals 6 add blank" in heard
    assert not re.search(r"img \"[^\"]*[=≠×÷]", heard)
