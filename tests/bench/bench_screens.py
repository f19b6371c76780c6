"""Whether every class screen can be read from the carpet at four sizes of screen: nothing runs off, nothing is small.

From ``tests/``: ``python -m bench.bench_screens [book or session …]``. Draws the screens of ``content/`` alone, with the
kinds' examples (``activities``) and each task of each kind (``every-task``), opens each slide of each year in Chromium, and prints a
line for each that runs off the screen, has text smaller than 32 px at 1080 lines or a piece of a board smaller than
80 px, and a table. With ``--pictures FOLDER`` it takes a picture of every slide too.
"""

from __future__ import annotations

import argparse
import shutil
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from tempfile import TemporaryDirectory

from activities.every_task import every_task
from browser.get_browser import FLAGS, find_browser
from browser.server import serving
from playwright.sync_api import Page, sync_playwright
from project import ROOT
from storymaths.model.address import CONTENT, html_of, screen_page
from storymaths.model.session import Session
from storymaths.pipeline import start_build
from storymaths.publish.assets import look
from storymaths.publish.fonts import letterforms
from storymaths.publish.gallery import draw_examples_to_try
from storymaths.publish.page_frame import Drawn, PageFrame, theme_files
from storymaths.render.in_type.drawings import drawings_in_type
from storymaths.render.screens.pages import draw_screen, draw_screen_to_try
from storymaths.render.site import Rendered, Site

Size = tuple[int, int]
SIZES = ((1920, 1080), (1366, 768), (1280, 800), (1024, 768))
EVERY_TASK = "every-task"
LINES, LEAST_TEXT, LEAST_PIECE = 1080, 32, 80

MEASURE = """() => {
  const slide = document.querySelector(".slide:not([hidden])"), bar = document.querySelector(".screen-bar");
  const seen = (one) => one.checkVisibility({ visibilityProperty: true }) && one.getBoundingClientRect().width > 2;
  const foot = bar && bar.getBoundingClientRect().top > innerHeight / 2 ? bar.getBoundingClientRect().top : innerHeight;
  const texts = [];
  const walk = document.createTreeWalker(slide, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) {
    const holder = walk.currentNode.parentElement, words = walk.currentNode.textContent.trim();
    if (!words || holder.closest("script, .only-heard, .adult") || !seen(holder) || !holder.getClientRects().length) continue;
    if (getComputedStyle(holder).clipPath !== "none") continue;
    let size = parseFloat(getComputedStyle(holder).fontSize);
    if (holder instanceof SVGElement) size *= holder.ownerSVGElement.getScreenCTM().a;
    texts.push([Math.round(size * 10) / 10, words.slice(0, 30)]);
  }
  const pieces = [...slide.querySelectorAll(".tray .piece")].filter(seen).map((one) => {
    const { width, height } = one.getBoundingClientRect();
    return [Math.min(width, height), one.dataset.piece];
  });
  const least = (all) => all.sort((a, b) => a[0] - b[0])[0] ?? null;
  const across = Math.max(...[...slide.querySelectorAll("*")].filter(seen).map((one) => one.getBoundingClientRect().right), 0);
  const off = document.documentElement.scrollHeight > innerHeight || slide.scrollHeight > slide.clientHeight + 1
    || document.documentElement.scrollWidth > innerWidth || across > innerWidth + 1
    || slide.getBoundingClientRect().bottom > foot + 1;
  return { title: slide.querySelector("h2")?.textContent ?? "", shape: slide.className, off,
    tall: Math.max(document.documentElement.scrollHeight, slide.scrollHeight), text: least(texts), piece: least(pieces) };
}"""

LOADED = """() => Promise.all([...document.images].filter((one) => one.checkVisibility())
  .map((one) => one.decode().catch(() => null)))"""


@dataclass(frozen=True)
class Shown:
    """A slide as it was seen at a size."""

    size: Size
    where: str
    runs_off: int
    """How tall it is, if it runs off; else 0."""
    small_text: str
    small_piece: str


