"""The class screen: turned by keys, notes away, a timer, what it remembers; from a memory stick and without scripts."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from .screen_driver import boards_on

SCREEN = "books/cliff-house-lift/session-3-screen.html"


@pytest.fixture
def screen(page: Page, base: str) -> Page:
    page.goto(base + SCREEN)
    return page


def shown(page: Page) -> str:
    return page.locator(".slide:visible > h2, .slide:visible > div > h2").inner_text()


def show(page: Page, title: str) -> None:
    """Turns to the slide of that title."""
    value = page.locator(".where option").filter(has_text=title).first.get_attribute("value")
    page.locator(".where").select_option(value)


def test_turned_by_the_keys_a_clicker_sends(screen: Page) -> None:
    first = shown(screen)
    for forward, backward in (("PageDown", "PageUp"), ("ArrowRight", "ArrowLeft"), (" ", "ArrowLeft")):
        screen.locator("body").press(forward)
        assert shown(screen) != first
        screen.locator("body").press(backward)
        assert shown(screen) == first
    screen.locator("body").press("End")
    assert shown(screen) == "A question to end on"
    expect(screen.get_by_role("button", name="Next")).to_be_disabled()


def test_notes_are_away_until_asked_for_and_go_when_the_slide_is_turned(screen: Page) -> None:
    show(screen, "Stop on page 9")
    expect(screen.get_by_text("Listen for")).not_to_be_visible()
    screen.locator("body").press("n")
    expect(screen.locator(".slide:visible").get_by_text("Listen for")).to_be_visible()
    screen.locator("body").press("PageDown")
    screen.locator("body").press("PageUp")
    expect(screen.locator(".slide:visible").get_by_text("Listen for")).not_to_be_visible()


def test_a_mistake_to_find_is_not_marked(screen: Page) -> None:
    expect(screen.locator(".slide-exit .wrong")).to_have_count(0)


def test_the_timer_waits_to_be_asked_and_counts_down(screen: Page) -> None:
    expect(screen.locator(".told-time")).to_be_hidden()
    screen.clock.install()
    screen.reload()
    screen.get_by_role("button", name="Time").click()
    expect(screen.locator(".told-time")).to_have_text("6 minutes left")
    screen.clock.run_for(5 * 60 * 1000 + 1000)
    expect(screen.locator(".told-time")).to_have_text("1 minute left")
    screen.get_by_role("button", name="Pause").click()
    screen.clock.run_for(5 * 60 * 1000)
    expect(screen.locator(".told-time")).to_have_text("1 minute left")
    screen.get_by_role("button", name="Go on").click()
    screen.clock.run_for(60 * 1000)
    expect(screen.locator(".told-time")).to_have_text("Time to finish")


def test_what_was_tried_survives_a_reload_and_can_be_forgotten(screen: Page) -> None:
    board = boards_on(screen)[0]
    board.show()
    board.put_all(board.answers()[0], "keyboard")
    board.look_together()
    screen.reload()
    assert shown(screen) == "Two level with two"
    expect(board.board.locator(".found")).to_have_text("Found: 1")
    expect(board.board.locator(".tries li")).to_have_text(re.compile(r"^[\d +]+= [\d +]+ \("))
    expect(board.board.locator(".field .piece")).to_have_count(4)
    screen.get_by_text("More", exact=True).click()
    screen.get_by_role("button", name="Begin again").click()
    screen.get_by_role("button", name="Forget all").click()
    screen.wait_for_load_state()
    expect(screen.locator(".where")).to_have_value("0")
    assert screen.evaluate("Object.keys(localStorage).length") == 0


def test_taking_back_and_starting_again(screen: Page) -> None:
    board = boards_on(screen)[0]
    board.show()
    board.put("moose", "left", "keyboard")
    board.put("worm", "left", "mouse")
    board.board.get_by_role("button", name="Take one back").click()
    expect(board.board.locator(".field .piece")).to_have_count(1)
    board.board.get_by_role("button", name="Start again").click()
    expect(board.board.locator(".field .piece")).to_have_count(0)
    board.board.get_by_role("button", name="Take one back").click()
    expect(board.board.locator(".field .piece")).to_have_count(1)


def test_the_beam_tilts_by_what_is_on_it_and_the_sums_wait(screen: Page) -> None:
    board = boards_on(screen)[0]
    board.show()
    field = board.board.locator(".field")
    board.put("camel", "right", "keyboard")
    expect(field).to_have_attribute("data-tilt", "1")
    expect(board.board.locator(".sums")).to_be_hidden()
    board.put("moose", "left", "keyboard")
    board.put("hamster", "left", "keyboard")
    expect(field).to_have_attribute("data-tilt", "0")
    screen.get_by_role("button", name="Notes").click()
    expect(board.board.locator(".sums")).to_have_text("9 and 9")


def test_a_move_is_announced(screen: Page) -> None:
    board = boards_on(screen)[0]
    board.show()
    board.put("moose", "left", "keyboard")
    expect(screen.locator("[aria-live]").last).to_have_text("Moose to the left basket")


def test_from_a_memory_stick(page: Page, site: Path) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto((site / SCREEN).as_uri())
    board = boards_on(page)[0]
    board.show()
    board.put_all(board.answers()[0], "mouse")
    assert board.look_together() == "Yes, that is one."
    assert all(url.startswith("file:") for url in asked)


@pytest.mark.reads(java_script_enabled=False)
def test_without_scripts_it_is_one_whole_page(page: Page, base: str) -> None:
    page.goto(base + SCREEN)
    assert all(slide.is_visible() for slide in page.locator(".slide:not([hidden])").all())
    assert page.locator(".slide[hidden]:not([data-years])").count() == 0, "only other years' versions wait for a script"
    expect(page.locator(".slide-activity .players li").first).to_be_visible()
    expect(page.locator(".screen-steps li").first).to_be_visible()
