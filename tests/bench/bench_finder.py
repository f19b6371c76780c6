"""Measures the finder beside the theme's own search and plain Pagefind.

``python tests/bench/bench_finder.py [SESSIONS …]`` (default 60, 500 and 5,000) prints a table. Each figure is of a
first visit, nothing kept from before, served packed from this machine; the best of ``ROUNDS``, since everything else
on the machine only adds. Five thousand sessions take some four minutes of processor time and 2 GB to build, and the two
others as long again: ``--ours`` leaves them out, and ``--site FOLDER`` measures ours in a site that is built already.
"""

from __future__ import annotations

import argparse
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Browser, Page, sync_playwright

sys.path.insert(0, str(Path(__file__).parent.parent))

from bench.counting_server import Served, serving
from bench.many_sessions import make_project
from bench.other_finders import add_plain_pagefind, build, build_theme_search
from browser.get_browser import FLAGS, find_browser

ROUNDS = 5
SLOW = {"offline": False, "latency": 400, "downloadThroughput": 50_000, "uploadThroughput": 50_000}
"""A line of 50 kB a second, as a browser's own tools slow it down."""
COMMON, RARE = "partner", "daick"
"""A word of nearly every page and a name of few; neither is in a title."""
INDEXES = (
    "finder-data",
    "asked",
    "pagefind",
    "questions",
    "text-rows",
    "cards/",
    "plan-data",
    "search_index",
    "plain-index",
    "search.",
)
_UNTIL_THERE = """([box, word, wanted]) => new Promise((done) => {
  const field = document.querySelector(box), begun = performance.now();
  const look = () => document.querySelector(wanted) ? requestAnimationFrame(() => setTimeout(() => done(performance.now() - begun)))
    : setTimeout(look, 2);
  field.focus();
  field.value = word;
  field.dispatchEvent(new InputEvent("input", { bubbles: true }));
  field.dispatchEvent(new KeyboardEvent("keyup", { bubbles: true, key: word.at(-1) }));
  look();
})"""
_UNTIL_PAINTED = """(box) => new Promise((done) => {
  const begun = performance.now();
  box.click();
  requestAnimationFrame(() => setTimeout(() => done(performance.now() - begun)));
})"""


@dataclass
class Finder:
    """One of the searches compared: its page, its box, and what shows that it has answered."""

    name: str
    page: str
    box: str
    wanted: str
    ready: str


OURS = Finder("ours", "find.html", "#find-q", ".results .why mark", ".results > li")
PLAIN = Finder("plain Pagefind", "plain.html", "#q", "#results mark", "#q")
THEMES = Finder("the theme's own", "index.html", ".md-search__input", ".md-search-result__item", ".md-search__input")


@contextmanager
def first_visit(browser: Browser) -> Iterator[Page]:
    """A page of somebody who has never been here."""
    context = browser.new_context(viewport={"width": 1280, "height": 900})
    yield context.new_page()
    context.close()


def measure_words(browser: Browser, served: Served, finder: Finder) -> tuple[str, ...]:
    """Bytes to the first result; from opening, and from focus, to the first result; and a rarer word after it."""
    sizes, opened, common, rare = [], [], [], []
    for _ in range(ROUNDS):
        with first_visit(browser) as page:
            served.sent.clear()
            begun = time.perf_counter()
            page.goto(served.address + finder.page)
            page.wait_for_selector(finder.ready, state="attached")
            common.append(page.evaluate(_UNTIL_THERE, [finder.box, COMMON, finder.wanted]))
            opened.append((time.perf_counter() - begun) * 1000)
            sizes.append(served.bytes_of(*INDEXES))
            page.evaluate(
                "(wanted) => document.querySelector(wanted)?.closest('ol, ul').replaceChildren()", finder.wanted
            )
            rare.append(page.evaluate(_UNTIL_THERE, [finder.box, RARE, finder.wanted]))
    return (f"{min(sizes) / 1000:,.0f}", *(f"{min(times):,.0f}" for times in (opened, common, rare)))


