"""Walks the desk as an author does: a new collection, a book of somebody else's in it, and its first session, to no problems.

``python tests/bench/walk_desk.py [mouse|keys] [--into FOLDER] [--pictures FOLDER]`` does it in a real browser, by mouse or
by keys alone (Tab, arrows, Enter, Space and letters: no key of a mouse, and no script that puts the focus anywhere). It
prints, of the book and of the session, how many values were typed, picked from a list and taken as proposed, how many
keys or clicks it took, the minutes by this machine, the problems that were met, and what hindered: a save after which
the focus was nowhere, a box no key leads to.
"""

from __future__ import annotations

import argparse
import os
import re
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import wraps
from itertools import count
from pathlib import Path
from typing import Any

import yaml
from playwright.sync_api import Error, Locator, Page, Request, expect, sync_playwright

sys.path.insert(0, str(Path(__file__).parent.parent))

from browser.get_browser import FLAGS, find_browser
from project import ROOT

PLAN: Any = yaml.safe_load(Path(__file__).with_suffix(".yaml").read_text("utf-8"))

PARTED = re.compile(r"\n\n|\n(?=\d+\. |- )")
_TABS = 700


def noted(act: Callable[..., None]) -> Callable[..., None]:
    """What cannot be done is noted, and the walk goes on."""

    @wraps(act)
    def done(walk: Walk, *words: Any) -> None:
        try:
            act(walk, *words)
        except (Error, AssertionError) as error:
            walk.hindered.append(f"{act.__name__}{words}: {str(error).splitlines()[0]}")

    return done


class Walk:
    """A way to use the desk; what it took is counted."""

    def __init__(self, page: Page) -> None:
        self.page, self.count, self.hindered, self.met = page, Counter[str](), list[str](), list[str]()
        self._events, self._changed, self._checked = count(1), 0, 0
        page.on("requestfinished", self._hear)

    def _hear(self, request: Request) -> None:
        """Notes when something was last changed, and when the desk last looked for problems."""
        if request.method == "POST":
            self._changed = next(self._events)
        if "/problems" in request.url:
            self._checked = next(self._events)

    def box(self, id: str) -> Locator:
        return self.page.locator(f'[id="{id}"]')

    def settle(self) -> None:
        """Waits until all is saved."""
        expect(self.page.locator("#told")).not_to_contain_text("Saving")
        if told := [text for text in self.page.locator(".not-saved").all_inner_texts() if text not in self.hindered]:
            self.hindered += told

    @noted
    def type(self, id: str, text: str, sort: str = "typed") -> None:
        """Fills a box: each paragraph or item in it is a value."""
        self.reach(id)
        self.write(id, text)
        self.count[sort] += len(PARTED.split(text.strip()))
        self.settle()

    @noted
    def add(self, id: str, text: str, sort: str = "picked") -> None:
        """One more of a list."""
        self.reach(f"add-front.{id}")
        self.write(f"add-front.{id}", text, enter=True)
        self.count[sort] += 1
        self.settle()

    def problems(self) -> list[str]:
        """What the desk says is wrong, once it has looked."""
        self.settle()
        for _ in range(200):
            self.page.wait_for_timeout(150)
            if self._checked > self._changed:
                break
        return self.page.locator("#all-wrong > li").all_inner_texts()

    def open_folds(self, id: str) -> None:
        """Opens what a box is folded away in, from without."""
        folds = self.box(id).evaluate(
            """box => { const all = []; for (let one = box.closest("details"); one; one = one.parentElement.closest("details"))
            if (!(box.matches("summary") && box.parentElement === one) && !one.open) all.unshift(one.id); return all; }"""
        )
        for fold in folds:
            self.push(f'[id="{fold}"] > summary')

    def reach(self, id: str) -> None:
        raise NotImplementedError

    def write(self, id: str, text: str, enter: bool = False) -> None:
        raise NotImplementedError

    def choose(self, id: str, value: str) -> None:
        raise NotImplementedError

    def push(self, selector: str) -> None:
        """Presses what a selector says."""
        raise NotImplementedError


