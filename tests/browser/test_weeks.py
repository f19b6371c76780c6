"""The plan of the weeks on the page of a series: the device gives what the command gives, whatever is asked."""

from __future__ import annotations

import datetime
import json
import random
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect
from project import PROJECT, collection, reference
from storymaths.model.document import Document
from storymaths.model.holiday import Holiday
from storymaths.model.series import Series
from storymaths.parse.holiday_lines import read_holidays
from storymaths.publish.weeks_page import draw_weeks_page
from storymaths.publish.weeks_table import weeks_table
from storymaths.render.site import Site
from storymaths.weeks.as_icalendar import as_icalendar
from storymaths.weeks.lessons import Lesson, SeriesRun, Step, run_of
from storymaths.weeks.plan import Plan, plan_weeks
from storymaths.weeks.rows import rows_of
from storymaths.weeks.school_days import Asked
from storymaths.weeks.words import name_of, sentences

from .axe import faults

SERIES = "a-term-on-plover-quay"
ADDRESS = f"series/{SERIES}.html"
EPOCH = datetime.date(1970, 1, 1)
AWKWARD = [
    '=A "title"; half, or ½? \\ 🚢',
    "Crème brûlée and words that run on until a line of a calendar must be folded",
    "-1",
]
ON_THE_DEVICE = """(cases) => cases.map(({ data, asked }) => {
  const { weeks } = window.storymaths, plan = weeks.plan(weeks.lessonsOf(data), asked);
  return [weeks.asCsv(data, plan), weeks.asICalendar(data, plan), weeks.sentences(plan),
    weeks.rows(plan).map(({ week, when, part, why }) => [week, when, part ? weeks.nameOf(part) : "", why])];
})"""


def series() -> Document[Series]:
    return next(page for page in collection().of_kind(Series) if page.path.endswith(f"/{SERIES}.md"))


def number(day: datetime.date) -> int:
    return (day - EPOCH).days


def as_data(run: SeriesRun) -> dict[str, Any]:
    lessons = [
        [one.book, one.book_title, one.number, one.title, one.reads, one.source, [v for s in one.steps for v in (s.name, s.minutes)]]
        for one in run.lessons
    ]  # fmt: skip
    return {"id": run.id, "title": run.title, "changed": f"{run.changed:%Y%m%d}", "lessons": lessons}


def as_asked(asked: Asked) -> dict[str, Any]:
    holidays = [{"first": number(h.first), "last": number(h.last), "name": h.name} for h in asked.holidays]
    return {
        "start": number(asked.start), "minutes": asked.minutes, "days": sorted(asked.days), "holidays": holidays,
        "known": asked.known, "waits": asked.waits, "ofClass": asked.of_class,
    }  # fmt: skip


def by_the_command(run: SeriesRun, plan: Plan) -> list[Any]:
    rows = [[row.week, row.when, name_of(row.part) if row.part else "", row.why] for row in rows_of(plan)]
    return [weeks_table(run, plan).decode("utf-8"), as_icalendar(run, plan).decode("utf-8"), sentences(plan), rows]


def made_up(chance: random.Random) -> tuple[SeriesRun, Asked]:
    lessons = []
    for book in range(chance.randint(1, 4)):
        for lesson in range(1, chance.randint(1, 6) + 1):
            steps = tuple(Step(f"Step {n}", chance.randint(1, 20)) for n in range(chance.randint(1, 6)))
            title = chance.choice([*AWKWARD, f"Lesson {lesson}"])
            lessons.append(Lesson(f"book-{book}", f"Book {book}", lesson, title, "page 1", steps, "x"))
    start = datetime.date(2026, 6, 1) + datetime.timedelta(chance.randint(0, 1000))
    holidays = []
    for _ in range(chance.randint(0, 4)):
        first = start + datetime.timedelta(chance.randint(-5, 60))
        holidays.append(Holiday(first, first + datetime.timedelta(chance.randint(0, 12)), chance.choice("ABC")))
    days = frozenset(chance.sample(range(5), chance.randint(1, 5)))
    known = chance.choice([None, (2026, 2027)])
    asked = Asked(
        start,
        chance.randint(20, 60),
        days,
        tuple(holidays),
        known,
        chance.random() < 0.8,
        chance.choice(["", "Oak, 2½ É"]),
    )
    return SeriesRun("a-run", "A run; of it", "1.0", datetime.date(2026, 11, 25), tuple(lessons)), asked


@pytest.fixture
def opened(page: Page, base: str) -> Page:
    page.goto(base + ADDRESS)
    expect(page.get_by_label("First day")).to_be_visible()
    return page


def test_the_device_lays_every_series_as_the_command_does(opened: Page) -> None:
    chance = random.Random(20270111)
    cases = [made_up(chance) for _ in range(150)]
    bank = reference().bank_holidays
    own = (*bank.as_holidays(), Holiday(datetime.date(2027, 2, 15), datetime.date(2027, 2, 19), "Half term"))
    for start in ("2027-01-11", "2027-01-13", "2027-02-10", "2027-04-28", "2028-12-20"):
        asked = Asked(
            datetime.date.fromisoformat(start), 40, frozenset({0, 1, 3}), own, (bank.first_year, bank.last_year)
        )
        cases.append((run_of(collection(), series()), asked))
    plans = [by_the_command(run, plan_weeks(run.lessons, asked)) for run, asked in cases]
    made = opened.evaluate(ON_THE_DEVICE, [{"data": as_data(run), "asked": as_asked(asked)} for run, asked in cases])
    for case, by_device, by_command in zip(cases, made, plans, strict=True):
        assert by_device == by_command, case


