"""Plays a board of a class screen with a mouse, with a finger or with the keyboard, as a class would."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from playwright.sync_api import Locator, Page, expect

WAYS = ("mouse", "touch", "keyboard")
Point = tuple[float, float]
# Into the middle: along the bottom of the screen the bar lies over what is there.
_MIDDLES = """async (board, [piece, place]) => {
    const coming = [...board.querySelectorAll("img")].filter((picture) => !picture.complete);
    await Promise.all(coming.map((picture) => new Promise((done) => { picture.onload = picture.onerror = done; })));
    const one = board.querySelector(`.tray .piece[data-piece="${piece}"]`);
    const there = board.querySelector(`.field .put[data-place="${place}"]`);
    one.scrollIntoView({ block: "center" });
    return [one, there].map((each) => {
        const { left, top, width, height } = each.getBoundingClientRect();
        return [left + width / 2, top + height / 2];
    });
}"""
_BOARDS = """async () => {
    await document.fonts.ready; // what stands on a slide is made to fit once more
    const shown = new Set([...document.querySelectorAll(".where option")].map(({ value }) => value));
    const slides = [...document.querySelectorAll(".slide")];
    return [...document.querySelectorAll("[data-board]")].map((board, number) => ({
        number, slide: String(slides.indexOf(board.closest(".slide"))), data: board.querySelector("script").textContent,
        title: board.closest(".slide").querySelector("h2").textContent,
    })).filter(({ slide }) => shown.has(slide));
}"""


@dataclass(frozen=True)
class OnScreen:
    """A board as it stands on a page."""

    page: Page
    board: Locator
    slide: str
    """The number of the slide it is on, from 0."""
    data: Mapping[str, Any]
    title: str
    """Of its slide: that of its activity, and which of its questions it is."""

    @property
    def is_first(self) -> bool:
        """Whether its activity has no question before it."""
        return not re.search(r"\((?!1 )\d+ of \d+\)\s*$", self.title)

    def show(self) -> None:
        """Turns to its slide."""
        self.page.locator(".where").select_option(self.slide)

    def put(self, piece: str, place: str, way: str) -> None:
        """Moves a piece from the tray to a place."""
        if way == "keyboard":
            self._by_keys(self.board.locator(f".tray .piece[data-piece='{piece}']"), place)
            return
        start, end = self.board.evaluate(_MIDDLES, [piece, place])
        if way == "mouse":
            self._drag(start, end)
        else:
            self.page.touchscreen.tap(*start)
            self.page.touchscreen.tap(*end)

    def _drag(self, start: Point, end: Point) -> None:
        mouse = self.page.mouse
        mouse.move(*start)
        mouse.down()
        mouse.move(*end, steps=4)
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
        self.board.get_by_text("Start again", exact=True).evaluate("again => again.click()")
        for place, pieces in placing.items():
            for piece in pieces:
                self.put(piece, place, way)

    def look_together(self) -> str:
        """Asks whether it is right, by a button that whatever was placed has left in sight; what the board says."""
        look = self.board.get_by_text("Look together", exact=True)
        expect(look).to_be_in_viewport(ratio=1)
        look.click()
        return self.board.locator(".verdict").inner_text()

    def answers(self) -> list[dict[str, list[str]]]:
        """What to move for each answer, the first way for each number."""
        first: dict[int, str] = {}
        for key, number in self.data["answers"].items():
            first.setdefault(number, key)
        return [self._moves(key) for key in first.values()]

    def _moves(self, key: str) -> dict[str, list[str]]:
        parts = [part.split(",") if part else [] for part in key.split("|")]
        stays = {piece["id"] for piece in self.data["pieces"] if piece["stays"]}
        placed = zip(self.data["places"], parts, strict=False)
        return {place["id"]: moved for place, part in placed if (moved := [one for one in part if one not in stays])}

    def wrong(self) -> dict[str, list[str]]:
        """A placing that is no answer: one piece more than stands there from the start."""
        for piece in self.data["pieces"]:
            for place in self.data["places"]:
                fits = not piece["stays"] and place["takes"] in ("", piece["sort"])
                if fits and self._key_with(piece["id"], place["id"]) not in self.data["answers"]:
                    return {place["id"]: [piece["id"]]}
        raise AssertionError("every single piece is an answer")

    def _key_with(self, piece: str, there: str) -> str:
        parts = []
        for place in self.data["places"]:
            standing = [*self.data["start"].get(place["id"], ()), *([piece] if place["id"] == there else [])]
            if standing or self.data["empty_matters"]:
                parts.append(",".join(standing if place["in_order"] else sorted(standing)))
        return "|".join(parts)


def boards_on(page: Page) -> list[OnScreen]:
    """Every board of the screen that is open, for the year that is chosen."""
    boards = page.locator("[data-board]")
    return [
        OnScreen(page, boards.nth(found["number"]), found["slide"], json.loads(found["data"]), found["title"])
        for found in page.evaluate(_BOARDS)
    ]


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
