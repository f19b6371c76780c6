"""Every kind played on the class screen, to the end: each answer the build found is accepted, another is not."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import pytest
from playwright.sync_api import Browser, Page
from project import collection
from storymaths.activities.on_pages import activities_of
from storymaths.model.address import SCREEN_TO_TRY, html_of, screen_page, source_of
from storymaths.model.session import Session
from storymaths.render.screens.table import PLAYED, boards_of

from .screen_driver import WAYS, boards_on, show_slide_of, slide_of

TO_TRY = html_of(SCREEN_TO_TRY)
SCREENS = [
    html_of(screen_page(source_of(page.path)))
    for page in collection().of_kind(Session)
    if any(boards_of(found.worked) for found in activities_of(page, collection()))
]


@pytest.fixture
def touch_page(browser: Browser) -> Iterator[Page]:
    context = browser.new_context(has_touch=True, viewport={"width": 1280, "height": 900}, reduced_motion="reduce")
    yield context.new_page()
    context.close()


def play_all(page: Page, way: str) -> None:
    for one in boards_on(page):
        show_slide_of(page, one.board)
        one.put_all(one.wrong(), way)
        assert one.look_together() == "Not this time. What do you notice?"
        answers = one.answers()
        for number, placing in enumerate(answers, 1):
            one.put_all(placing, way)
            assert one.look_together().startswith("Yes"), placing
            assert one.board.locator(".found").inner_text() == f"Found: {number}"


@pytest.mark.parametrize("way", WAYS)
def test_every_kind_is_played_to_the_end(touch_page: Page, base: str, way: str) -> None:
    touch_page.goto(base + TO_TRY)
    assert touch_page.locator(".slide").count() == len(PLAYED)
    play_all(touch_page, way)


@pytest.mark.parametrize("address", SCREENS)
def test_every_answer_of_every_session_is_accepted(touch_page: Page, base: str, address: str) -> None:
    touch_page.goto(base + address)
    play_all(touch_page, "mouse" if "lamp" in address else "touch")


def test_a_piece_let_go_over_another_board_goes_back(touch_page: Page, base: str) -> None:
    touch_page.goto(f"{base}books/long-for-ten/session-1-screen.html")
    one, other = next(
        pair for pair in pairwise(boards_on(touch_page)) if slide_of(pair[0].board) == slide_of(pair[1].board)
    )
    show_slide_of(touch_page, one.board)
    start = one.board.locator(".tray .piece").first
    start.evaluate("piece => piece.scrollIntoView({block: 'center'})")
    one.drag(start, other.board.locator(".field .put").first)
    for board in (one.board, other.board):
        assert board.locator(".field .piece").count() == 0
