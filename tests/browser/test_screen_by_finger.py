"""The class screen under a finger and a teacher's first clicks: it turns, goes back, stays where it is, and loses no tap."""

from __future__ import annotations

import re

import pytest
from bench.bench_screens import MEASURE, SIZES
from playwright.sync_api import Page, expect

from .screen_driver import OnScreen, boards_on, middle_of, stroke, swipe

SCREEN = "books/cliff-house-lift/session-3-screen.html"
BY_FINGER = pytest.mark.reads(has_touch=True, viewport={"width": 1280, "height": 800}, reduced_motion="reduce")


def number(page: Page) -> int:
    """The number of the slide that is shown, among those of its year."""
    return int(page.locator(".where").evaluate("where => where.selectedIndex"))


def first_board(page: Page) -> OnScreen:
    """Turns to the first board."""
    board = boards_on(page)[0]
    board.show()
    return board


@BY_FINGER
def test_a_swipe_turns_and_never_leaves_and_back_goes_back_a_screen(page: Page, base: str) -> None:
    page.goto(f"{base}index.html")
    page.goto(base + SCREEN)
    for by in (-500, -300, -900):
        before = number(page)
        swipe(page, by)
        assert number(page) == before + 1
    for by in (500, 300, 900, 900, 900):
        swipe(page, by)
    assert number(page) == 0
    assert page.url.endswith(SCREEN)
    stroke(page, [(600, 60), (610, 120), (620, 300)])
    assert number(page) == 0, "up and down is no swipe"
    page.locator("body").press("PageDown")
    page.locator("body").press("PageDown")
    page.go_back()
    expect(page.locator(".where")).to_have_value("1")
    page.go_forward()
    expect(page.locator(".where")).to_have_value("2")
    page.reload()
    expect(page.locator(".where")).to_have_value("2")
    page.go_back()
    expect(page.locator(".where")).to_have_value("1")
    page.go_back()
    page.go_back()
    page.wait_for_url(re.compile("index"))


@BY_FINGER
def test_arrows_turn_after_any_click(page: Page, base: str) -> None:
    page.goto(base + SCREEN)
    page.locator("body").press("PageDown")
    for name in ("Next", "Back", "Time", "Pause", "More"):
        page.locator(".screen-bar").get_by_text(name, exact=True).click()
        before = number(page)
        page.keyboard.press("ArrowRight")
        assert number(page) == before + 1, name
        page.keyboard.press("ArrowLeft")
        assert number(page) == before, name
    board = first_board(page)
    here = number(page)
    piece = board.data["pieces"][0]["id"]
    board.put(piece, board.data["places"][0]["id"], "mouse")
    board.look_together()
    page.keyboard.press("ArrowRight")
    assert number(page) == here + 1
    page.keyboard.press("?")
    expect(page.locator("dialog.keys")).to_be_visible()
    page.keyboard.press("ArrowRight")
    assert number(page) == here + 1, "the help is read, and nothing turns behind it"
    page.keyboard.press("Escape")
    expect(page.locator("dialog.keys")).not_to_be_visible()


@BY_FINGER
def test_taps_count_at_once_after_a_drag_and_nothing_moves(page: Page, base: str) -> None:
    page.goto(base + SCREEN)
    board = first_board(page)
    tray = board.board.locator(".tray")
    one, two = board.board.locator(".tray .piece").nth(0), board.board.locator(".tray .piece").nth(1)
    left, right = board.board.locator(".field .put").nth(0), board.board.locator(".field .place").nth(1)
    stood = tray.bounding_box()
    (x, y), (to_x, to_y) = middle_of(one), middle_of(right)
    stroke(page, [(x + (to_x - x) * step / 6, y + (to_y - y) * step / 6) for step in range(7)])
    stroke(page, [middle_of(two)])
    stroke(page, [middle_of(left)])
    expect(board.board.locator(".field .piece")).to_have_count(2)
    assert tray.bounding_box() == stood
    assert board.board.locator(".tray .piece").count() == len(board.data["pieces"])


@BY_FINGER
def test_the_timer_follows_the_step_and_forgets_yesterday(page: Page, base: str) -> None:
    page.clock.install(time="2027-03-01T09:00:00")
    page.goto(base + SCREEN)
    which = page.get_by_label("Time a step")
    page.locator("body").press("End")
    last = page.locator(".slide:not([hidden])").get_attribute("data-step")
    expect(which).to_have_value(str(last))
    page.get_by_role("button", name="Time", exact=True).click()
    page.locator("body").press("Home")
    page.locator("body").press("PageDown")
    expect(which).to_have_value(str(last))
    expect(page.locator(".told-time")).to_be_visible()
    page.clock.install(time="2027-03-02T09:00:00")
    page.reload()
    expect(page.locator(".told-time")).to_be_hidden()
    expect(which).to_have_value(str(page.locator(".slide:not([hidden])").get_attribute("data-step")))


@BY_FINGER
def test_every_slide_fits_the_screens_of_schools(page: Page, base: str) -> None:
    page.goto(base + SCREEN)
    for width, height in SIZES:
        page.set_viewport_size({"width": width, "height": height})
        page.locator("body").press("Home")
        while True:
            found = page.evaluate(MEASURE)
            assert not found["off"], (width, found)
            assert not found["piece"] or found["piece"][0] >= 80 * height / 1080 - 1, found
            assert not found["text"] or found["text"][0] >= 32 * height / 1080 - 0.5, found
            if page.get_by_role("button", name="Next").is_disabled():
                break
            page.locator("body").press("PageDown")


@BY_FINGER
def test_another_year_can_be_chosen(page: Page, base: str) -> None:
    page.goto(base + SCREEN)
    page.get_by_text("More", exact=True).click()
    which = page.get_by_label("For the class of")
    own = which.input_value()
    other = next(
        value for value in which.locator("option").evaluate_all("all => all.map(one => one.value)") if value != own
    )
    which.select_option(other)
    years = page.locator(".where option").evaluate_all(
        "all => all.map(one => document.querySelectorAll('.slide')[one.value].dataset.years ?? '')"
    )
    assert all(not one or other in one.split() for one in years)
    page.reload()
    expect(page.get_by_label("For the class of")).to_have_value(other)
