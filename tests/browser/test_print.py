"""Pages on paper: a session on two sides of A4 and its answers on a third; nothing only a screen can do."""

from __future__ import annotations

import re
from io import BytesIO

import pdfplumber
import pytest
from playwright.sync_api import Page, expect
from project import collection
from storymaths.model.address import html_of, source_of
from storymaths.model.session import Session

from .pages_of_every_kind import TEMPLATES

SESSIONS = [html_of(source_of(page.path)) for page in collection().of_kind(Session)]


def sides(page: Page) -> int:
    return len(re.findall(rb"/Type\s*/Page\b", page.pdf(format="A4", prefer_css_page_size=True)))


@pytest.mark.parametrize("address", SESSIONS)
def test_a_session_takes_two_sides_and_its_answers_one(page: Page, base: str, address: str) -> None:
    page.goto(base + address)
    assert sides(page) == 3


def test_the_catalogue_on_paper_lists_every_session_with_its_minutes(page: Page, base: str) -> None:
    page.goto(base + TEMPLATES["catalogue"])
    with pdfplumber.open(BytesIO(page.pdf(format="A4", prefer_css_page_size=True))) as paper:
        text = "\n".join(side.extract_text() for side in paper.pages)
        widths = {round(float(side.width)) for side in paper.pages}
        pictures = sum(len(side.curves) for side in paper.pages)
    assert widths == {595}  # A4 in points: 210 mm
    for lesson in collection().of_kind(Session):
        fields = lesson.fields
        row = rf"{fields.number}\. {re.escape(fields.title)} Year {fields.year} {fields.minutes} "
        assert re.search(row, text), fields.title
        assert all(claim.code in text for claims in fields.objectives.values() for claim in claims)
    assert pictures > len(collection().books), "covers are drawn"


def test_answers_stand_apart_and_open(page: Page, base: str) -> None:
    page.goto(base + TEMPLATES["session"])
    apart = page.locator(".answers-apart")
    expect(apart).to_be_hidden()
    page.emulate_media(media="print")
    expect(apart).to_be_visible()
    expect(apart).to_contain_text("Badger and Worm")
    expect(page.locator("details.answer").first).to_be_hidden()
    assert apart.evaluate("e => getComputedStyle(e).breakBefore") == "page"


def test_what_a_session_folds_is_on_its_paper_and_opens_for_a_link_to_it(page: Page, base: str) -> None:
    page.goto(base + TEMPLATES["session"])
    table, bend = page.locator("table.materials"), page.locator(".bend h3").first
    expect(table).to_be_hidden()
    expect(bend).to_be_hidden()
    page.emulate_media(media="print")
    expect(table).to_be_visible()
    expect(bend).to_be_visible()
    page.emulate_media(media="screen")
    page.goto(f"{base}{TEMPLATES['session']}#{bend.get_attribute('id')}")
    expect(bend).to_be_visible()
    expect(bend).to_be_in_viewport()