class Mouse(Walk):
    """Clicks, and types where it clicked."""

    def reach(self, id: str) -> None:
        self.open_folds(id)
        self.box(id).click()
        self.count["clicks"] += 1

    def write(self, id: str, text: str, enter: bool = False) -> None:
        self.box(id).fill(text)
        self.count["letters"] += len(text)
        if enter:
            self.page.keyboard.press("Enter")
        self.page.locator("#page-title").click()

    @noted
    def choose(self, id: str, value: str) -> None:
        self.open_folds(id)
        self.box(id).select_option(value)
        self.count["picked"] += 1
        self.count["clicks"] += 2
        if self.page.locator("#told").count():
            self.settle()

    @noted
    def push(self, selector: str) -> None:
        self.page.locator(selector).first.click()
        self.count["clicks"] += 1
        if self.page.locator("#told").count():
            self.settle()


_WHERE = """wanted => { const seen = one => one.getClientRects().length && !one.disabled;
const stops = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, iframe")].filter(seen);
const headings = [...document.querySelectorAll("#page-title, #content h2, #content h3, #content h4")];
const parts = headings.filter(one => seen(one) && !one.closest(".only-heard"));
const now = document.activeElement, at = stops.indexOf(wanted), after = (a, b) => Boolean(a.compareDocumentPosition(b) & 4);
const tabs = at - (stops.includes(now) ? stops.indexOf(now) : stops.findIndex(one => after(now, one)) - 1);
const last = parts.filter(one => after(one, wanted)).at(-1);
if (!last) return [tabs, 0, tabs];
const down = parts.filter(one => after(now, one) && !after(last, one)).length;
const jumps = down || -parts.filter(one => after(one, now) && !after(one, last)).length;
return [tabs, jumps, stops.slice(0, at + 1).filter(one => after(last, one)).length]; }"""


class Keys(Walk):
    """Goes by keys alone."""

    def press(self, key: str) -> None:
        self.page.keyboard.press(key)
        self.count["keys"] += 1

    def go(self, wanted: Locator, name: str) -> None:
        """Tabs to an element, the shorter way."""
        element = wanted.first.element_handle()
        if element is None:
            self.hindered.append(f"not there: {name}")
            return
        tabs, jumps, then = element.evaluate(_WHERE)
        if abs(jumps) + then < abs(tabs) and not element.evaluate("one => one === document.activeElement"):
            for _ in range(abs(jumps)):
                self.press("Alt+PageDown" if jumps > 0 else "Alt+PageUp")
                self.count["parts"] += 1
            tabs = then
        key = "Tab" if tabs >= 0 else "Shift+Tab"
        for _ in range(_TABS):
            if element.evaluate("one => one === document.activeElement"):
                return
            self.press(key)
            self.count["tabs"] += 1
        self.hindered.append(f"no key leads to {name}")

    def reach(self, id: str) -> None:
        self.open_folds(id)
        self.go(self.box(id), id)

    def write(self, id: str, text: str, enter: bool = False) -> None:
        self.press("Control+A")
        self.page.keyboard.insert_text(text)
        self.count["letters"] += len(text)
        self.press("Enter" if enter else "Tab")
        self.settle()
        self.lost(id)

    @noted
    def choose(self, id: str, value: str) -> None:
        self.open_folds(id)
        self.go(self.box(id), id)
        says = self.box(id).evaluate("(box, value) => [...box.options].find(one => one.value === value).label", value)
        self.page.keyboard.type(says[:40])
        self.count["keys"] += 3
        self.count["picked"] += 1
        if self.box(id).input_value() != value:
            self.hindered.append(f"not to be chosen by letters: {value} of {id}")
        self.press("Tab")
        if self.page.locator("#told").count():
            self.settle()
            self.lost(id)

    @noted
    def push(self, selector: str) -> None:
        self.go(self.page.locator(selector), selector)
        self.press("Enter")
        if self.page.locator("#told").count():
            self.settle()
            self.lost(selector)

    def lost(self, where: str) -> None:
        """Notes where the focus is on nothing."""
        self.page.wait_for_timeout(60)
        if self.page.evaluate("document.activeElement === document.body"):
            self.hindered.append(f"focus lost after {where}")


