"""The plan of the weeks on the page of a series: the browser gives what the command gives."""

from __future__ import annotations

import datetime
import json
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect
from project import PROJECT, collection, reference
from storymaths.model.document import Document
from storymaths.model.holiday import Holiday
from storymaths.model.series import Series
from storymaths.publish.weeks_page import draw_weeks_page
from storymaths.render.site import Site
from storymaths.scripts.join import joined
from storymaths.weeks.lessons import run_of
from storymaths.weeks.plan import plan_weeks
from storymaths.weeks.school_days import Asked

from .axe import faults

SERIES = "a-term-on-plover-quay"
ADDRESS = f"series/{SERIES}.html"


def series() -> Document[Series]:
    return next(page for page in collection().of_kind(Series) if page.path.endswith(f"/{SERIES}.md"))


@pytest.fixture
def opened(page: Page, base: str) -> Page:
    page.goto(base + ADDRESS)
    expect(page.get_by_label("First day")).to_be_visible()
    return page


def test_the_browser_lays_a_series_as_the_command_does(opened: Page) -> None:
    """The browser's engine and the command's are two, though the script is one."""
    run, bank = run_of(collection(), series()), reference().bank_holidays
    own = (*bank.as_holidays(), Holiday(datetime.date(2027, 2, 15), datetime.date(2027, 2, 19), "Half term"))
    script = joined("weeks/whole.js")
    for start in ("2027-01-11", "2027-01-13", "2027-02-10", "2027-04-28", "2028-12-20"):
        known = (bank.first_year, bank.last_year)
        asked = Asked(datetime.date.fromisoformat(start), 40, frozenset({0, 1, 3}), own, known, True, "Oak, 2½ É 🚢")
        made = opened.evaluate(f"(given) => {script}.wholePlan(...given)", [run.as_data(), asked.as_data(), True])
        plan = plan_weeks(run, asked)
        assert (made["csv"], made["calendar"], made["sentences"]) == (plan.csv, plan.calendar, list(plan.sentences))
        assert [row["when"] for row in made["rows"]] == [row.when for row in plan.rows]


def fill(page: Page, start: str = "2027-02-10", **more: str) -> None:
    page.get_by_label("First day").fill(start)
    for label, value in more.items():
        page.get_by_label(label.replace("_", " ")).and_(page.locator("input, textarea")).fill(value)
    page.get_by_role("button", name="Lay the sessions").click()


def test_the_form_gives_a_plan_to_save_that_is_the_commands(opened: Page, tmp_path: Path) -> None:
    opened.get_by_label("Friday").check()
    fill(opened, Minutes_a_day="40", Class="  Oak ", **{"Your school": "15/02/2027 - 19/02/2027 Half term"})
    run, bank = run_of(collection(), series()), reference().bank_holidays
    own = Holiday(datetime.date(2027, 2, 15), datetime.date(2027, 2, 19), "Half term")
    known = (bank.first_year, bank.last_year)
    asked = Asked(datetime.date(2027, 2, 10), 40, frozenset(range(5)), (own, *bank.as_holidays()), known, True, "Oak")
    plan = plan_weeks(run, asked)
    for name, ending, content in (
        ("CSV", ".csv", plan.csv.encode()),
        ("iCalendar", ".ics", plan.calendar.encode()),
    ):
        with opened.expect_download() as waited:
            opened.get_by_role("button", name=name).click()
        assert waited.value.suggested_filename == f"{SERIES}-oak{ending}"
        waited.value.save_as(tmp_path / "saved")
        assert (tmp_path / "saved").read_bytes() == content
    shown = opened.locator(".weeks-table tbody tr:not(.week) th").all_inner_texts()
    assert shown == [row.when for row in plan.rows]
    expect(opened.locator(".weeks-said")).to_contain_text(plan.sentences[0])
    opened.locator(".weeks-table a").first.click()
    expect(opened.locator("body")).to_have_class("kind-session")


