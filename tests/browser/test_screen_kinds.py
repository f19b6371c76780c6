"""Every kind played on the class screen, in each way: an answer the build found is accepted, another placing is not.

That every answer of every board is accepted is held where no browser is needed: ``tests/scripts/test_board_answers.py``.
"""

from __future__ import annotations

import pytest
from playwright.sync_api import Page
from project import collection
from storymaths.model.address import SCREEN_TO_TRY, html_of, screen_page, source_of
from storymaths.model.session import Session
from storymaths.render.screens.table import PLAYED

from .screen_driver import WAYS, boards_on

TO_TRY = html_of(SCREEN_TO_TRY)
SCREENS = [html_of(screen_page(source_of(page.path))) for page in collection().of_kind(Session)]
ON_A_BOARD = pytest.mark.reads(has_touch=True, viewport={"width": 1280, "height": 900}, reduced_motion="reduce")


@ON_A_BOARD
@pytest.mark.parametrize("way", WAYS)
def test_every_kind_is_played(page: Page, base: str, way: str) -> None:
    page.goto(base + TO_TRY)
    assert page.locator(".slide").count() >= len(PLAYED)
    assert page.locator("[data-board] ~ [data-board]").count() == 0, "one question a slide"
    boards = boards_on(page)
    # The questions of one activity stand on boards alike: those after the first are played by touch alone.
    for one in boards if way == "touch" else [board for board in boards if board.is_first]:
        one.show()
        one.put_all(one.wrong(), way)
        assert one.look_together() == "Not this time. What do you notice?"
        for number, placing in enumerate(one.answers()[:2], 1):
            one.put_all(placing, way)
            assert one.look_together().startswith("Yes"), placing
            assert one.board.locator(".found").inner_text() == f"Found: {number}"


@ON_A_BOARD
@pytest.mark.parametrize("address", SCREENS)
def test_every_board_of_every_session_can_be_played(page: Page, base: str, address: str) -> None:
    page.goto(base + address)
    boards = boards_on(page)
    assert boards
    for one in boards:
        one.show()
        one.put_all(one.answers()[0], "mouse" if "lift" in address else "touch")
        assert one.look_together().startswith("Yes"), one.data["says"]
