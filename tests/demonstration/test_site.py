"""The demonstration's site: it builds, its links lead somewhere, it prints as it says, and anyone can use it."""

from __future__ import annotations

from pathlib import Path

from links import broken_links, pages
from playwright.sync_api import Page
from storymaths.model.address import html_of, screen_page, source_of
from storymaths.model.session import Session

from ..browser.axe import NARROW, faults
from ..browser.test_print import sides
from .demonstration import demonstration


def test_every_page_is_there_and_every_link_leads_somewhere(site: Path) -> None:
    wanted = {html_of(source_of(page.path)) for page in demonstration().documents}
    wanted |= {html_of(source) for source in demonstration().generated_pages}
    assert sorted(wanted - {path.relative_to(site).as_posix() for path in pages(site)}) == []
    assert broken_links(site) == []


def test_every_session_takes_two_sides_and_its_answers_one(page: Page, base: str) -> None:
    taken = {}
    for session in demonstration().of_kind(Session):
        page.goto(base + html_of(source_of(session.path)))
        taken[session.path] = sides(page)
    assert {path: number for path, number in taken.items() if number != 3} == {}


def test_the_pages_for_governors_take_two_sides_at_most(page: Page, base: str) -> None:
    taken = {}
    for name in ("for-governors", *(f"series/{series}" for series in demonstration().series)):
        page.goto(f"{base}coverage/{name}.html")
        taken[name] = sides(page)
    assert {name: number for name, number in taken.items() if number > 2} == {}


def test_axe_finds_nothing_on_a_few_pages(page: Page, base: str) -> None:
    whole, wrong = demonstration(), {}
    book = source_of(next(iter(whole.books.values())).folder)
    addresses = [
        "index.html",
        f"{book}/index.html",
        f"{book}/story.html",
        f"{book}/session-1.html",
        f"{book}/home-1.html",
    ]
    addresses.append(html_of(screen_page(f"{book}/session-1.md")))
    page.set_viewport_size({"width": NARROW, "height": 800})
    page.emulate_media(reduced_motion="reduce")
    for address in addresses:
        page.goto(base + address)
        wrong[address] = faults(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= NARROW, address
    assert {address: found for address, found in wrong.items() if found} == {}
