"""``storymaths plan``, run as it is run: what it gives, what it refuses, and what it leaves alone."""

from __future__ import annotations

import csv
import io
import os
import subprocess
from pathlib import Path

import icalendar
import pytest
from command import storymaths
from packed import SERIES, VERSION


def plan(*more: str, series: str = SERIES, start: str = "2027-01-11") -> subprocess.CompletedProcess[str]:
    return storymaths("plan", series, "--start", start, *more)


def test_text_by_default() -> None:
    done = plan()
    assert (done.returncode, done.stderr) == (0, "")
    assert "on 8 days, from Monday 11 January 2027" in done.stdout
    assert "Week 2\n" in done.stdout


def test_each_format_in_a_file_by_its_ending(tmp_path: Path) -> None:
    files = {ending: tmp_path / f"plan{ending}" for ending in (".csv", ".ics", ".html", ".txt")}
    for file in files.values():
        done = plan("--out", str(file), "--class", "Oak")
        assert (done.returncode, done.stdout) == (0, f"Wrote {file}\n")
    rows = list(csv.DictReader(io.StringIO(files[".csv"].read_bytes().decode("utf-8-sig"), newline="")))
    events = icalendar.Calendar.from_ical(files[".ics"].read_bytes()).walk("VEVENT")
    assert [row["Date"] for row in rows] == [event["DTSTART"].dt.isoformat() for event in events]
    page = files[".html"].read_text(encoding="utf-8")
    assert f"version {VERSION}: Oak</h1>" in page
    assert page.count('<th scope="row">') == len(rows)
    assert "../fonts" not in page
    assert files[".txt"].read_text(encoding="utf-8").startswith(f"A term on Plover Quay, version {VERSION}: Oak\n")


def test_a_plan_has_no_false_ending(tmp_path: Path) -> None:
    for more in ((), ("--format", "text")):
        done = plan("--out", str(tmp_path / "plan.docx"), *more)
        assert done.returncode == 2
        assert "cannot be written as .docx; the endings it can have are .html, .csv, .ics, .txt" in done.stderr
    assert list(tmp_path.iterdir()) == []


def test_the_same_bytes_twice(tmp_path: Path) -> None:
    for name in ("one", "two"):
        assert plan("--out", str(tmp_path / f"{name}.html")).returncode == 0
    assert (tmp_path / "one.html").read_bytes() == (tmp_path / "two.html").read_bytes()
    assert plan("--format", "ics").stdout == plan("--format", "ics").stdout


def test_nothing_is_overwritten(tmp_path: Path) -> None:
    file = tmp_path / "mine.csv"
    file.write_text("mine", encoding="utf-8")
    done = plan("--out", str(file))
    assert done.returncode == 1
    assert done.stderr == f"{file} is already there. Nothing was written.\n"
    assert file.read_text(encoding="utf-8") == "mine"
    assert plan("--out", str(tmp_path / "nowhere" / "plan.csv")).returncode == 1


def test_holidays_of_a_file_are_left_out(tmp_path: Path) -> None:
    file = tmp_path / "days.txt"
    file.write_text("2027-01-11..2027-01-15 Snow\n", encoding="utf-8")
    done = plan("--holidays", str(file))
    assert "Monday 11 January to Thursday 14 January  Snow" in done.stdout
    assert "from Monday 18 January" in done.stdout


def test_bank_holidays_are_left_out_unless_they_are_wanted() -> None:
    assert "Monday 3 May" in plan(start="2027-05-03").stdout
    assert "Early May bank holiday" in plan(start="2027-05-03").stdout
    assert "Early May" not in plan("--no-bank-holidays", start="2027-05-03").stdout


def test_lines_that_cannot_be_read_and_steps_too_long_are_problems_told_at_once(tmp_path: Path) -> None:
    file = tmp_path / "days.txt"
    file.write_text("half term\n2027-02-30\n", encoding="utf-8")
    done = plan("--holidays", str(file), "--minutes", "19")
    assert done.returncode == 1
    assert f"{file}:1:1  holiday-unreadable" in done.stdout
    assert f"{file}:2:1  holiday-unreadable" in done.stdout
    assert "  step-too-long\n" in done.stdout
    assert "plan with 20 minutes a day or more" in done.stdout
    assert "Traceback" not in done.stdout + done.stderr


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (["--days", "mon,son"], '"son" is not one of mon, tue, wed, thu, fri'),
        (["--minutes", "0"], '"0" is not a whole number of minutes from 1 to 240'),
        (["--holidays", "nowhere.txt"], "nowhere.txt cannot be read as a text file"),
    ],
)
def test_what_is_asked_wrongly_is_told(arguments: list[str], says: str) -> None:
    done = plan(*arguments)
    assert done.returncode == 2
    assert says in done.stderr
    assert "Traceback" not in done.stderr


def test_days_are_taken_in_full_and_in_any_order() -> None:
    assert "from Tuesday 12 January 2027" in plan("--days", "Friday,TUE", "--no-free-days").stdout


def test_a_series_that_is_not_there_is_told_with_the_nearest() -> None:
    done = plan(series="a-term-on-cocle-row")
    assert done.returncode == 2
    assert f'Did you mean "{SERIES}"?' in done.stderr
    assert plan(series=f"content/series/{SERIES}.md").returncode == 0
    assert '"2027-02-30" is not a day of the calendar' in plan(start="2027-02-30").stderr


def test_a_name_of_a_class_that_is_no_text_is_refused() -> None:
    done = plan("--class", os.fsdecode(b"\xff"))
    assert (done.returncode, "not UTF-8 text" in done.stderr) == (2, True)
    assert "Traceback" not in done.stderr