def begin(walk: Walk, address: str, kind: str, title: str) -> None:
    """A new page from the collection's page."""
    walk.page.goto(address)
    walk.choose("new-kind", kind)
    walk.reach("new-title")
    walk.page.keyboard.insert_text(title)
    walk.count["typed"] += 1
    walk.push("#new-page button")
    walk.page.wait_for_url(re.compile("/page"))
    expect(walk.page.locator("#all-wrong-title")).to_contain_text(re.compile("problems? on", re.I), timeout=60_000)


def write_book(walk: Walk) -> None:
    """The record of the book: whose it is, its pages' maths, its cast and their fact."""
    book = PLAN["book"]
    walk.choose("in-front.rights", "in-copyright")
    for box, text in book["head"].items():
        walk.type(f"in-front.{box}", text)
    for at, note in enumerate(book["pages"]):
        if at:
            more(walk, "maths_on_pages")
        base = f"maths_on_pages.{at}"
        walk.type(f"in-front.{base}.pages", note["pages"])
        walk.type(f"in-front.{base}.see", note["see"])
        walk.type(f"in-front.{base}.concepts.0", note["concepts"][0], "picked")
        for concept in note["concepts"][1:]:
            walk.add(f"{base}.concepts", concept)
    fact = book["fact"]["name"]
    walk.type("key-front.facts", fact)
    more(walk, "facts")
    for box in ("means", "unit"):
        walk.type(f"in-front.facts.{fact}.{box}", book["fact"][box])
    for at, character in enumerate(book["cast"]):
        if at:
            more(walk, "cast")
        for box in ("id", "name", "plural"):
            walk.type(f"in-front.cast.{at}.{box}", character[box])
        walk.type(f"key-front.cast.{at}.facts", fact, "picked")
        more(walk, f"cast.{at}.facts")
        walk.type(f"in-front.cast.{at}.facts.{fact}", character["fact"])
    walk.type("in-words-0-0", book["text"])


def more(walk: Walk, field: str) -> None:
    """One more of a list or mapping, by its button."""
    walk.open_folds(f"fold-front.{field}")
    walk.push(f'[id="front.{field}"] > details > .add > [data-do=add]')


def write_session(walk: Walk) -> None:
    """What only its author can say."""
    session = PLAN["session"]
    for box, text in session["head"].items():
        walk.type(f"in-front.{box}", text)
    more(walk, "reads.0.stops")
    for box, text in session["second_stop"].items():
        walk.type(f"in-front.reads.0.stops.1.{box}", text)
    walk.type("in-front.concepts.0", session["concepts"][0], "picked")
    for concept in session["concepts"][1:]:
        walk.add("concepts", concept)
    for list, text in session["more"]:
        walk.add(list, text, "typed")
    for box, text in session["misconception"].items():
        walk.type(f"in-front.misconceptions.0.{box}", text)
    for at, text in enumerate(session["sections"], start=1):
        walk.type(f"in-words-{at}-0", text)
    write_activity(walk)


def write_activity(walk: Walk) -> None:
    """One of a kind, with everybody in it, and the words after it."""
    session = PLAN["session"]
    walk.choose("begin-3-0", "bonds:cast")
    walk.push("#words-3-0 [data-do=begin-activity]")
    for box, text in session["activity"].items():
        walk.type(f"in-activity-0.{box}", text)
    walk.choose("sort-activity-0.cast", "0")
    expect(walk.page.locator("#worked-0")).to_contain_text("3 answers", timeout=30_000)
    walk.push("#worked-0 [data-do=put]")
    walk.push("#section-3 [data-do=more-words]")
    walk.page.keyboard.insert_text(session["after"])
    walk.count["typed"] += len(PARTED.split(session["after"]))
    walk.page.keyboard.press("Tab")
    walk.settle()


def take_proposals(walk: Walk) -> None:
    """Each that is offered, read and taken, and what it leaves to be written."""
    walk.push("#show-offers")
    expect(walk.page.locator("#offers .offers, #offers p").first).to_be_visible(timeout=60_000)
    for _ in range(60):
        if not walk.page.locator("#offers [data-take]").count():
            break
        print("  proposed:", walk.page.locator("#offers li").first.inner_text().replace("\n", " · ")[:160], flush=True)
        walk.push("#offers [data-take]")
        walk.count["taken"] += 1
        walk.problems()
    for year, boxes in PLAN["session"]["bends"].items():
        for box, text in boxes.items():
            if walk.box(f"in-front.bends.{year}.{box}").count():
                walk.type(f"in-front.bends.{year}.{box}", text)