def measure_first_visit(browser: Browser, served: Served) -> tuple[str, ...]:
    """Bytes until the finder shows its list, pictures apart; and seconds to the list, and from a word to all it finds, on a slow line."""
    with first_visit(browser) as page:
        wire = page.context.new_cdp_session(page)
        wire.send("Network.enable")
        wire.send("Network.emulateNetworkConditions", SLOW)
        served.sent.clear()
        begun = time.perf_counter()
        page.goto(served.address + OURS.page, wait_until="commit")
        page.wait_for_selector(".results > li")
        listed = time.perf_counter() - begun
        page.wait_for_load_state("networkidle")
        sent = served.bytes_of() - served.bytes_of(".svg", ".png")
        answered = page.evaluate(_UNTIL_THERE, [OURS.box, COMMON, OURS.wanted])
    return f"{sent / 1000:,.1f}", f"{listed:,.1f}", f"{answered / 1000:,.1f}"


def measure_click(browser: Browser, served: Served) -> str:
    """Milliseconds from a click on a facet to its results painted: the worst of several values, each at its best."""
    with first_visit(browser) as page:
        page.goto(served.address + "find.html")
        for facet in ("year", "concept", "kind"):
            page.click(f".facet-{facet} > summary")
        worst = 0.0
        for box in ("year'][value='2", "concept'][value='strand-number", "kind'][value='session", "year'][value='b3"):
            handle = page.wait_for_selector(f"input[name='{box}']", state="attached")
            worst = max(worst, min(page.evaluate(_UNTIL_PAINTED, handle) for _ in range(2 * ROUNDS)))
        return f"{worst:,.0f}"


def measure_elsewhere(browser: Browser, served: Served, page_name: str) -> str:
    """Bytes of index a page fetches where nobody searches."""
    with first_visit(browser) as page:
        served.sent.clear()
        page.goto(served.address + page_name, wait_until="networkidle")
        return f"{served.bytes_of(*INDEXES) / 1000:,.0f}"


def measure_ours(browser: Browser, site: Path) -> tuple[str, ...]:
    """Our row of the table, of a built site."""
    some_session = min((site / "books").glob("*/session-1.html")).relative_to(site).as_posix()
    with serving(site) as served:
        return (OURS.name, *measure_words(browser, served, OURS), measure_click(browser, served),
                measure_elsewhere(browser, served, some_session), *measure_first_visit(browser, served))  # fmt: skip


def compare(sessions: int, browser: Browser, folder: Path, alone: bool) -> Iterator[tuple[str, ...]]:
    """A row of the table for each finder at one size, or for ours alone."""
    project, site = folder / "ours", folder / "ours" / "site"
    make_project(project, sessions)
    build(project, site)
    yield measure_ours(browser, site)
    if alone:
        return
    add_plain_pagefind(site)
    with serving(site) as served:
        yield (PLAIN.name, *measure_words(browser, served, PLAIN), *"–––––")
    with serving(build_theme_search(site, folder / "theme")) as served:
        elsewhere = measure_elsewhere(browser, served, "books/book-0/session-1.html")
        yield (THEMES.name, *measure_words(browser, served, THEMES), "–", elsewhere, *"–––")


def main() -> None:
    """Prints the table."""
    options = argparse.ArgumentParser()
    options.add_argument("sizes", nargs="*", type=int, default=[60, 500, 5000])
    options.add_argument("--ours", action="store_true")
    options.add_argument("--site", type=Path)
    chosen = options.parse_args()
    print("sessions | finder | kB of index to first result | ms from opening | ms from focus | ms, next word | ms a facet click"
          " | kB of index elsewhere | kB of a first visit | slow line: s to the list | s from a word to what its text finds")  # fmt: skip
    with sync_playwright() as playwright, tempfile.TemporaryDirectory() as folder:
        browser = playwright.chromium.launch(executable_path=find_browser(), args=FLAGS)
        if chosen.site:
            print(" | ".join(("–", *measure_ours(browser, chosen.site))))
        for sessions in [] if chosen.site else chosen.sizes:
            for row in compare(sessions, browser, Path(folder) / str(sessions), chosen.ours):
                print(" | ".join((f"{sessions:,}", *row)), flush=True)
        browser.close()


if __name__ == "__main__":
    main()
