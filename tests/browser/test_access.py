"""Every page usable by everyone: WCAG 2.2 AA as far as a program can see, by night and by day, narrow and wide."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import pairwise

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser, Page, expect

from .pages_of_every_kind import STATES, TEMPLATES

NARROW, WIDE = 320, 1280
AXE = {
    "runOnly": {
        "type": "tag",
        "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    },
    "rules": {"target-size": {"enabled": True}},  # in axe-core it is off unless asked for
    "resultTypes": ["violations"],
}
"""No rule is switched off."""
COLOURS = {
    "runOnly": {"type": "rule", "values": ["color-contrast", "link-in-text-block"]},
    "resultTypes": ["violations"],
}
"""By night nothing on a page is another but its colours."""


@contextmanager
def reading(browser: Browser, width: int, height: int = 800) -> Iterator[Page]:
    context = browser.new_context(viewport={"width": width, "height": height}, reduced_motion="reduce")
    yield context.new_page()
    context.close()


def faults(page: Page, by_night: bool = False) -> list[str]:
    """What axe-core finds wrong, a line each."""
    found = Axe().run(page, options=COLOURS if by_night else AXE).response["violations"]
    return [f"{fault['id']}: {node['html'][:160]} ({fault['help']})" for fault in found for node in fault["nodes"][:4]]


def faults_in_every_light(page: Page) -> dict[str, list[str]]:
    """What is wrong narrow and wide, by day and by night, with what it is wrong in."""
    found = {}
    for width in (NARROW, WIDE):
        for light in ("light", "dark"):
            page.set_viewport_size({"width": width, "height": 800})
            page.emulate_media(color_scheme=light)  # type: ignore[arg-type]
            if wrong := faults(page, by_night=light == "dark"):
                found[f"{width} {light}"] = wrong
    return found


@pytest.mark.parametrize("name", TEMPLATES)
def test_axe_finds_nothing(browser: Browser, base: str, name: str) -> None:
    with reading(browser, NARROW) as page:
        page.goto(base + TEMPLATES[name])
        assert faults_in_every_light(page) == {}


@pytest.mark.parametrize("name", STATES)
def test_axe_finds_nothing_in_any_state(browser: Browser, base: str, name: str) -> None:
    address, act = STATES[name]
    with reading(browser, NARROW) as page:
        page.goto(base + address)
        act(page)
        assert faults_in_every_light(page) == {}


@pytest.mark.parametrize("name", TEMPLATES)
def test_nothing_scrolls_sideways_at_320(browser: Browser, base: str, name: str) -> None:
    # 320 by 256 is also what is left of 1280 by 1024 at 400 %.
    with reading(browser, NARROW, height=256) as page:
        page.goto(base + TEMPLATES[name])
        assert page.evaluate("document.documentElement.scrollWidth") <= NARROW
        cut_off = page.evaluate(
            """() => [...document.querySelectorAll('main *')].filter((e) => {
                const box = e.getBoundingClientRect();
                return box.width && box.right > innerWidth + 1 && !e.closest('.table-frame, .strip, pre, .only-heard, .stacked thead');
            }).map((e) => e.outerHTML.slice(0, 120))"""
        )
        assert cut_off == []


@pytest.mark.parametrize("name", TEMPLATES)
def test_headings_stand_in_order(page: Page, base: str, name: str) -> None:
    page.goto(base + TEMPLATES[name])
    levels = page.evaluate(
        "() => [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter((h) => h.checkVisibility()).map((h) => +h.tagName[1])"
    )
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels)), levels


@pytest.mark.parametrize("name", TEMPLATES)
def test_tables_say_what_their_cells_are(page: Page, base: str, name: str) -> None:
    page.goto(base + TEMPLATES[name])
    for table in page.locator("table").all():
        assert table.locator("thead th").count() > 0
        assert table.locator("thead td").count() == 0


@pytest.mark.parametrize("name", ["front", "find", "session", "home activity", "book", "story", "words"])
def test_the_focus_can_be_seen_wherever_the_keyboard_leads(browser: Browser, base: str, name: str) -> None:
    with reading(browser, WIDE) as page:
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


@pytest.mark.parametrize("name", TEMPLATES)
def test_nothing_is_asked_of_another_host(browser: Browser, base: str, name: str) -> None:
    asked: list[str] = []
    with reading(browser, WIDE) as page:
        page.on("request", lambda request: asked.append(request.url))
        page.goto(base + TEMPLATES[name], wait_until="networkidle")
    assert [address for address in asked if not address.startswith((base, "data:", "blob:"))] == []


@pytest.mark.parametrize("name", TEMPLATES)
def test_pages_are_whole_without_scripts(browser: Browser, base: str, name: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(base + TEMPLATES[name])
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    for form in page.locator("main form:visible").all():
        assert form.get_attribute("action"), "a form that only scripts could answer"
    context.close()
