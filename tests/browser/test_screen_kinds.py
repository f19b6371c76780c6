"""Every kind played on the class screen, to the end: each answer the build found is accepted, another is not."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page
from project import collection
from storymaths.activities.on_pages import activities_of
from storymaths.model.address import SCREEN_TO_TRY, html_of, screen_page, source_of
from storymaths.model.session import Session
from storymaths.render.screens.table import PLAYED, boards_of

from .screen_driver import WAYS, boards_on, show_slide_of

TO_TRY = html_of(SCREEN_TO_TRY)
SCREENS = [
    html_of(screen_page(source_of(page.path)))
    for page in collection().of_kind(Session)
    if any(found.worked.done and boards_of(found.worked.done) for found in activities_of(page, collection()))
]
ON_A_BOARD = pytest.mark.reads(has_touch=True, viewport={"width": 1280, "height": 900}, reduced_motion="reduce")


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


@ON_A_BOARD
@pytest.mark.parametrize("way", WAYS)
def test_every_kind_is_played_to_the_end(page: Page, base: str, way: str) -> None:
    page.goto(base + TO_TRY)
    assert page.locator(".slide").count() >= len(PLAYED)
    assert page.locator("[data-board] ~ [data-board]").count() == 0, "one question a slide"
    play_all(page, way)


@ON_A_BOARD
@pytest.mark.parametrize("address", SCREENS)
def test_every_answer_of_every_session_is_accepted(page: Page, base: str, address: str) -> None:
    page.goto(base + address)
    play_all(page, "mouse" if "lift" in address else "touch")