def finish(walk: Walk) -> None:
    """No draft any more; what is wrong then is what was met, and is put right."""
    walk.choose("in-front.status", "")
    walk.met += walk.problems()
    for box, text in PLAN["session"]["put_right"].items():
        if walk.box(f"in-front.{box}").count():
            walk.type(f"in-front.{box}", text)
    print("  left:", walk.problems())


def take_pictures(page: Page, folder: Path, name: str) -> None:
    """The page as it is now, wide and narrow, light and dark; with its activity in sight, and with what is offered."""
    for width, scheme in ((1280, "light"), (1280, "dark"), (390, "light"), (390, "dark")):
        page.set_viewport_size({"width": width, "height": 900})
        page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
        for what in ("#page-title", "#activity-0", "#front\\.cast", "#offers"):
            if page.locator(what).count() and page.locator(what).is_visible():
                page.locator(what).scroll_into_view_if_needed()
                page.evaluate("what => document.querySelector(what).scrollIntoView()", what)
                page.screenshot(path=folder / f"{name}-{what.strip('#').replace(chr(92), '')}-{width}-{scheme}.png")
    page.set_viewport_size({"width": 1280, "height": 900})


@contextmanager
def desk(root: Path) -> Iterator[str]:
    """The desk of a project; it is stopped as its author stops it."""
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks"), "PYTHONUNBUFFERED": "1"}
    command = [sys.executable, "-m", "storymaths", "desk", "--stay"]
    with subprocess.Popen(command, cwd=root, env=environment, stdout=subprocess.PIPE, text=True) as program:
        assert program.stdout is not None
        try:
            yield next(found[0] for line in program.stdout if (found := re.search(r"http://127\.0\.0\.1:\S+", line)))
        finally:
            program.send_signal(signal.SIGINT)


def told(walk: Walk, name: str, seconds: float) -> None:
    """Prints what it took, and begins to count anew."""
    print(f"{name}: {dict(walk.count)}, {seconds / 60:.1f} minutes")
    for sort, lines in (("met", walk.met), ("hindered", walk.hindered)):
        print("".join(f"  {sort}: {line}\n" for line in lines), end="")
    walk.count, walk.met, walk.hindered = Counter(), [], []


def main() -> None:
    """Walks, and prints."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("by", choices=("mouse", "keys"), nargs="?", default="mouse")
    parser.add_argument("--into", type=Path)
    parser.add_argument("--pictures", type=Path)
    options = parser.parse_args()
    root = (options.into or Path(tempfile.mkdtemp())) / f"walk-{options.by}"
    environment = {**os.environ, "PYTHONPATH": str(ROOT / "hooks")}
    names = ("--name", "Bramble Yard", "--publisher", "Hedge and Gate", "--contact", "", "--licence", "reserved")
    subprocess.run([sys.executable, "-m", "storymaths", "start", str(root), *names], check=True, env=environment)
    with desk(root) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_browser(), args=FLAGS)
        page = browser.new_page(viewport={"width": 1280, "height": 900}, locale="en-GB")
        page.set_default_timeout(25_000)
        page.set_default_navigation_timeout(60_000)
        walk = (Keys if options.by == "keys" else Mouse)(page)
        try:
            for name, kind, title, acts in (
                ("The book", "book", PLAN["book"]["title"], (write_book, finish)),
                ("The session", "session", PLAN["session"]["title"], (write_session, take_proposals, finish)),
            ):
                start = time.monotonic()
                begin(walk, address if kind == "book" else address.split("?")[0], kind, title)
                for act in acts:
                    noted(act)(walk)
                told(walk, name, time.monotonic() - start)
                if options.pictures:
                    take_pictures(page, options.pictures, f"{options.by}-{kind}")
        except Exception:
            told(walk, "Stopped", 0)
            if options.pictures:
                page.screenshot(path=options.pictures / f"{options.by}-stopped.png")
            raise
        browser.close()
    print(f"Written in {root}")


if __name__ == "__main__":
    main()