def test_what_stands_in_the_way_is_said_in_words(opened: Page) -> None:
    fill(opened, Minutes_a_day="15", **{"Your school": "2027-02-15 Snow\nhalf term"})
    faults = opened.locator(".weeks-faults")
    expect(faults).to_contain_text("With 20 minutes a day or more it can be done.")
    expect(faults).to_be_focused()
    expect(faults).to_contain_text(
        'Your school’s days, line 2: "half" is not a day written like 15/02/2027 or 2027-02-15.'
    )
    expect(opened.get_by_label("Your school")).to_have_attribute("aria-invalid", "true")
    expect(opened.locator(".weeks-acts")).to_be_hidden()
    for day in ("Monday", "Tuesday", "Wednesday", "Thursday"):
        opened.get_by_label(day).uncheck()
    fill(opened, Minutes_a_day="50", **{"Your school": ""})
    expect(faults).to_contain_text("Tick at least one day of the week.")
    opened.get_by_label("Monday").check()
    opened.get_by_label("Minutes a day").fill("60")
    opened.get_by_role("button", name="Lay the sessions").click()
    expect(faults).to_be_empty()
    expect(opened.locator(".weeks-acts")).to_be_visible()


def test_words_a_teacher_types_are_words(opened: Page) -> None:
    fill(opened, Class="<img src=x onerror=alert(1)>", **{"Your school": "2027-02-10 <b>Snow</b>"})
    expect(opened.locator(".weeks-said")).to_contain_text("For <img src=x onerror=alert(1)>.")
    expect(opened.locator(".weeks-table")).to_contain_text("<b>Snow</b>")
    assert opened.locator(".weeks img, .weeks b").count() == 0


def test_it_works_from_a_memory_stick_and_asks_for_nothing_but_its_data(page: Page, site: Path) -> None:
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto((site / ADDRESS).as_uri())
    assert not [url for url in asked if "/weeks/" in url], "data is loaded when the form is answered"
    fill(page)
    expect(page.locator(".weeks-acts")).to_be_visible()
    assert all(url.startswith(site.as_uri()) for url in asked)


@pytest.mark.reads(java_script_enabled=False)
def test_without_script_a_plan_without_dates_is_there(page: Page, base: str) -> None:
    page.goto(base + ADDRESS)
    rows = page.locator(".weeks-table tbody tr:not(.week)")
    expect(rows).to_have_count(len(run_of(collection(), series()).lessons))
    expect(rows.first).to_contain_text("Monday")
    expect(page.locator(".weeks form")).to_be_hidden()
    expect(page.locator(".weeks-acts")).to_be_hidden()


def test_on_paper_only_the_plan_is_printed(opened: Page) -> None:
    fill(opened)
    opened.evaluate("window.print = () => {}")
    opened.get_by_role("button", name="Print this plan").click()
    opened.emulate_media(media="print")
    expect(opened.locator(".weeks-table")).to_be_visible()
    expect(opened.locator("h1")).to_be_visible()
    for gone in (".weeks-form", ".weeks-acts", "#books", "#licence"):
        expect(opened.locator(gone).first).to_be_hidden()
    opened.evaluate("dispatchEvent(new Event('afterprint'))")
    expect(opened.locator("#licence")).to_be_visible()


def test_a_small_phone_shows_it_without_moving_sideways(opened: Page) -> None:
    opened.set_viewport_size({"width": 320, "height": 640})
    fill(opened, Minutes_a_day="30")
    expect(opened.locator(".weeks-acts")).to_be_visible()
    assert opened.evaluate("document.documentElement.scrollWidth") <= 320
    frame = opened.locator(".weeks .table-frame")
    assert frame.evaluate("frame => frame.scrollWidth <= frame.clientWidth")


def test_the_page_of_the_command_stands_alone(page: Page, tmp_path: Path) -> None:
    site, run = Site(collection()), run_of(collection(), series())
    plan = plan_weeks(run, Asked(datetime.date(2027, 1, 13), 40))
    file = tmp_path / "plan.html"
    file.write_text(draw_weeks_page(site, run, plan, PROJECT / ".cache" / "letterforms"), encoding="utf-8")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(file.as_uri())
    page.evaluate("document.fonts.ready")
    assert [url for url in asked if not url.startswith("data:")] == [file.as_uri()]
    assert page.evaluate("document.fonts.check('16px \"Storymaths Text\"')")
    assert faults(page) == []
    expect(page.locator(".weeks-table tbody tr:not(.week)")).to_have_count(len(plan.rows))


def test_the_data_of_the_page_is_the_series(site: Path) -> None:
    data = json.loads((site / "weeks" / f"{SERIES}.json").read_text(encoding="utf-8"))
    run = run_of(collection(), series())
    assert [lesson[3] for lesson in data["lessons"]] == [lesson.title for lesson in run.lessons]
    assert data["changed"] == f"{run.changed:%Y%m%d}"
    assert all((site / lesson[5]).is_file() for lesson in data["lessons"])
    assert len(data["bank"]["days"]) == len(reference().bank_holidays.holidays)