def test_the_device_reads_holidays_as_the_command_does(opened: Page) -> None:
    chance = random.Random(20270215)
    bits = [
        "2027-02-15",
        "2027-02-19",
        "2027-02-30",
        "1999-01-01",
        "2026-02-15",
        "..",
        " ",
        "\t",
        "half term",
        "#",
        "\n",
        "\r\n",
        "😀",
        "to",
        "-",
    ]
    texts = ["\ufeff2027-02-15..2027-02-19 Half term\r\n# no\r2027-02-22\tTraining  day\t\n", "2027-02-15 – 2027-02-19"]
    texts += ["".join(chance.choices(bits, k=chance.randint(1, 9))) for _ in range(400)]
    made = opened.evaluate("(texts) => texts.map((text) => window.storymaths.weeks.readHolidays(text))", texts)
    for text, by_device in zip(texts, made, strict=True):
        holidays, unread = read_holidays(text)
        assert by_device == {
            "holidays": [{"first": number(h.first), "last": number(h.last), "name": h.name} for h in holidays],
            "unread": [{"line": line.line, "column": line.column, "why": line.why} for line in unread],
        }, repr(text)


def fill(page: Page, start: str = "2027-02-10", **more: str) -> None:
    page.get_by_label("First day").fill(start)
    for label, value in more.items():
        page.get_by_label(label.replace("_", " ")).fill(value)
    page.get_by_role("button", name="Lay the sessions").click()


def test_the_form_gives_a_plan_to_save_that_is_the_commands(opened: Page, tmp_path: Path) -> None:
    opened.get_by_label("Friday").check()
    fill(opened, Minutes_a_day="40", Class="  Oak ", **{"Your school": "2027-02-15..2027-02-19 Half term"})
    run, bank = run_of(collection(), series()), reference().bank_holidays
    own = Holiday(datetime.date(2027, 2, 15), datetime.date(2027, 2, 19), "Half term")
    known = (bank.first_year, bank.last_year)
    asked = Asked(datetime.date(2027, 2, 10), 40, frozenset(range(5)), (own, *bank.as_holidays()), known, True, "Oak")
    plan = plan_weeks(run.lessons, asked)
    for name, ending, content in (
        ("CSV", ".csv", weeks_table(run, plan)),
        ("iCalendar", ".ics", as_icalendar(run, plan)),
    ):
        with opened.expect_download() as waited:
            opened.get_by_role("button", name=name).click()
        assert waited.value.suggested_filename == f"{SERIES}-oak{ending}"
        waited.value.save_as(tmp_path / "saved")
        assert (tmp_path / "saved").read_bytes() == content
    shown = opened.locator(".weeks-table tbody tr:not(.week) th").all_inner_texts()
    assert shown == [row.when for row in rows_of(plan)]
    expect(opened.locator(".weeks-said")).to_contain_text(sentences(plan)[0])
    opened.locator(".weeks-table a").first.click()
    expect(opened.locator("body")).to_have_class("kind-session")


def test_what_stands_in_the_way_is_said_in_words(opened: Page) -> None:
    fill(opened, Minutes_a_day="15", **{"Your school": "2027-02-15 Snow\nhalf term"})
    faults = opened.locator(".weeks-faults")
    expect(faults).to_contain_text("With 20 minutes a day or more it can be done.")
    expect(faults).to_contain_text('Your school’s days, line 2: "half" is not a day written like 2027-02-15.')
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
    plan = plan_weeks(run.lessons, Asked(datetime.date(2027, 1, 13), 40))
    file = tmp_path / "plan.html"
    file.write_text(draw_weeks_page(site, run, plan, PROJECT / ".cache" / "letterforms"), encoding="utf-8")
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(file.as_uri())
    page.evaluate("document.fonts.ready")
    assert [url for url in asked if not url.startswith("data:")] == [file.as_uri()]
    assert page.evaluate("document.fonts.check('16px \"Storymaths Text\"')")
    assert faults(page) == []
    expect(page.locator(".weeks-table tbody tr:not(.week)")).to_have_count(len(rows_of(plan)))


def test_the_data_of_the_page_is_the_series(site: Path) -> None:
    data = json.loads((site / "weeks" / f"{SERIES}.json").read_text(encoding="utf-8"))
    run = run_of(collection(), series())
    assert [lesson[3] for lesson in data["lessons"]] == [lesson.title for lesson in run.lessons]
    assert data["changed"] == f"{run.changed:%Y%m%d}"
    assert all((site / lesson[5]).is_file() for lesson in data["lessons"])
    assert len(data["bank"]["days"]) == len(reference().bank_holidays.holidays)