def draw_screens(folder: Path, wanted: Sequence[str]) -> list[str]:
    """Writes the class screens and what they need, and gives their addresses."""
    build = start_build(ROOT)
    whole = build.reading.collection
    assert whole is not None, build.reading.problems
    site = Site(whole, build.reading.activities, build.memory, settings=whole.reference.site)
    pages: list[Rendered] = [
        draw_screen(site, page)
        for page in whole.of_kind(Session)
        if not wanted or any(one in screen_page(page.source) for one in wanted)
    ]
    if not wanted or "activities" in wanted:
        pages.append(draw_examples_to_try(site))
    if not wanted or EVERY_TASK in wanted:
        pages.append(replace(draw_screen_to_try(site, list(every_task(whole.reference))), source=f"{EVERY_TASK}.md"))
    frame = PageFrame(site.settings, serving=False)
    files: dict[str, bytes | str | Path] = {
        **theme_files(),
        **look(site.settings),
        **letterforms(ROOT / ".cache" / "letterforms", site.settings.letterforms),
        **drawings_in_type(whole),
        **{name.removeprefix(CONTENT): ROOT / name for name in whole.files if not name.endswith(".md")},
        **{html_of(page.source): frame.put_around(Drawn(page, "", draft=False)) for page in pages},
    }
    for address, content in files.items():
        file = folder / address
        file.parent.mkdir(parents=True, exist_ok=True)
        if isinstance(content, Path):
            shutil.copyfile(content, file)
        else:
            file.write_bytes(content.encode() if isinstance(content, str) else content)
    return [html_of(page.source) for page in pages]


def slides_by_year(page: Page) -> Iterator[list[str]]:
    """For each year that a screen can be shown to, the slides that no year before has, once it is chosen."""
    choice = page.locator(".year-shown")
    years = choice.locator("option").evaluate_all("all => all.map((one) => one.value)") if choice.count() else [None]
    seen: set[str] = set()
    for year in years:
        if year is not None:
            choice.evaluate("(one, year) => { one.value = year; one.dispatchEvent(new Event('change')); }", year)
        shown = page.locator(".where option").evaluate_all("all => all.map((one) => one.value)")
        yield [value for value in shown if value not in seen]
        seen.update(shown)


def measure(page: Page, address: str, name: str, sizes: Sequence[Size], pictures: Path | None) -> Iterator[Shown]:
    """Every slide of a screen at each size."""
    page.goto(address)
    for size in sizes:
        page.set_viewport_size({"width": size[0], "height": size[1]})
        for value in (value for values in slides_by_year(page) for value in values):
            page.locator(".where").select_option(value)
            page.evaluate(LOADED)
            found = page.evaluate(MEASURE)
            scale = size[1] / LINES
            text, piece = found["text"], found["piece"]
            small = f"{text[0] / scale:.0f} px {text[1]!r}" if text and text[0] < LEAST_TEXT * scale - 0.3 else ""
            little = f"{piece[0] / scale:.0f} px {piece[1]}" if piece and piece[0] < LEAST_PIECE * scale - 0.5 else ""
            where = f"{name} {value} {found['title'][:40]!r}"
            yield Shown(size, where, int(found["tall"]) if found["off"] else 0, small, little)
            if pictures:
                page.screenshot(path=pictures / f"{name}-{value}-{size[0]}.png")


def main() -> None:
    """Prints what is wrong, and how often at each size."""
    options = argparse.ArgumentParser()
    options.add_argument("wanted", nargs="*")
    options.add_argument("--pictures", type=Path)
    options.add_argument("--width", type=int, action="append", help="that of one size alone")
    options.add_argument("--dark", action="store_true")
    chosen = options.parse_args()
    if chosen.pictures:
        chosen.pictures.mkdir(parents=True, exist_ok=True)
    sizes = [size for size in SIZES if not chosen.width or size[0] in chosen.width]
    counts: Counter[tuple[Size, str]] = Counter()
    with TemporaryDirectory() as folder, sync_playwright() as playwright:
        addresses = draw_screens(Path(folder), chosen.wanted)
        browser = playwright.chromium.launch(executable_path=find_browser(), args=FLAGS)
        page = browser.new_page(color_scheme="dark" if chosen.dark else "light", reduced_motion="reduce")
        with serving(Path(folder)) as base:
            for address in addresses:
                name = address.removeprefix("books/").removesuffix(".html").replace("/", "-")
                for shown in measure(page, base + address, name, sizes, chosen.pictures):
                    counts[shown.size, "slides"] += 1
                    for what, told in (
                        ("run off", shown.runs_off),
                        ("small text", shown.small_text),
                        ("small pieces", shown.small_piece),
                    ):
                        counts[shown.size, what] += bool(told)
                        if told:
                            print(f"{shown.size[0]}x{shown.size[1]} {shown.where}: {what}: {told}")
        browser.close()
    columns = ("slides", "run off", "small text", "small pieces")
    print(f"{'':>10}", *(f"{name:>13}" for name in columns))
    for size in sizes:
        print(f"{f'{size[0]}x{size[1]}':>10}", *(f"{counts[size, name]:>13}" for name in columns))


if __name__ == "__main__":
    main()
