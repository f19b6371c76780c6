"""A story one page at a time: by button, key, swipe, link and voice; and as a column without script."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Page, expect

STORY = "books/twenty-lamps/story.html"
PAGES = 14
A_VOICE = """
  window.said = [];
  window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
  Object.defineProperty(window, "speechSynthesis", { value: {
    getVoices: () => [
      { name: "far", lang: "en-GB", localService: false }, { name: "deutsch", lang: "de-DE", localService: true },
      { name: "here", lang: "en-US", localService: true },
    ],
    speak: (saying) => window.said.push([saying.voice.name, saying.text]),
    cancel: () => window.said.push("stopped"),
    addEventListener: () => {},
  } });
"""


def shown(page: Page) -> list[str]:
    return [spread.get_attribute("id") or "" for spread in page.locator(".spread").all() if spread.is_visible()]


def test_one_page_at_a_time_by_button(page: Page, base: str) -> None:
    page.goto(base + STORY)
    assert shown(page) == ["page-1"]
    following = page.get_by_role("button", name="Next")
    following.click()
    assert shown(page) == ["page-2"]
    expect(page).to_have_url(re.compile("#page-2$"))
    expect(page.locator(".story-place")).to_have_text(f"Page 2 of {PAGES}")
    expect(following).to_be_focused()
    page.get_by_role("button", name="Previous").click()
    assert shown(page) == ["page-1"]


def test_the_ends_hold_and_keep_the_focus(page: Page, base: str) -> None:
    page.goto(f"{base}{STORY}#page-{PAGES}")
    following = page.get_by_role("button", name="Next")
    expect(following).to_have_attribute("aria-disabled", "true")
    following.focus()
    page.keyboard.press("Enter")
    assert shown(page) == [f"page-{PAGES}"]
    expect(following).to_be_focused()


def test_arrow_keys_turn_pages_and_leave_other_keys_alone(page: Page, base: str) -> None:
    page.goto(base + STORY)
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowLeft")
    assert shown(page) == ["page-2"]
    page.keyboard.press("Control+ArrowRight")
    assert shown(page) == ["page-2"]


def test_a_link_to_a_page_opens_it_and_goes_there(page: Page, base: str) -> None:
    page.goto(f"{base}{STORY}#page-5")
    assert shown(page) == ["page-5"]
    expect(page.locator("#page-5")).to_be_focused()
    page.evaluate("location.hash = '#page-9'")
    expect(page.locator("#page-9")).to_be_focused()
    page.go_back()
    expect(page.locator("#page-5")).to_be_visible()
    assert shown(page) == ["page-5"]


@pytest.mark.reads(has_touch=True, viewport={"width": 390, "height": 844})
def test_a_swipe_turns_the_page_and_a_scroll_does_not(page: Page, base: str) -> None:
    page.goto(base + STORY)
    touch = page.context.new_cdp_session(page)

    def drag(start: tuple[int, int], end: tuple[int, int]) -> None:
        for kind, points in (("touchStart", [start]), ("touchMove", [end]), ("touchEnd", [])):
            touch.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": y} for x, y in points]})

    drag((300, 400), (120, 410))
    expect(page.locator("#page-2")).to_be_visible()
    drag((120, 400), (300, 410))
    expect(page.locator("#page-1")).to_be_visible()
    drag((200, 500), (140, 300))
    assert shown(page) == ["page-1"]


def test_the_whole_story_can_be_had_as_a_column(page: Page, base: str) -> None:
    page.goto(base + STORY)
    page.get_by_role("button", name="All pages").click()
    assert len(shown(page)) == PAGES
    page.get_by_role("button", name="One page at a time").click()
    assert shown(page) == ["page-1"]


@pytest.mark.reads(java_script_enabled=False)
def test_without_script_it_is_a_column(page: Page, base: str) -> None:
    page.goto(base + STORY)
    assert len(shown(page)) == PAGES
    assert page.get_by_role("button").count() == 0


def test_it_prints_whole(page: Page, base: str) -> None:
    page.goto(base + STORY)
    page.emulate_media(media="print")
    assert len(shown(page)) == PAGES
    assert not page.locator(".story-bar").is_visible()


def test_a_voice_of_the_device_reads_the_page_and_stops_when_it_is_turned(page: Page, base: str) -> None:
    page.add_init_script(A_VOICE)
    page.goto(base + STORY)
    page.get_by_role("button", name="Read aloud").click()
    said = page.evaluate("window.said")
    assert said[-1][0] == "here", "a voice elsewhere would be sent the words"
    assert page.locator("#page-1 p").first.inner_text()[:20] in said[-1][1]
    page.get_by_role("button", name="Next").click()
    assert page.evaluate("window.said").pop() == "stopped"
    expect(page.get_by_role("button", name="Read aloud")).to_be_visible()


def test_without_a_voice_of_the_device_there_is_no_such_button(page: Page, base: str) -> None:
    page.add_init_script(A_VOICE.replace("localService: true", "localService: false"))
    page.goto(base + STORY)
    expect(page.get_by_role("button", name="Next")).to_be_visible()
    assert page.get_by_role("button", name="Read aloud").count() == 0


def test_nothing_moves_for_those_who_ask_for_stillness(page: Page, base: str) -> None:
    for stillness, moves in (("reduce", "none"), ("no-preference", "page-in")):
        page.emulate_media(reduced_motion=stillness)  # type: ignore[arg-type]
        page.goto(base + STORY)
        assert page.evaluate("getComputedStyle(document.querySelector('.spread.open')).animationName") == moves


def test_a_turned_page_is_read_out(page: Page, base: str) -> None:
    page.goto(base + STORY)
    expect(page.locator(".story")).to_have_attribute("aria-live", "polite")
    expect(page.locator(".story-place")).to_have_attribute("role", "status")


def test_it_fits_a_small_phone(page: Page, base: str) -> None:
    page.set_viewport_size({"width": 320, "height": 640})
    page.goto(base + STORY)
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
