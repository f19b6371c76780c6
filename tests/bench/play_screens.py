"""Plays every board of the class screens, for every year, to the end, by finger, by mouse and by keys, and counts what was accepted.

From ``tests/``: ``python -m bench.play_screens [book or session …]``; ``--way finger`` for one way alone. Each board is
first laid wrong, then in every way that is an answer, of many the first ``MOST_ANSWERS``. A finger taps and drags by turns,
as touch events; keys are pressed one by one from a piece to its place. Prints each board that does not take an answer.
"""

from __future__ import annotations

import argparse
import json
from collections import Counter
from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from browser.get_browser import FLAGS, find_browser
from browser.screen_driver import OnScreen, boards_on
from browser.server import serving
from playwright.sync_api import CDPSession, Page, TimeoutError, sync_playwright

from .bench_screens import draw_screens, slides_by_year

WAYS = ("finger", "mouse", "keys")
MOST_ANSWERS = 12

MIDDLE = """([selector, inside]) => {
  const slide = document.querySelector(".slide:not([hidden])"), one = slide.querySelector(selector);
  if (!one) return null;
  const { x, y, width, height } = one.getBoundingClientRect(), at = [x + width / 2, y + height / 2];
  const hit = document.elementFromPoint(...at);
  return hit && (one.contains(hit) || hit.closest(inside)?.contains(one)) ? at : [at[0], at[1], hit ? hit.className : "nothing"];
}"""


@dataclass
class Player:
    """Whoever plays the slide that is shown."""

    page: Page
    way: str
    wire: CDPSession
    drags: bool = field(default=False)
    """Whether the finger drags next time, or taps."""

    def put(self, board: OnScreen, piece: str, place: str) -> None:
        """Moves a piece from the tray to its place."""
        taken, there = f".tray .piece[data-piece={json.dumps(piece)}]", f".put[data-place={json.dumps(place)}]"
        if self.way == "keys":
            self._by_keys(board, taken, place)
        elif self.way == "finger" and self.drags:
            self._stroke("touch", self._middle(taken), self._middle(there))
        elif self.way == "finger":
            self.press(taken)
            self.press(there)
        else:
            self._stroke("mouse", self._middle(taken), self._middle(there))
        self.drags = not self.drags

    def press(self, selector: str) -> None:
        """A tap, a click, or Enter."""
        if self.way == "keys":
            self._focus(selector)
            self.page.keyboard.press("Enter")
        else:
            at = self._middle(selector)
            self._stroke("touch" if self.way == "finger" else "mouse", at, None)

    def _focus(self, selector: str) -> None:
        self.page.evaluate("one => document.querySelector('.slide:not([hidden])').querySelector(one).focus()", selector)

    def _middle(self, selector: str) -> tuple[float, float]:
        at = self.page.evaluate(MIDDLE, [selector, ".place, .tray, .clock-face"])
        assert at is not None, f"no {selector}"
        assert len(at) == 2, f"{selector} is covered by {at[2]}"
        return at[0], at[1]

    def _stroke(self, kind: str, start: tuple[float, float], end: tuple[float, float] | None) -> None:
        path = [start] if end is None else [_between(start, end, step / 3) for step in range(4)]
        if kind == "touch":
            for number, (x, y) in enumerate(path):
                sort = "touchMove" if number else "touchStart"
                self.wire.send("Input.dispatchTouchEvent", {"type": sort, "touchPoints": [{"x": x, "y": y}]})
            self.wire.send("Input.dispatchTouchEvent", {"type": "touchEnd", "touchPoints": []})
            return
        mouse = self.page.mouse
        mouse.move(*path[0])
        mouse.down()
        for x, y in path[1:]:
            mouse.move(x, y)
        mouse.up()

    def _by_keys(self, board: OnScreen, taken: str, place: str) -> None:
        self._focus(taken)
        self.page.keyboard.press("Enter")
        for _ in range(len(board.data["places"]) + 1):
            self.page.keyboard.press("ArrowRight")
            if self.page.evaluate("document.activeElement.dataset.place") == place:
                break
        self.page.keyboard.press("Enter")

    def play(self, board: OnScreen, placing: Mapping[str, Sequence[str]]) -> str:
        """Clears the board, places everything and asks; what the board says."""
        self.page.evaluate(
            "() => [...document.querySelectorAll('.slide:not([hidden]) .board-actions button')]"
            ".find((one) => one.textContent === 'Start again').click()"
        )
        for place, pieces in placing.items():
            for piece in pieces:
                self.put(board, piece, place)
        said = "document.querySelector('.slide:not([hidden]) .verdict').textContent"
        for _ in range(2):  # of two taps that follow each other fast a browser makes at times but one click
            self.press(".board-actions button")
            with suppress(TimeoutError):
                self.page.wait_for_function(f"() => {said}", timeout=2000)
                break
        return str(self.page.evaluate(said))


def _between(start: tuple[float, float], end: tuple[float, float], part: float) -> tuple[float, float]:
    return start[0] + (end[0] - start[0]) * part, start[1] + (end[1] - start[1]) * part


def play_board(board: OnScreen, player: Player) -> str:
    """Plays one board to the end; what went wrong, if anything."""
    ways: list[tuple[dict[str, list[str]], bool]] = [(one, True) for one in board.answers()[:MOST_ANSWERS]]
    with suppress(AssertionError):  # where whatever is laid is an answer
        ways.insert(0, (board.wrong(), False))
    for placing, right in ways:
        try:
            told = player.play(board, placing)
        except AssertionError as covered:
            return str(covered)
        if told.startswith("Yes") != right:
            return f"{placing} gives {told!r}"
    return ""


def play_page(page: Page, address: str, way: str, wire: CDPSession) -> Counter[str]:
    """Plays every board of a screen."""
    counts: Counter[str] = Counter()
    page.goto(address)
    page.evaluate("localStorage.clear()")
    page.reload()
    for slides in slides_by_year(page):
        for board in (board for board in boards_on(page) if board.slide in slides):
            board.show()
            fault = play_board(board, Player(page, way, wire))
            counts["boards"] += 1
            counts["played"] += not fault
            if fault:
                print(f"{way} {address.rpartition('/')[2]} slide {board.slide}: {fault}", flush=True)
    return counts


def main() -> None:
    """Prints what is not accepted, and a table."""
    options = argparse.ArgumentParser()
    options.add_argument("wanted", nargs="*")
    options.add_argument("--way", choices=WAYS)
    options.add_argument("--size", default="1366x768")
    chosen = options.parse_args()
    width, height = map(int, chosen.size.split("x"))
    counts: dict[str, Counter[str]] = {}
    with TemporaryDirectory() as folder, sync_playwright() as playwright:
        addresses = draw_screens(Path(folder), chosen.wanted)
        browser = playwright.chromium.launch(executable_path=find_browser(), args=FLAGS)
        seen: Any = {"width": width, "height": height}
        page = browser.new_page(viewport=seen, has_touch=True, reduced_motion="reduce")
        wire = page.context.new_cdp_session(page)
        with serving(Path(folder)) as base:
            for way in [chosen.way] if chosen.way else WAYS:
                counts[way] = sum((play_page(page, base + one, way, wire) for one in addresses), Counter())
        browser.close()
    for way, count in counts.items():
        print(f"{way:>8}: {count['played']} of {count['boards']} boards played to the end")


if __name__ == "__main__":
    main()
