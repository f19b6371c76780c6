"""Every page as everyone has it: usable, narrow and wide, by day and by night, on paper, without scripts, and private.

A page is loaded once, and held to everything in turn.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

import pytest
from playwright.sync_api import Page, expect

from ..conftest import NewPage
from .axe import NARROW, WIDE, faults_in_every_light
from .pages_of_every_kind import TEMPLATES
from .watching import Watched, watch

_CUT_OFF = """() => [...document.querySelectorAll('main *')].filter((e) => {
    const box = e.getBoundingClientRect();
    return box.width && box.right > innerWidth + 1 && !e.closest('.table-frame, .strip, pre, .only-heard, .stacked thead');
}).map((e) => e.outerHTML.slice(0, 120))"""
_LEVELS = """() => [...document.querySelectorAll('h1, h2, h3, h4, h5, h6')]
    .filter((h) => h.checkVisibility()).map((h) => +h.tagName[1])"""
_BLOCKING = """() => performance.getEntriesByType('resource')
    .filter((r) => r.renderBlockingStatus === 'blocking').map((r) => r.name)"""
_COLOURED = """() => [...document.querySelectorAll('main *')].filter((e) => e.checkVisibility() && !e.closest('svg')).filter((e) => {
    const [r, g, b] = getComputedStyle(e).color.match(/\\d+/g).map(Number);
    return Math.max(r, g, b) - Math.min(r, g, b) > 8 || r > 120;
}).map((e) => e.outerHTML.slice(0, 100))"""


@pytest.fixture(scope="module", params=TEMPLATES)
def read(request: pytest.FixtureRequest, new_page: NewPage, base: str) -> Iterator[Watched]:
    """A page of each template, as it is once nothing more is asked for."""
    with new_page(reduced_motion="reduce") as page:
        watched = watch(page)
        page.goto(base + TEMPLATES[request.param], wait_until="networkidle")
        yield watched


@pytest.fixture
def opened(read: Watched) -> Page:
    """The page on a screen by day."""
    read.page.emulate_media(media="screen", color_scheme="light")
    read.page.set_viewport_size({"width": WIDE, "height": 800})
    return read.page


def test_axe_finds_nothing(opened: Page) -> None:
    assert faults_in_every_light(opened) == {}


def test_nothing_scrolls_sideways_at_320(opened: Page) -> None:
    # 320 by 256 is also what is left of 1280 by 1024 at 400 %.
    opened.set_viewport_size({"width": NARROW, "height": 256})
    assert opened.evaluate("document.documentElement.scrollWidth") <= NARROW
    assert opened.evaluate(_CUT_OFF) == []


def test_headings_stand_in_order(opened: Page) -> None:
    levels = opened.evaluate(_LEVELS)
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels)), levels


def test_tables_say_what_their_cells_are(opened: Page) -> None:
    for table in opened.locator("table").all():
        assert table.locator("thead th").count() > 0
        assert table.locator("thead td").count() == 0


def test_nothing_is_asked_of_another_host(read: Watched, base: str) -> None:
    assert [address for address in read.asked if not address.startswith((base, "data:", "blob:"))] == []


def test_it_asks_for_nothing_that_its_policy_refuses_and_keeps_no_cookie(read: Watched) -> None:
    assert read.refused == []
    assert read.page.context.cookies() == []


def test_one_stylesheet_and_nothing_else_holds_up_the_first_paint(opened: Page, base: str) -> None:
    own = [f"{base}look/screen.css"] if opened.locator("body.kind-screen").count() else []
    assert opened.evaluate(_BLOCKING) == [f"{base}look/site.css", *own]
    # A data block is no script: browsers do not run it.
    waited_for = "script[src]:not([defer]):not([type=module]), script:not([src]):not([type^='application/'])"
    assert opened.locator(waited_for).count() == 0


def test_paper_is_black_on_white_without_addresses(opened: Page) -> None:
    opened.emulate_media(media="print", color_scheme="dark")
    assert opened.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert opened.evaluate(_COLOURED) == []
    after = opened.evaluate("[...document.querySelectorAll('a')].map((a) => getComputedStyle(a, '::after').content)")
    assert not any("http" in content or ".html" in content for content in after)
    for gone in ("nav", "header.top", "footer.bottom", "button"):
        assert [part for part in opened.locator(gone).all() if part.is_visible()] == []


@pytest.mark.reads(java_script_enabled=False)
@pytest.mark.parametrize("name", TEMPLATES)
def test_it_is_whole_without_scripts(page: Page, base: str, name: str) -> None:
    page.goto(base + TEMPLATES[name])
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    for form in page.locator("main form:visible").all():
        assert form.get_attribute("action"), "a form that only scripts could answer"
