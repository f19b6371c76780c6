"""Pages about coverage: that they say what the tables worked out by hand say, and stay readable when there is much."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from bench.many_sessions import make_project
from mini_sites.three_small_books import three_small_books
from project import all_activities, collection
from storymaths.activities.on_pages import work_out_pages
from storymaths.covers.table import year_tables
from storymaths.model.address import coverage_page
from storymaths.parse.collection import read_collection
from storymaths.parse.reference import read_reference
from storymaths.publish.generated import generated
from storymaths.render.coverage_picture import MOST_SESSIONS, grid
from storymaths.render.series_page import draw_series
from storymaths.render.site import Site

MINI = Site(three_small_books(), work_out_pages(three_small_books()))
PAGE_BYTES = 200_000


def words(html: str) -> str:
    """What the eye reads, with single spaces."""
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def generated_page(site: Site, source: str) -> str:
    return generated(site)[source]().html


def series_page() -> str:
    return draw_series(MINI, MINI.collection.series["both"]).html


@pytest.fixture(scope="module")
def many(tmp_path_factory: pytest.TempPathFactory) -> Site:
    folder = tmp_path_factory.mktemp("many")
    make_project(folder, 500)
    return Site(read_collection(folder, read_reference(folder)))


def test_the_gaps_of_a_year_are_told_in_words_with_the_idea_that_may_help() -> None:
    html = generated_page(MINI, coverage_page(2))
    assert (
        "Of the 4 objectives of Year 2, 2 are taught in full, 1 more is taught in part and 1 is not covered."
        in words(html)
    )
    assert "Can do 2C In part. Missing: wide." in words(html)
    missing = html[html.index("What is missing") :]
    assert 'href="../objectives/mini/2d.html"' in missing
    assert 'Ideas that may help: <a href="../concepts/equality.html">Equality</a>' in missing
    assert "2c.html" not in missing


def test_a_series_says_what_it_leaves_out() -> None:
    text = words(series_page())
    assert "1C Can do 1C." in text
    assert (
        "Of the 4 objectives of Year 2, 1 is taught in full, 1 more is taught in part, "
        "1 is taken up again or only touched and 1 is not covered." in text
    )


def test_pictures_say_in_words_what_they_show() -> None:
    html = generated_page(MINI, coverage_page(1))
    assert re.findall(r'role="img" aria-label="([^"]*)"', html) == ["1 taught in full", "1 touched, 1 not covered"]


def test_the_page_for_governors_lists_what_is_taught_and_what_is_left() -> None:
    text = words(generated_page(MINI, "coverage/series/both.md"))
    assert "3 lessons taught from 2 picture books: The Bells and The Boats . They take 2 hours 15 minutes" in text
    full, part, left = (
        text.index(f"{way} in Year 2") for way in ("Taught in full", "Taught in part", "Left to other lessons")
    )
    assert full < text.index("Can do 2A") < part < text.index("Can do 2C") < left < text.index("Can do 2B")
    assert "Can do 2C (2C) . Missing: wide" in text
    assert "your school’s own risk assessment" in text


def test_the_shelf_without_script() -> None:
    text = words(generated_page(MINI, "shelf.md"))
    assert "2 books, 2 hours 5 minutes , teach everything that the books here teach of Year 2" in text
    assert "of 4 objectives, 2 in full and 1 in part." in text
    assert "The Boats and The Bones" in text
    assert "No book here teaches any of the 1 objectives of Year 3 in Mini yet." in text


def test_a_school_that_has_a_version_finds_what_is_new_from_there_down() -> None:
    html = series_page()
    assert re.findall(r'href="#(since-[^"]*)"', html) == ["since-1-9", "since-1-0"]
    assert html.index('id="since-1-0"') < html.index('id="version-1-9"') < html.index('id="since-1-9"')
    assert html.index('id="since-1-9"') < html.index('id="version-1-10"')


def test_every_series_has_each_of_its_parts() -> None:
    site = Site(collection(), all_activities())
    for series in site.collection.series.values():
        html = draw_series(site, series).html
        for part in ("books", "path", "words", "materials", "care", "covers", "licence", "changes"):
            assert f'id="{part}"' in html, (series.path, part)


def test_pages_of_a_large_collection_stay_readable(many: Site) -> None:
    for year in many.collection.reference.years:
        html = generated_page(many, coverage_page(year))
        assert len(html.encode()) < PAGE_BYTES
    html = generated_page(many, coverage_page(2))
    assert re.search(r">and \d+ more</a>", html)
    for source in ("coverage/index.md", "coverage/for-governors.md", "shelf.md"):
        assert len(generated_page(many, source).encode()) < PAGE_BYTES


def test_a_drawing_nobody_could_read_is_not_made() -> None:
    (table, *_) = year_tables(MINI.coverage, MINI.collection.reference, [2])
    few, page = list(MINI.coverage.sessions), MINI.coverage.sessions[0]
    assert grid(table.rows, [("Book 1", few)], "Said")
    assert grid(table.rows, [("Book 1", [page] * (MOST_SESSIONS + 1))], "Said") is None


def test_a_project_with_no_session_at_all_still_has_its_pages(tmp_path: Path) -> None:
    make_project(tmp_path, 0)
    site = Site(read_collection(tmp_path, read_reference(tmp_path)))
    for source in ("coverage/index.md", "coverage/for-governors.md", coverage_page(2), "shelf.md"):
        assert generated_page(site, source)
