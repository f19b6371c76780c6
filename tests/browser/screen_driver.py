"""Plays a board of a class screen with a mouse, with a finger or with the keyboard, as a class would."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from playwright.sync_api import Locator, Page

WAYS = ("mouse", "touch", "keyboard")


@dataclass(frozen=True)
class OnScreen:
    """A board as it stands on a page."""

    page: Page
    board: Locator
    data: Mapping[str, Any]

    def put(self, piece: str, place: str, way: str) -> None:
        """Moves a piece from the tray to a place."""
        one = self.board.locator(f".tray .piece[data-piece='{piece}']")
        there = self.board.locator(f".field .put[data-place='{place}']")
        if way == "mouse":
            self.drag(one, there)
        elif way == "touch":
            one.tap()
            there.tap()
        else:
            self._by_keys(one, place)

    def drag(self, one: Locator, there: Locator) -> None:
        # Into the middle: along the bottom of the screen the bar lies over what is there.
        one.evaluate("piece => piece.scrollIntoView({block: 'center'})")
        start, end = one.bounding_box(), there.bounding_box()
        assert start is not None
        assert end is not None
        mouse = self.page.mouse
        mouse.move(start["x"] + start["width"] / 2, start["y"] + start["height"] / 2)
        mouse.down()
        mouse.move(end["x"] + end["width"] / 2, end["y"] + end["height"] / 2, steps=4)
        mouse.up()

    def _by_keys(self, one: Locator, place: str) -> None:
        one.focus()
        self.page.keyboard.press("Enter")
        for _ in range(len(self.data["places"]) + 1):
            self.page.keyboard.press("ArrowRight")
            if self.page.evaluate("document.activeElement.dataset.place") == place:
                break
        self.page.keyboard.press("Enter")

    def put_all(self, placing: Mapping[str, Sequence[str]], way: str) -> None:
        """Clears the board and places everything."""
        again = self.board.get_by_role("button", name="Start again")
        if again.is_enabled():
            again.click()
        for place, pieces in placing.items():
            for piece in pieces:
                self.put(piece, place, way)

    def look_together(self) -> str:
        """Asks whether it is right; what the board says."""
        self.board.get_by_role("button", name="Look together").click()
        return self.board.locator(".verdict").inner_text()

    def answers(self) -> list[dict[str, list[str]]]:
        """A way to place each answer, the first for each number."""
        first: dict[int, str] = {}
        for key, number in self.data["answers"].items():
            first.setdefault(number, key)
        return [self._placing(key) for key in first.values()]

    def _placing(self, key: str) -> dict[str, list[str]]:
        parts = [part.split(",") if part else [] for part in key.split("|")]
        return {place["id"]: part for place, part in zip(self.data["places"], parts, strict=False) if part}

    def wrong(self) -> dict[str, list[str]]:
        """A placing that is no answer: one piece alone, or an answer with its last piece put elsewhere or left out."""
        for piece in self.data["pieces"]:
            for place in self.data["places"]:
                fits = place["takes"] in ("", piece["sort"])
                alone = "|".join(piece["id"] if one is place else "" for one in self.data["places"])
                key = alone if self.data["empty_matters"] else piece["id"]
                if fits and key not in self.data["answers"]:
                    return {place["id"]: [piece["id"]]}
        raise AssertionError("every single piece is an answer")


def boards_on(page: Page) -> list[OnScreen]:
    """Every board of the screen that is open, for the year that is chosen."""
    found = []
    shown = {int(value) for value in page.locator(".where option").evaluate_all("all => all.map(one => one.value)")}
    for board in page.locator("[data-board]").all():
        if slide_of(board) not in shown:
            continue
        data = json.loads(board.locator("script").text_content() or "")
        found.append(OnScreen(page, board, data))
    return found


def slide_of(board: Locator) -> int:
    """The number of the slide a board is on, from 0."""
    return int(board.evaluate("board => [...document.querySelectorAll('.slide')].indexOf(board.closest('.slide'))"))


def show_slide_of(page: Page, board: Locator) -> None:
    """Turns to the slide a board is on."""
    page.locator(".where").select_option(str(slide_of(board)))


def stroke(page: Page, points: Sequence[tuple[float, float]]) -> None:
    """A finger put down at the first point, moved through the others and lifted, as a touch screen reports it."""
    finger = page.context.new_cdp_session(page)
    for number, (x, y) in enumerate(points):
        kind = "touchMove" if number else "touchStart"
        finger.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": [{"x": x, "y": y}]})
    finger.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
    finger.detach()


def swipe(page: Page, by: float, *, y: float = 60) -> None:
    """A finger across the screen: to the right, or to the left below nought."""
    assert page.viewport_size is not None
    middle = page.viewport_size["width"] / 2
    stroke(page, [(middle - by / 2 + by * step / 8, y + step / 2) for step in range(9)])


def middle_of(one: Locator) -> tuple[float, float]:
    """The middle of what is seen."""
    box = one.bounding_box()
    assert box is not None
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
