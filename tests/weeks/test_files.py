"""A plan as files for other programs, read back by others: Python's own CSV reader, and the package icalendar."""

from __future__ import annotations

import csv
import datetime
import io
import json

import icalendar
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from storymaths.publish.open_data.spreadsheet import as_csv
from storymaths.scripts.run import run as run_script
from storymaths.weeks.as_text import as_text
from storymaths.weeks.lessons import SeriesRun
from storymaths.weeks.plan import Plan, plan_weeks
from storymaths.weeks.school_days import Asked

from .made_up import MONDAY, a_lesson, a_run, asked, askings, runs

AWKWARD = 'Snail\'s "share"; half, or ½? Crème brûlée \\ 🚢 and so on, until the line is far longer than it may be'
words = st.text(st.characters(codec="utf-8", exclude_categories=["Cs"]), max_size=120)


def cell_of(said: str) -> str:
    """A cell as it stands in a table, its first of two so that an empty one is seen."""
    return as_csv([[said, "x"]]).removeprefix("\ufeff").removesuffix(",x\r\n")


def by_script(module: str, function: str, said: str) -> str:
    """What one of the scripts makes of some words."""
    made: str = json.loads(run_script(module, function, said))
    return made


def plan_of(run: SeriesRun, **more: object) -> Plan:
    return plan_weeks(run, asked(MONDAY, **more))  # type: ignore[arg-type]


def events(plan: Plan) -> list[icalendar.Event]:
    return list(icalendar.Calendar.from_ical(plan.calendar).walk("VEVENT"))


@given(runs(), askings())
@settings(max_examples=50, deadline=None)
def test_a_calendar_reads_back_as_the_plan(run: SeriesRun, wanted: Asked) -> None:
    plan = plan_weeks(run, wanted)
    read = events(plan)
    assert [event["DTSTART"].dt for event in read] == [day for day, _ in plan.taught]
    assert all(event["DTEND"].dt - event["DTSTART"].dt == datetime.timedelta(days=1) for event in read)
    assert all(type(event["DTSTART"].dt) is datetime.date for event in read)
    assert len({str(event["UID"]) for event in read}) == len(read)


def test_a_calendar_has_what_the_standard_asks_for() -> None:
    """RFC 5545: VERSION and PRODID once (3.6), UID and DTSTAMP in each event (3.6.1), CRLF and 75 octets (3.1)."""
    run = a_run(a_lesson(title=AWKWARD), a_lesson(2))
    content = plan_of(run).calendar.encode()
    calendar = icalendar.Calendar.from_ical(content)
    assert calendar.errors == []
    assert (calendar["VERSION"], calendar["CALSCALE"]) == ("2.0", "GREGORIAN")
    assert "storymaths" in calendar["PRODID"]
    assert "METHOD" not in calendar
    first, _ = calendar.walk("VEVENT")
    assert first.errors == []
    assert str(first["SUMMARY"]) == f"The boats 1: {AWKWARD}"
    assert "\n" in str(first["DESCRIPTION"])
    assert first["DTSTAMP"].dt == datetime.datetime(2026, 11, 25, tzinfo=datetime.UTC)
    lines = content.split(b"\r\n")
    assert lines[-1] == b""
    assert b"\n" not in content.replace(b"\r\n", b"")
    assert b"\r" not in content.replace(b"\r\n", b"")
    assert max(map(len, lines)) <= 75
    assert any(line.startswith(b" ") for line in lines)
    for line in lines:
        line.decode("utf-8")


@given(words)
@settings(deadline=None)
def test_any_words_come_back_from_a_calendar_as_they_were(said: str) -> None:
    line = "SUMMARY:" + by_script("weeks/calendar.js", "textOf", said)
    folded = by_script("weeks/calendar.js", "fold", line)
    assert folded.replace("\r\n ", "").removesuffix("\r\n") == line
    assert all(len(part.encode()) <= 75 for part in folded.split("\r\n"))
    plain = "".join(c for c in said.replace("\r\n", "\n") if c in "\t\n" or (c >= " " and c != "\x7f"))
    event = icalendar.Event.from_ical(f"BEGIN:VEVENT\r\n{folded}END:VEVENT\r\n")
    assert str(event["SUMMARY"]) == plain


