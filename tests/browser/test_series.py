"""A series as a reader uses it: from the version they have to what is new, on paper for governors, as a plan."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect
from project import collection

from .test_print import sides

SERIES = sorted(collection().series)


@pytest.mark.reads(java_script_enabled=False)
def test_a_reader_of_a_version_sees_what_is_new_since_without_script(page: Page, base: str) -> None:
    page.goto(f"{base}series/a-term-on-plover-quay.html")
    page.get_by_role("link", name="I have 1.1").click()
    new = page.locator("ol.changes > li:target, ol.changes > li:target ~ li")
    expect(new).to_have_count(1)
    expect(new).to_contain_text("New since 1.1")
    expect(new).to_be_in_viewport()
    page.get_by_role("link", name="I have 1.0").click()
    expect(new).to_have_count(2)


@pytest.mark.parametrize("series", SERIES)
def test_the_page_for_governors_takes_two_sides_at_most(page: Page, base: str, series: str) -> None:
    page.goto(f"{base}coverage/series/{series}.html")
    assert sides(page) <= 2


def test_so_does_that_of_the_whole_collection(page: Page, base: str) -> None:
    page.goto(f"{base}coverage/for-governors.html")
    assert sides(page) <= 2


@pytest.mark.parametrize("series", SERIES)
def test_a_series_opens_as_a_plan_of_all_its_sessions(page: Page, base: str, series: str) -> None:
    page.goto(f"{base}series/{series}.html")
    page.get_by_role("link", name="Open the series as a plan").click()
    runs = [collection().sessions_of(book) for book in collection().series[series].fields.books]
    expect(page.locator(".plan-ideas h3")).to_have_text([session.fields.title for run in runs for session in run])


def test_marks_can_be_told_apart_without_colour(page: Page, base: str) -> None:
    # Each way of covering has a shape of its own: what is drawn differs, not only its class.
    page.goto(f"{base}coverage/index.html")
    shapes = page.locator(".cov-legend svg").evaluate_all(
        "(all) => all.map((svg) => [...svg.children].map((shape) => `${shape.tagName} ${getComputedStyle(shape).strokeDasharray}`).join())"
    )
    assert len(set(shapes)) == 5