def test_an_event_keeps_its_name_when_it_moves_and_classes_are_told_apart() -> None:
    run = a_run(a_lesson(minutes=(20, 20, 20)), a_lesson(2))

    def named(**more: object) -> list[str]:
        return [str(event["UID"]) for event in events(plan_of(run, **more))]

    assert named() == ["a-run/boats/session-1/part-1@storymaths", "a-run/boats/session-2/part-1@storymaths"]
    assert [str(event["UID"]) for event in events(plan_weeks(run, asked(datetime.date(2028, 3, 6))))] == named()
    assert set(named()) <= set(named(minutes=40))
    assert not set(named()) & set(named(of_class="Oak"))


def test_a_table_reads_back_and_opens_in_a_spreadsheet() -> None:
    run = a_run(a_lesson(title=AWKWARD), a_lesson(2, minutes=(30, 30, 30)))
    content = plan_of(run, of_class="=Oak").csv.encode()
    assert content.startswith(b"\xef\xbb\xbf"), "a byte order mark, so that spreadsheets read UTF-8"
    assert content.endswith(b"\r\n")
    rows = list(csv.DictReader(io.StringIO(content.decode("utf-8-sig"), newline="")))
    assert [(row["Date"], row["Title"], row["Part"], row["Parts"], row["Minutes"]) for row in rows] == [
        ("2027-01-11", AWKWARD, "1", "1", "45"),
        ("2027-01-12", "boats 2", "1", "2", "60"),
        ("2027-01-13", "boats 2", "2", "2", "30"),
    ]
    assert {row["Class"] for row in rows} == {"'=Oak"}


@given(words)
@settings(deadline=None)
def test_a_cell_is_never_a_formula(said: str) -> None:
    cell = cell_of(said)
    assert by_script("weeks/table.js", "cell", said) == cell, "Python's own CSV writer quotes as the script does"
    assert cell.lstrip('"')[:1] not in ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
    (read,) = next(csv.reader(io.StringIO(cell + "\r\n", newline=""), strict=True)) or [""]
    assert read in (said, f"'{said}")


@pytest.mark.parametrize("said", ["=1+1", "+44", "-5", "@SUM(A1)", "\t=1", "\r=1", "＝1", '"=1"'])
def test_what_spreadsheets_would_work_out_is_marked_as_words(said: str) -> None:
    """OWASP ASVS 5.0, requirement 1.2.10."""
    read = next(csv.reader(io.StringIO(cell_of(said), newline="")))[0]
    assert read == (said if said.startswith('"') else f"'{said}")


def test_text_has_a_line_a_day_under_its_week() -> None:
    run = a_run(a_lesson(), a_lesson(2))
    assert as_text(run, plan_of(run, of_class="Oak")).splitlines() == [
        "A run, version 1.0: Oak",
        "2 sessions on 2 days, from Monday 11 January 2027 to Tuesday 12 January 2027.",
        "No book is split by a weekend.",
        "",
        "Week 1",
        "  Monday 11 January   The boats 1: boats 1, 45 minutes",
        "  Tuesday 12 January  The boats 2: boats 2, 45 minutes",
    ]


@pytest.mark.parametrize(("one", "other"), [("Year α", "Year β"), ("2/3", "2-3"), ("", "Ωλ"), ("Oak", "Ash")])
def test_events_of_two_classes_are_never_the_same(one: str, other: str) -> None:
    run = a_run(a_lesson(1))
    uids = [{str(event["UID"]) for event in events(plan_of(run, of_class=name))} for name in (one, other)]
    assert all(uids)
    assert not uids[0] & uids[1]
